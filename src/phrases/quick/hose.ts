import { INCH_MM } from '../../calc/units/definitions.ts';
import { type AmountPiece, type Line, withUnit } from './line.ts';
import { answer, ask, type QuickReading } from './reading.ts';
import { covers, has, vocabulary } from './vocabulary.ts';

const HOSE = vocabulary(
  'hose hoses pipe tube line lines schlauch tuyau manguera heater fuel oil coolant water turbo braided rubber fitting fittings',
);
const DASH = vocabulary('dash an jic');
const SIZE = vocabulary('size sized thread mm inch which in to');
const OR = vocabulary('or and');
/** Sixteenths of an inch. */
const STEP_MM = INCH_MM / 16;
const SIZES = new Set([2, 3, 4, 5, 6, 8, 10, 12, 16, 20, 24, 32]);

/** A dash number, or the dash number of a hose. */
export function readHoseLine(line: Line): QuickReading | undefined {
  const inMm = Number(IN_MM.exec(line.text)?.groups?.['dash']);
  if (SIZES.has(inMm))
    return answer('hose', 'dash', { dash: inMm, nominalMm: inMm * STEP_MM }, { size: `-${inMm}` });
  const dashes = dashesOf(line);
  const alone = isHoseAlone(line) ? dashWanted(line.amounts[0]) : undefined;
  if (alone !== undefined) return alone;
  const rest = line.words.filter((word) => !/^(?:an|jic|dash)\d+$/u.test(word));
  const known = covers({ ...line, words: rest }, HOSE, DASH, SIZE, OR);
  if (!known) return undefined;
  if (dashes.length > 0) return ofDash(line, dashes);
  if (line.amounts.length === 1 && line.amounts[0] !== undefined) return ofDiameter(line, line.amounts[0]);
  return undefined;
}

/** `-8 in mm` is no length of minus eight inches. */
const IN_MM =
  /^(?:what(?:'s| is| size is)? )?(?:-|dash ?-?|an ?-?)0?(?<dash>\d{1,2}) in (?:mm|inch|inches)[ ?]*$/u;

const HOSE_ALONE = vocabulary('hose schlauch tuyau manguera');

/** `3/8" hose` and nothing else. */
const isHoseAlone = ({ words, amounts, asks }: Line): boolean =>
  words.length === 1 && amounts.length === 1 && !asks && HOSE_ALONE.has(words[0] ?? '');

/** A hose by what it measures: most likely its dash size is wanted. */
function dashWanted(amount: AmountPiece | undefined): QuickReading | undefined {
  if (amount === undefined || amount.after === '-') return undefined;
  const unit = amount.unit || (amount.figures.includes('/') ? 'in' : '');
  const nominalMm = unit === '' ? undefined : withUnit({ ...amount, unit }, 'length')?.value;
  if (nominalMm === undefined || nominalMm < 3 || nominalMm > 52) return undefined;
  const said = `${amount.figures}${unit === 'in' || unit === '"' ? '"' : ` ${unit}`}`;
  return ask('hose', 'What is to be known of that hose?', [
    { label: `Its dash size`, text: `what dash is ${said} hose` },
    {
      label: `${said} in ${unit === 'mm' ? 'inches' : 'mm'}`,
      text: `${said} in ${unit === 'mm' ? 'inches' : 'mm'}`,
    },
  ]);
}

/** Numbers that are marked as dash sizes: by the dash before them or by the word. */
function dashesOf({ pieces, text }: Line): readonly number[] {
  return pieces.flatMap((piece, at) => {
    if (piece.is === 'code') {
      const glued = /^(?:an|jic|dash)0?(\d{1,2})$/u.exec(piece.text)?.[1];
      return glued === undefined ? [] : [Number(glued)];
    }
    if (piece.is === 'word' || piece.unit !== '' || !Number.isInteger(piece.value)) return [];
    const [before, behind] = [pieces[at - 1], pieces[at + 1]];
    const said =
      (before?.is === 'word' && DASH.has(before.text)) ||
      (behind?.is === 'word' &&
        behind.text === 'an' &&
        new RegExp(`${piece.figures} ?an\\b(?! size)`, 'u').test(text)) ||
      (piece.after === '-' && new RegExp(`(?:^|[ \\p{L}])-0?${piece.figures}\\b`, 'u').test(text));
    return said ? [piece.value] : [];
  });
}

function ofDash(line: Line, dashes: readonly number[]): QuickReading | undefined {
  if (
    dashes.length !==
    line.amounts.length + line.words.filter((word) => /^(?:an|jic|dash)\d+$/u.test(word)).length
  )
    return undefined;
  if (dashes.some((dash) => !SIZES.has(dash))) return undefined;
  const [dash, ...more] = dashes;
  if (dash === undefined) return undefined;
  if (more.length > 0)
    return ask(
      'hose',
      'Which of them?',
      dashes.map((each) => ({ label: `-${each}`, text: `dash ${each} hose` })),
    );
  // alone it could as well be a number below nothing
  if (line.words.length === 0)
    return ask('hose', 'A dash size?', [{ label: `Dash size -${dash}`, text: `dash ${dash} hose` }]);
  return answer('hose', 'dash', { dash, nominalMm: dash * STEP_MM }, { size: `-${dash}` });
}

function ofDiameter(line: Line, amount: AmountPiece): QuickReading | undefined {
  if (!has(line, DASH) || !(has(line, HOSE) || line.asks)) return undefined;
  const fraction = amount.figures.includes('/');
  const unit = amount.unit || (fraction ? 'in' : 'mm');
  const nominalMm = withUnit({ ...amount, unit }, 'length')?.value;
  if (nominalMm === undefined || nominalMm < 3 || nominalMm > 52) return undefined;
  if (amount.unit === '' && !fraction) return undefined;
  const across = line.words.some((word) => word === 'tube' || word === 'pipe') ? 'tube' : 'bore';
  return answer('hose', 'nearest-dash', { nominalMm }, { size: `${amount.figures} ${unit}`, across });
}
