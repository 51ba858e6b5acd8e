import { takeCylinders } from './cylinders.ts';
import { labelled } from './labelled.ts';
import { type AmountPiece, type Line, readAs, saidOf, withUnit } from './line.ts';
import { answer, ask, type QuickReading } from './reading.ts';
import { covers, has, vocabulary } from './vocabulary.ts';

const BORE = vocabulary('bore bohrung alésage alesage diámetro');
const STROKE = vocabulary('stroke hub course carrera');
const SIZE = vocabulary(
  'displacement capacity hubraum cubic cc ccm size engine engines motor cilindrada cylindrée litres liters motorgröße displaces displace volume total',
);
const EACH = vocabulary('per cylinder each cyl pro zylinder je cylinders in one');
const X = vocabulary('x by');

/** Bare figures below this are inches, from here on mm: no bore is 10 mm, none 10 inches. */
const INCHES_BELOW = 10;
const LEAST_MM = 30;
const MOST_MM = 200;

/** Displacement from bore, stroke and cylinders, or what one cylinder has of it. */
export function readDisplacementLine(line: Line): QuickReading | undefined {
  const { count, rest } = takeCylinders(line);
  if (rest.words.includes('per') || rest.words.includes('each') || rest.words.includes('pro'))
    return perCylinder(rest, count);
  if (!covers(rest, BORE, STROKE, SIZE, X)) return undefined;
  const labels = labelled(rest, { bore: BORE, stroke: STROKE });
  const [bore, stroke] =
    labels?.size === 2 ? [labels.get('bore'), labels.get('stroke')] : unlabelled(rest, count);
  if (bore === undefined || stroke === undefined) {
    const named = count !== undefined && has(rest, SIZE) && rest.amounts.length === 0;
    return named
      ? ask('displacement', 'With which bore and stroke?', [
          { label: 'Bore and stroke', text: `bore … stroke … ${count} cylinders`, open: true },
        ])
      : undefined;
  }
  const extra = rest.amounts.filter((each) => each !== bore && each !== stroke);
  const third = thirdCount(extra, count);
  if (extra.length > 0 && third === undefined) return undefined;
  return sized(bore, stroke, count ?? third);
}

/** `86 x 86 x 4` */
function thirdCount(extra: readonly AmountPiece[], count: number | undefined): number | undefined {
  const [only, ...more] = extra;
  if (only === undefined || more.length > 0 || count !== undefined || only.unit !== '') return undefined;
  return [1, 2, 3, 4, 5, 6, 8, 10, 12].includes(only.value) ? only.value : undefined;
}

function unlabelled(line: Line, count: number | undefined): readonly (AmountPiece | undefined)[] {
  const [first, second] = line.amounts;
  const both = first !== undefined && second !== undefined && isBore(first) && isBore(second);
  // 6.1 x 1.5 and 3 x 3 are no engines
  const bareInches = first?.unit === '' && second?.unit === '' && first.value < INCHES_BELOW;
  if (both && bareInches && count === undefined && !has(line, SIZE)) return [];
  const said = count !== undefined || has(line, SIZE) || line.words.includes('x') || second?.after === 'x';
  return both && said && !has(line, BORE) && !has(line, STROKE) ? [first, second] : [];
}

function isBore(amount: AmountPiece): boolean {
  const mm = lengthOf(amount, amount);
  return mm !== undefined && mm >= LEAST_MM && mm <= MOST_MM;
}

/** In mm; a unit said once serves both. */
function lengthOf(amount: AmountPiece, other: AmountPiece): number | undefined {
  const unit =
    amount.unit || other.unit || (amount.value < INCHES_BELOW && other.value < INCHES_BELOW ? 'in' : 'mm');
  return readAs({ ...amount, unit }, 'length')?.value;
}

function sized(bore: AmountPiece, stroke: AmountPiece, count: number | undefined): QuickReading | undefined {
  const [boreMm, strokeMm] = [lengthOf(bore, stroke), lengthOf(stroke, bore)];
  if (boreMm === undefined || strokeMm === undefined) return undefined;
  if (Math.min(boreMm, strokeMm) < LEAST_MM || Math.max(boreMm, strokeMm) > MOST_MM) return undefined;
  const unit = bore.unit || stroke.unit || (bore.value < INCHES_BELOW ? 'in' : 'mm');
  const said = {
    bore: saidOf({ ...bore, unit: bore.unit || unit }),
    stroke: saidOf({ ...stroke, unit: stroke.unit || unit }),
  };
  if (count === undefined)
    return ask(
      'displacement',
      'How many cylinders?',
      [4, 6, 8].map((many) => ({
        label: `${many} cylinders`,
        text: `bore ${said.bore} stroke ${said.stroke} ${many} cylinders`,
      })),
    );
  return answer(
    'displacement',
    'displacement',
    { boreMm, strokeMm, cylinders: count },
    { ...said, cylinders: String(count) },
  );
}

function perCylinder(line: Line, count: number | undefined): QuickReading | undefined {
  const [total, ...more] = line.amounts;
  if (total === undefined || more.length > 0 || !covers(line, EACH, SIZE)) return undefined;
  const litres = withUnit(total, 'volume')?.value;
  if (litres === undefined) return undefined;
  if (count === undefined)
    return ask('displacement', 'How many cylinders?', [
      { label: '4 cylinders', text: `${saidOf(total)} per cylinder 4 cyl` },
      { label: '6 cylinders', text: `${saidOf(total)} per cylinder 6 cyl` },
    ]);
  return answer(
    'displacement',
    'per-cylinder',
    { displacementCc: litres * 1000, cylinders: count },
    { displacement: saidOf(total), cylinders: String(count) },
  );
}
