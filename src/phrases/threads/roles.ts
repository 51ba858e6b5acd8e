import { INCH_MM } from '../../calc/units/definitions.ts';
import { UserError } from '../../core/user-error.ts';
import { isMetricPitch, isTpi, toDiameter, toPitch, toSpan } from './lengths.ts';
import { dashedName, fittingOf, isDash, isPipeSize, isPitchAfterName, joinName } from './naming.ts';
import { splitPair } from './pair.ts';
import type { SizeItem, TaperItem } from './spans.ts';
import type { NumberToken } from './tokens.ts';
import {
  SIZE_EXAMPLES,
  type ThreadName,
  type ThreadSize,
  type TypedLength,
  type TypedPitch,
} from './typed.ts';
import type { FittingSystem, WordMeaning } from './words.ts';

/** What has been settled while reading from left to right. */
interface Draft {
  diameter?: TypedLength;
  named?: ThreadName;
  dash?: number;
  pitches: TypedPitch[];
  taper?: TaperItem;
  lengthMm?: number;
  /** Numbers without a part yet, in order. */
  loose: NumberToken[];
}

/**
 * Decides which number is the diameter and which the pitch.
 *
 * Named, with unit or marked by a word: as said. Of two bare numbers the smaller is the pitch in mm when it can be
 * one, else the one that is a usual number of threads per inch is that; where both ways give a thread, it asks.
 *
 * @throws UserError as readThreadSize.
 */
export function assignRoles(
  items: readonly SizeItem[],
  meanings: readonly WordMeaning[],
  unused: readonly string[],
): ThreadSize {
  const draft: Draft = { pitches: [], loose: [] };
  const system = meanings.find((meaning) => meaning.fitting !== undefined)?.fitting;
  refuseNegative(items, system);
  const pipe = meanings.some((meaning) => meaning.pipe === true);
  for (const [index, item] of items.entries()) {
    settle(draft, item, items[index - 1], { fitting: system, pipe, items, index });
  }
  settleLoose(draft, items);
  const name = joinName(draft.named, meanings);
  const side = onlyOne(
    meanings.map((meaning) => meaning.side),
    'male and female',
  );
  const taperSaid = onlyOne(
    meanings.map((meaning) => meaning.taper),
    'tapered and parallel',
  );
  const taper = draft.taper;
  if (draft.diameter === undefined && name?.nominal === undefined && draft.dash === undefined) {
    const missing = draft.pitches.length > 0 ? 'The diameter is missing.' : 'There is no size in that.';
    throw new UserError('bad-input', `${missing} ${SIZE_EXAMPLES}`);
  }
  return {
    diameter: draft.diameter,
    named: name,
    fitting: fittingOf(system, draft.dash),
    pitches: draft.pitches,
    taper:
      taper === undefined
        ? undefined
        : { otherMm: toDiameter(taper.second).mm, overMm: lengthOf(taper.over, taper.text) },
    side,
    taperSaid,
    lengthMm: draft.lengthMm,
    unused,
  };
}

function refuseNegative(items: readonly SizeItem[], fitting: FittingSystem | undefined): void {
  if (items[0]?.kind === 'dash' && fitting === undefined) {
    throw new UserError('out-of-range', `A size cannot be negative. ${SIZE_EXAMPLES}`);
  }
}

interface Around {
  readonly fitting: FittingSystem | undefined;
  readonly pipe: boolean;
  readonly items: readonly SizeItem[];
  readonly index: number;
}

function settle(draft: Draft, item: SizeItem, before: SizeItem | undefined, around: Around): void {
  switch (item.kind) {
    case 'metric-name':
      draft.named = { nominal: String(item.nominal), families: ['iso-metric'] };
      return;
    case 'number-size':
      draft.named = { nominal: `#${item.nominal}`, families: ['unified'] };
      return;
    case 'span':
      draft.pitches.push(toSpan(item));
      return;
    case 'taper':
      draft.taper = item;
      draft.diameter = toDiameter(item.first);
      return;
    case 'number':
      settleNumber(draft, item, before, around);
      return;
    case 'count':
    case 'to':
    case 'over':
    case 'slash':
    case 'dash':
    case 'between':
    case 'meaning':
      return;
  }
}

function settleNumber(draft: Draft, item: NumberToken, before: SizeItem | undefined, around: Around): void {
  const [after, afterNext] = around.items.slice(around.index + 1, around.index + 3);
  // A word belongs to the number behind it: in "hole 10.3mm pitch 1.25" the pitch is 1.25.
  const trailing = after?.kind === 'meaning' && afterNext?.kind !== 'number' ? after.meaning.role : undefined;
  const role = wordRole(before) ?? trailing;
  const afterDash = before?.kind === 'dash' || /[a-z]/u.test(before?.kind === 'meaning' ? before.text : '');
  if (
    around.fitting !== undefined &&
    afterDash &&
    isDash(item) &&
    draft.dash === undefined &&
    !draft.diameter
  ) {
    draft.dash = item.value;
  } else if (item.unit === 'tpi' || role === 'tpi') {
    draft.pitches.push(toPitch(item, 'tpi'));
  } else if (role === 'pitch') {
    draft.pitches.push(toPitch(item, item.unit ?? (item.value >= 9 ? 'tpi' : 'mm')));
  } else if (around.pipe && draft.named === undefined && isPipeSize(item)) {
    draft.named = { nominal: item.fraction ?? String(item.value) };
  } else if (draft.named !== undefined && draft.pitches.length === 0 && isPitchAfterName(item, draft.named)) {
    draft.pitches.push(
      toPitch(item, item.unit ?? (draft.named.families?.[0] === 'iso-metric' ? 'mm' : 'tpi')),
    );
  } else if (draft.named?.families?.[0] === 'iso-metric' && draft.pitches.length === 1) {
    draft.lengthMm = lengthOf(item, item.text);
  } else if (item.fraction !== undefined && draft.diameter === undefined && draft.named === undefined) {
    draft.diameter = toDiameter(item);
    draft.named = { nominal: item.fraction };
  } else if (role === 'diameter' && draft.diameter === undefined) {
    settleDiameter(draft, item);
  } else {
    draft.loose.push(item);
  }
}

function wordRole(item: SizeItem | undefined): WordMeaning['role'] {
  return item?.kind === 'meaning' && item.meaning.role !== 'diameter' ? item.meaning.role : undefined;
}

/** Gives the numbers that carry no mark their parts. */
function settleLoose(draft: Draft, items: readonly SizeItem[]): void {
  const [first, second, third] = draft.loose;
  if (first === undefined) return;
  const name =
    second === undefined || draft.named !== undefined ? undefined : dashedName(first, second, items);
  if (name !== undefined && second !== undefined && third === undefined) {
    draft.named = name;
    if (name.families === undefined)
      draft.diameter = toDiameter({ ...first, unit: 'in', fraction: String(first.value) });
    draft.pitches.push(toPitch(second, 'tpi'));
    return;
  }
  if (third !== undefined) throw tooMany(draft.loose);
  const sized = draft.diameter !== undefined;
  if (sized && second !== undefined) throw tooMany(draft.loose);
  if (second === undefined) {
    if (spanInstead(draft, first, items)) return;
    if (sized)
      draft.pitches.push(toPitch(first, first.unit ?? loosePitchUnit(first, draft.diameter?.text ?? '')));
    else settleDiameter(draft, first);
    return;
  }
  if (draft.pitches.length > 0) throw tooMany(draft.loose);
  const { diameter, pitch, unit } = splitPair(first, second);
  settleDiameter(draft, diameter);
  draft.pitches.push(toPitch(pitch, unit));
}

/** A whole number of millimetres is as often the name of the thread as a reading of it. */
function settleDiameter(draft: Draft, item: NumberToken): void {
  draft.diameter = toDiameter(item);
  const whole =
    Number.isInteger(item.value) && item.halfDigit === 0.5 && item.unit !== 'in' && item.value >= 3;
  if (whole && draft.named === undefined) draft.named = { nominal: String(item.value) };
}

/**
 * `10.1 x 15/16`: beside a number that can be no pitch, a bare fraction is 15 mm over 16 threads, not 15/16 in across.
 * Changes the draft and says so.
 */
function spanInstead(draft: Draft, loose: NumberToken, items: readonly SizeItem[]): boolean {
  const bare = items.find((item): item is NumberToken => item.kind === 'number' && item.parts !== undefined);
  if (bare?.parts === undefined || draft.pitches.length > 0 || loose.unit === 'tpi' || isTpi(loose.value))
    return false;
  const [top, bottom] = bare.parts;
  if (loose.value <= 4.5) {
    if (isMetricPitch(loose.value)) return false;
    throw new UserError('which-one', `${bare.text} and ${loose.text}: which is the diameter?`, {
      field: 'size',
      choices: [
        {
          label: `${loose.text} mm across, ${top} mm over ${bottom} threads`,
          value: `${loose.text} mm x ${top} mm/${bottom}`,
        },
        {
          label: `${bare.text} in across, pitch ${loose.text} mm`,
          value: `${bare.text} in x ${loose.text} mm`,
        },
      ],
    });
  }
  delete draft.named;
  draft.diameter = toDiameter(loose);
  const length: NumberToken = { ...bare, value: top, halfDigit: 0.5, fraction: undefined, parts: undefined };
  draft.pitches.push(toSpan({ kind: 'span', length, pitches: bottom, text: bare.text }));
  return true;
}

function loosePitchUnit(item: NumberToken, across: string): 'mm' | 'tpi' {
  if (item.value <= 4.5) return 'mm';
  if (item.value >= 9) return 'tpi';
  throw new UserError('which-one', `Is ${item.text} the pitch in mm, or threads per inch?`, {
    field: 'size',
    choices: [
      { label: `${item.text} mm`, value: `${across} x ${item.text} mm` },
      { label: `${item.text} threads per inch`, value: `${across} x ${item.text} tpi` },
    ],
  });
}

function lengthOf(item: NumberToken, text: string): number {
  const mm = item.unit === 'in' ? item.value * INCH_MM : item.value;
  if (!(mm > 0) || mm > 10_000)
    throw new UserError('out-of-range', `The distance in "${text}" must be above zero.`);
  return mm;
}

function tooMany(loose: readonly NumberToken[]): UserError {
  return new UserError(
    'bad-input',
    `Too many numbers: ${loose.map(({ text }) => text).join(', ')}. One diameter and one pitch are wanted. ${SIZE_EXAMPLES}`,
  );
}

function onlyOne<Value>(said: readonly (Value | undefined)[], both: string): Value | undefined {
  const values = new Set(said.filter((value) => value !== undefined));
  if (values.size > 1) throw new UserError('bad-input', `It cannot be ${both} at once. Say one of them.`);
  return [...values][0];
}
