import type { FittingSystem, NamedSeat } from '../../core/fitting-end.ts';
import { UserError } from '../../core/user-error.ts';
import { tidy } from '../quantity/tidy.ts';
import { type TypedEndSize, takeEndSize } from './size.ts';
import { DASHED, isEndPadding, PHRASES, type PhraseMeaning } from './words.ts';

/** What a fitting end as typed says; whatever was not said is left open. */
export interface TypedEnd extends TypedEndSize {
  /** Kinds it can be; empty when none was named. */
  readonly systems: readonly FittingSystem[];
  readonly seats: readonly NamedSeat[];
  readonly series: readonly string[];
  readonly gender: 'male' | 'female' | undefined;
  readonly tapered: boolean | undefined;
  readonly washers: number | undefined;
  /** Words that were not understood. */
  readonly unused: readonly string[];
}

export const END_EXAMPLES =
  'Type it like `JIC -6 male`, `1/4 BSPP male`, `1/8 NPT female`, `M14x1.5 banjo` or `9/16-18 ORB port`.';

const MAX_LENGTH = 100;

/** Kinds written against their size: `g1/4`, `an-6`, `6an`. */
const GLUED_BEFORE = /\b(an|jic|orb|orfs|g|r|rc|rp|pt|pf|nptf?|bsp[pt]?)(?=-?\d)/gu;
const GLUED_BEHIND = /(?<=\d)(an|jic|orb|orfs|nptf?|npsm|bsp[pt]?)\b/gu;

/**
 * Reads a fitting end as people name it: kind, size, side and seat in any order and spelling.
 *
 * @throws UserError 'bad-input' when nothing in it names an end, or a number in it makes no sense.
 */
export function readFittingEnd(typed: string): TypedEnd {
  const text = tidy(typed).replace(GLUED_BEFORE, '$1 ').replace(GLUED_BEHIND, ' $1');
  if (text === '') throw new UserError('bad-input', `Nothing to read. ${END_EXAMPLES}`);
  if (text.length > MAX_LENGTH) {
    throw new UserError(
      'bad-input',
      `That is ${text.length} characters, too long for the name of an end. ${END_EXAMPLES}`,
    );
  }
  const { meanings, rest } = takePhrases(text);
  const systems = narrowed(meanings.flatMap((meaning) => (meaning.systems ? [meaning.systems] : [])));
  const seats = narrowed(meanings.flatMap((meaning) => (meaning.seats ? [meaning.seats] : [])));
  const { size, rest: left } = takeEndSize(
    rest,
    systems.some((system) => DASHED.includes(system)),
  );
  const unused = strangeWords(left, typed);
  if (systems.length === 0 && size.nominal === undefined && size.dash === undefined) {
    throw new UserError('bad-input', `"${typed}" names no kind of end and no size. ${END_EXAMPLES}`);
  }
  const fastener = systems.length === 0 && seats.length === 0 && meanings.some((meaning) => meaning.fastener);
  return {
    ...size,
    metric: size.metric ?? (meanings.some(({ metric }) => metric) ? true : undefined),
    systems,
    seats: fastener ? ['fastener'] : seats,
    series: narrowed(meanings.flatMap((meaning) => (meaning.series ? [meaning.series] : []))),
    gender: genderOf(meanings, seats),
    tapered: meanings.find(({ tapered }) => tapered !== undefined)?.tapered,
    washers: meanings.find(({ washers }) => washers !== undefined)?.washers,
    unused,
  };
}

/** Takes the phrases out one after the other and leaves the numbers. */
function takePhrases(text: string): { readonly meanings: readonly PhraseMeaning[]; readonly rest: string } {
  const meanings: PhraseMeaning[] = [];
  let rest = text;
  for (const { pattern, meaning } of PHRASES) {
    rest = rest.replace(pattern, () => {
      meanings.push(meaning);
      return ' ';
    });
  }
  return { meanings, rest };
}

/** What all that was said allows; where two things contradict each other, either may be meant. */
function narrowed<Name extends string>(said: readonly (readonly Name[])[]): readonly Name[] {
  return said.reduce<readonly Name[]>((left, next) => {
    if (left.length === 0) return next;
    const both = left.filter((one) => next.includes(one));
    return both.length > 0 ? both : left.concat(next);
  }, []);
}

/** A nut is female, but the nut of a brake pipe goes over the pipe and is male. */
function genderOf(meanings: readonly PhraseMeaning[], seats: readonly NamedSeat[]): TypedEnd['gender'] {
  const said = meanings.find(({ gender }) => gender !== undefined)?.gender;
  if (said !== undefined) return said;
  const brake = seats.some((seat) => seat === 'double-flare' || seat === 'bubble-flare');
  if (brake && meanings.some(({ fastener }) => fastener)) return 'male';
  return meanings.find(({ implies }) => implies !== undefined)?.implies;
}

function strangeWords(rest: string, typed: string): readonly string[] {
  const words = rest
    .split(/[^\p{L}\p{N}#./-]+/u)
    .filter((word) => /[\p{L}\p{N}]/u.test(word) && !isEndPadding(word));
  const number = words.find((word) => /\d/u.test(word));
  if (number === undefined) return words;
  throw new UserError('bad-input', `I cannot place "${number}" in "${typed}". ${END_EXAMPLES}`);
}
