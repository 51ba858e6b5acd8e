import { type AmountPiece, type Line, readAs, saidOf, withUnit } from './line.ts';
import { answer, ask, offer, type QuickReading } from './reading.ts';
import { covers, has, vocabulary } from './vocabulary.ts';

const COOLANT = vocabulary(
  'coolant antifreeze anti-freeze glycol frostschutz frostschutzmittel kühlmittel kühlwasser antigel anticongelante refroidissement refrigerante glysantin',
);
const COLD = vocabulary(
  'freeze freezes freezing freezepoint point cold temp temperature protect protects protection protected good down until kalt hält haelt friert gefriert gefrierpunkt grad bis gel froid congela congelación gèle good',
);
const FREEZE = vocabulary('freeze freezes freezing gefrierpunkt');
const AMOUNT = vocabulary('litre litres liter liters l quarts need system much');
const SYSTEM = vocabulary(
  'system total capacity volume mix mixed mixture share by in to now want wanted need needs target from neat water up fill drain anlage',
);
const WANTED = vocabulary('want wanted need needs target to');

/** Coolant: how cold a share is good for, how much goes in, how much to change for another share. */
export function readCoolantLine(line: Line): QuickReading | undefined {
  const halves = halvesOf(line);
  const shares = line.amounts.filter((each) => /^(?:%|percent|prozent|pct)$/iu.test(each.unit));
  const volumes = line.amounts.filter((each) => withUnit(each, 'volume') !== undefined);
  const named = has(line, COOLANT) || (has(line, FREEZE) && shares.length === 1);
  if (!named && !(volumes.length === 1 && shares.length === 2)) return undefined;
  if (!covers(line, COOLANT, COLD, AMOUNT, SYSTEM)) return undefined;
  if (halves !== undefined && line.amounts.length === 2) return ofHalves(line, halves);
  const [half, other] = halves ?? [];
  if (half !== undefined && half.value === other?.value && volumes.length === 1 && volumes[0] !== undefined)
    return line.amounts.length === 3 ? fill(volumes[0], { ...half, unit: '%' }) : undefined;
  const others = line.amounts.filter((each) => !shares.includes(each) && !volumes.includes(each));
  const [volume, another] = volumes;
  const [first, second, third] = shares;
  if (others.length > 0 || another !== undefined || third !== undefined) return undefined;
  if (first === undefined) return undefined;
  if (volume === undefined) return second === undefined ? ofShare(line, first) : undefined;
  return second === undefined ? fill(volume, first) : change(line, volume, first, second);
}

/** `50/50`, `60:40`, `50-50`: two shares that make a whole. */
function halvesOf({ amounts }: Line): readonly [AmountPiece, AmountPiece] | undefined {
  const at = amounts.findIndex(
    ({ value, unit, after }, index) =>
      ['/', ':', '-'].includes(after) &&
      unit === '' &&
      amounts[index - 1]?.unit === '' &&
      (amounts[index - 1]?.value ?? 0) + value === 100,
  );
  const [first, second] = [amounts[at - 1], amounts[at]];
  return at > 0 && first !== undefined && second !== undefined ? [first, second] : undefined;
}

function ofHalves(
  line: Line,
  [first, second]: readonly [AmountPiece, AmountPiece],
): QuickReading | undefined {
  if (first.value === second.value) return ofShare(line, { ...first, unit: '%' });
  return ask(
    'coolant',
    'Which of the two is the antifreeze?',
    [first, second].map(({ figures }) => ({
      label: `${figures} % antifreeze`,
      text: `freezing point ${figures}% antifreeze`,
    })),
  );
}

function ofShare(line: Line, share: AmountPiece): QuickReading | undefined {
  const glycolFraction = readAs(share, 'percent')?.value;
  if (glycolFraction === undefined) return undefined;
  if (has(line, COLD)) return answer('coolant', 'freezing', { glycolFraction }, { share: saidOf(share) });
  return ask('coolant', 'How cold it is good for, or how much goes in?', [
    { label: `How cold ${share.figures} % is good for`, text: `freezing point ${share.figures}% antifreeze` },
    { label: 'How much goes into a system', text: `… litres ${share.figures}% antifreeze`, open: true },
  ]);
}

function fill(volume: AmountPiece, share: AmountPiece): QuickReading | undefined {
  const [volumeL, glycolFraction] = [readAs(volume, 'volume')?.value, readAs(share, 'percent')?.value];
  if (volumeL === undefined || glycolFraction === undefined) return undefined;
  return answer(
    'coolant',
    'coolant-fill',
    { volumeL, glycolFraction },
    { volume: saidOf(volume), share: saidOf(share) },
  );
}

function change(
  line: Line,
  volume: AmountPiece,
  first: AmountPiece,
  second: AmountPiece,
): QuickReading | undefined {
  const volumeL = readAs(volume, 'volume')?.value;
  const [from, to] = [readAs(first, 'percent')?.value, readAs(second, 'percent')?.value];
  if (volumeL === undefined || from === undefined || to === undefined) return undefined;
  const said = `${saidOf(volume)} at ${saidOf(first)} want ${saidOf(second)}`;
  if (!has(line, WANTED)) return ask('coolant', 'Which share is wanted?', [offer(said)]);
  return answer(
    'coolant',
    'coolant-change',
    { volumeL, fromFraction: from, toFraction: to },
    { volume: saidOf(volume), from: saidOf(first), to: saidOf(second) },
  );
}
