import type { End } from './end.ts';
import { type Mating, mate } from './mate.ts';
import { type AskedEnd, whichEnd } from './resolve.ts';

/** The verdict on two ends as typed, with the ends it was given for and what had to be taken for granted. */
export interface Judgement {
  readonly a: End;
  readonly b: End;
  readonly mating: Mating;
  readonly assumptions: readonly string[];
}

interface Pair {
  readonly a: End;
  readonly b: End;
  readonly mating: Mating;
}

/**
 * Whether one end goes on another, when what was typed may leave something open: what every reading agrees on is
 * answered, and only what the answer hangs on is asked.
 *
 * @param fields the options the two ends were typed into, for the question.
 * @throws UserError 'which-one' about the end the answer hangs on.
 */
export function judge(a: AskedEnd, b: AskedEnd, fields = { a: 'a', b: 'b' }): Judgement {
  const { pairs, assumptions } = pairsMeant(a, b);
  const judged = pairs.map(([first, second]): Pair => ({ a: first, b: second, mating: mate(first, second) }));
  const [first, ...rest] = judged;
  if (first === undefined) throw whichEnd(a.typed, fields.a, a.ends);
  if (rest.every((pair) => verdict(pair) === verdict(first))) return { ...first, assumptions };
  throw hangsOn(judged, 'a')
    ? whichEnd(a.typed, fields.a, endsIn(judged, 'a'))
    : whichEnd(b.typed, fields.b, endsIn(judged, 'b'));
}

const verdict = ({ mating }: Pair): string => `${mating.mates} ${mating.seals}`;

/** A side not said is taken as the one that goes with the other end, a size not said as the other's. */
function pairsMeant(
  a: AskedEnd,
  b: AskedEnd,
): { readonly pairs: readonly (readonly [End, End])[]; readonly assumptions: readonly string[] } {
  const all = a.ends.flatMap((first) => b.ends.map((second) => [first, second] as const));
  const sized = a.sizeSaid && b.sizeSaid ? all : all.filter(([x, y]) => sizeOf(x) === sizeOf(y));
  const sizeTaken = sized.length > 0 && sized.length < all.length;
  const left = sizeTaken ? sized : all;
  const opposite = left.filter(([x, y]) => x.gender !== y.gender);
  const sideTaken = opposite.length > 0 && opposite.length < left.length;
  return {
    pairs: sideTaken ? opposite : left,
    assumptions: [
      ...(sizeTaken ? ['Both are taken to be of one size.'] : []),
      ...(sideTaken ? ['One is taken to be male and the other female.'] : []),
    ],
  };
}

const sizeOf = ({ dash, thread }: End): string => (dash === undefined ? thread.nominal : `-${dash}`);

/** Whether another reading of this end, against the same other end, changes the verdict. */
function hangsOn(pairs: readonly Pair[], side: 'a' | 'b'): boolean {
  const other = side === 'a' ? 'b' : 'a';
  const groups = Map.groupBy(pairs, (pair) => pair[other].id);
  return [...groups.values()].some((group) => new Set(group.map(verdict)).size > 1);
}

const endsIn = (pairs: readonly Pair[], side: 'a' | 'b'): readonly End[] => [
  ...new Map(pairs.map((pair) => [pair[side].id, pair[side]])).values(),
];
