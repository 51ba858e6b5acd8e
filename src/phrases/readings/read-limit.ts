import { tidyKeepingCase } from '../quantity/tidy.ts';
import type { LineConditions, LineReading } from './line-reading.ts';
import { type LineContext, readLine } from './read-line.ts';

/** What a limit as typed means, in the unit the kind is kept in. */
export type LimitReading =
  | {
      readonly verdict: 'read';
      readonly min: number | null;
      readonly max: number | null;
      readonly shownIn: string;
      readonly conditions: LineConditions;
    }
  | Exclude<LineReading, { verdict: 'read' }>;

const LEAST =
  /^(?:at least|min(?:imum)?\.?|not (?:below|less than|under)|no less than|over|above|more than|mindestens|>=?|≥)\s*/iu;
const MOST =
  /^(?:at most|max(?:imum)?\.?|not (?:above|more than|over)|no more than|up to|under|below|less than|höchstens|<=?|≤)\s*/iu;
const FIGURE = String.raw`[-+]?\d[\d.,]*`;
const RANGE = new RegExp(
  String.raw`^(?:between |from )?(?<low>${FIGURE})(?<unit> ?[^\d\s-]*) ?(?:-|to|and|bis|\.\.) ?(?<high>${FIGURE} ?.*)$`,
  'iu',
);

/** What to type, for a refusal. */
export const LIMIT_EXAMPLES = 'at least 3 bar at 2000 rpm hot, at most 105 °C, 13.8 to 14.7 V charging';

/**
 * A limit of one kind as people type it: `at least 3 bar at 2000 rpm hot`, `max 105 C`, `13.8 to 14.7 V charging`.
 *
 * Its conditions are those of a reading, and its figures are read as one is; doubts come back with the limit that would
 * mean one thing alone.
 */
export function readLimit(typed: string, kind: string, context: LineContext): LimitReading {
  const text = tidyKeepingCase(typed);
  const side = LEAST.test(text) ? 'least' : MOST.test(text) ? 'most' : undefined;
  if (side !== undefined) return oneSided(text, side, kind, context);
  const groups = RANGE.exec(text)?.groups;
  if (groups === undefined) {
    return {
      verdict: 'refuse',
      problem: `"${text}" does not say whether it is the least or the most. Type it like ${LIMIT_EXAMPLES}.`,
    };
  }
  const high = lineOf(groups['high'] ?? '', kind, context);
  if (high.verdict !== 'read') return asked(high, (line) => `${groups['low'] ?? ''} to ${line}`, kind);
  const [top] = high.values;
  const unit = groups['unit']?.trim() === '' ? unitIn(groups['high'] ?? '') : (groups['unit'] ?? '');
  const low = lineOf(`${groups['low'] ?? ''} ${unit} ${stateWords(top?.conditions)}`, kind, context);
  if (low.verdict !== 'read') return asked(low, (line) => line, kind);
  const [bottom] = low.values;
  if (top === undefined || bottom === undefined)
    return { verdict: 'refuse', problem: `"${text}" has no figures.` };
  if (bottom.value >= top.value) {
    return { verdict: 'refuse', problem: `The least, ${groups['low']}, is not below the most.` };
  }
  return {
    verdict: 'read',
    min: bottom.value,
    max: top.value,
    shownIn: top.shownIn,
    conditions: top.conditions,
  };
}

function oneSided(text: string, side: 'least' | 'most', kind: string, context: LineContext): LimitReading {
  const word = side === 'least' ? LEAST : MOST;
  const prefix = word.exec(text)?.[0] ?? '';
  const found = lineOf(text.replace(word, ''), kind, context);
  if (found.verdict !== 'read') return asked(found, (line) => `${prefix}${line}`, kind);
  const [only, another] = found.values;
  if (only === undefined || another !== undefined) {
    return { verdict: 'refuse', problem: `One figure makes a limit; "${text}" has several.` };
  }
  const { value, shownIn, conditions } = only;
  return {
    verdict: 'read',
    min: side === 'least' ? value : null,
    max: side === 'most' ? value : null,
    shownIn,
    conditions,
  };
}

/** A limit holds for every cylinder, so none has to be named. */
function lineOf(text: string, kind: string, context: LineContext): LineReading {
  const kinds = context.kinds
    .filter(({ name }) => name === kind)
    .map(({ place: _any, ...spec }) => ({ ...spec }));
  const boost = context.kinds.filter(({ name }) => name === 'boost' && name !== kind);
  return readLine(`${kind} ${text}`, { ...context, kinds: [...kinds, ...boost], anyState: true });
}

/** The unit right behind the figure. */
const unitIn = (text: string): string =>
  /^[-+]?\d[\d.,]* ?(?<unit>[^\d\s]+)/u.exec(text)?.groups?.['unit'] ?? '';
const stateWords = (conditions: LineConditions | undefined): string => conditions?.states.join(' ') ?? '';

/** The options of a question about the line inside, as limits. */
function asked(
  found: Exclude<LineReading, { verdict: 'read' }>,
  rebuilt: (line: string) => string,
  kind: string,
): LimitReading {
  if (found.verdict === 'refuse') return found;
  const options = found.options.map(({ typed }) => {
    const limit = rebuilt(typed.startsWith(`${kind} `) ? typed.slice(kind.length + 1) : typed);
    return { label: limit, typed: limit };
  });
  return { ...found, options };
}
