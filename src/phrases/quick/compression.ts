import { type AmountPiece, type Line, readAs, saidOf, withUnit } from './line.ts';
import { answer, ask, type QuickReading } from './reading.ts';
import { covers, has, vocabulary } from './vocabulary.ts';

const COMPRESSION = vocabulary(
  'compression comp cr kompression kompressionstest verdichtung compresión compresion',
);
const TEST = vocabulary('test tested readings results cranking all dry hot cold warm psi bar spread check');
const RATIO = vocabulary('ratio static verhältnis taux relación');
const SWEPT = vocabulary('swept cyl cylinder hubraum displacement volume cylindrée');
const CLEARANCE = vocabulary(
  'clearance chamber and plus combustion total brennraum head chambre cámara tdc vol',
);

/** Cranking pressures that are possible, kPa, and as bare figures in either unit. */
const PSI = [20, 400] as const;
const BAR = [1.5, 30] as const;

/** Compression ratio from two volumes, or the readings of a compression test. */
export function readCompressionLine(line: Line): QuickReading | undefined {
  const named = has(line, COMPRESSION);
  if (!named || !covers(line, COMPRESSION, TEST, RATIO, SWEPT, CLEARANCE)) return undefined;
  return volumes(line) ?? readings(line) ?? single(line);
}

function volumes(line: Line): QuickReading | undefined {
  const [first, second, ...more] = line.amounts;
  if (first === undefined || second === undefined || more.length > 0) return undefined;
  const bare = first.unit === '' && second.unit === '' && has(line, SWEPT) && has(line, CLEARANCE);
  const inCc = (amount: AmountPiece): AmountPiece => (bare ? { ...amount, unit: 'cc' } : amount);
  const [one, other] = [withUnit(inCc(first), 'volume')?.value, withUnit(inCc(second), 'volume')?.value];
  if (one === undefined || other === undefined || one === other) return undefined;
  if (!has(line, SWEPT) && !has(line, CLEARANCE) && !line.words.includes('cr') && !has(line, RATIO))
    return undefined;
  const [swept, clearance] = (one > other ? [first, second] : [second, first]).map(inCc);
  if (swept === undefined || clearance === undefined) return undefined;
  return answer(
    'compression',
    'compression-ratio',
    { sweptCc: Math.max(one, other) * 1000, clearanceCc: Math.min(one, other) * 1000 },
    { swept: saidOf(swept), clearance: saidOf(clearance) },
  );
}

/** Three or more figures in one unit, which stands behind the last or behind each. */
function readings({ amounts, words }: Line): QuickReading | undefined {
  const [named = ''] = words.filter((word) => word === 'psi' || word === 'bar');
  const unit = amounts.at(-1)?.unit || named;
  if (amounts.length < 3 || amounts.some((each) => each.unit !== '' && each.unit !== unit)) return undefined;
  if (
    unit !== '' &&
    withUnit({ ...amounts[0], is: 'amount', figures: '1', value: 1, unit, after: '' }, 'pressure') ===
      undefined
  )
    return undefined;
  const values = amounts.map(({ value }) => value);
  const possible = (range: readonly [number, number]) =>
    values.every((value) => value >= range[0] && value <= range[1]);
  if (unit === '' && !possible(PSI) && !possible(BAR)) return undefined;
  const inKPa = amounts.map((each) =>
    unit === '' ? each.value : (readAs({ ...each, unit }, 'pressure')?.value ?? Number.NaN),
  );
  if (inKPa.some(Number.isNaN)) return undefined;
  return answer(
    'compression',
    'compression-test',
    { readings: inKPa },
    { readings: `${amounts.map(({ figures }) => figures).join(' ')}${unit === '' ? '' : ` ${unit}`}` },
  );
}

function single(line: Line): QuickReading | undefined {
  const amounts = line.amounts.filter(({ figures, after }) => !(figures === '1' && after === ':'));
  const [only, second, ...more] = amounts;
  if (only === undefined || more.length > 0) return undefined;
  const both = second === undefined ? saidOf(only) : `${saidOf(only)} ${saidOf(second)}`;
  return ask(
    'compression',
    second === undefined ? 'One reading says little: what are the others?' : 'What is the third?',
    [
      { label: 'Readings of all cylinders', text: `compression test ${both} …`, open: true },
      { label: 'Ratio from two volumes', text: 'cr … cc swept … cc chamber', open: true },
    ],
  );
}
