import { tidyKeepingCase } from '../quantity/tidy.ts';
import { bind, refuseCounted } from './bind.ts';
import { sharedConditions } from './conditions.ts';
import { refuseOtherScales, refuseStrangeUnit, refuseUnsaidZero } from './doubts.ts';
import type { KindSpec } from './kind-spec.ts';
import type { LineReading, LineValue } from './line-reading.ts';
import { namedKinds, wordsOf } from './named-kinds.ts';
import { doubt, NotRead, option, refusal } from './outcome.ts';
import { rolesOf } from './roles.ts';
import { type Piece, takeApart } from './take-apart.ts';
import { likelyReads, settledBySize } from './usual.ts';
import { readValues } from './values.ts';

const LONGEST = 200;
const NOTE = /\s+note:?\s+(?<note>.+)$/iu;
const NO_VALUE = 'There is no value';
/** Words by which a mixture gauge's figure is an air–fuel ratio. */
const AFR_WORDS: readonly string[] = ['afr', 'air-fuel ratio', 'air fuel ratio'];

/** Two figures with no more between them than what makes a range. */
const RANGE = /(?<![\p{L}\d.,])(?<low>\d[\d.,]*) ?(?:-|\.\.+|to|bis) ?(?<high>\d[\d.,]*)/iu;

/** Words that make a figure a rough one. */
const ABOUT = /^(?:[~≈]|about|approx\.?|approximately|circa|ca\.?|around|roughly|etwa|ungefähr|environ)$/iu;

export interface LineContext {
  readonly kinds: readonly KindSpec[];
  /** Stoichiometric air–fuel ratio of a fuel by the name it goes by here; undefined where nobody knows it. */
  readonly afrOf: (fuel: string) => number | undefined;
  /** A limit is typed, which need not say at rest or cranking. */
  readonly anyState?: true;
}

/** What to type, for a refusal. */
export const LINE_EXAMPLES =
  'oil 4.2 bar at 2500 rpm 92C, compression 12.1 12.0 11.8 11.9 bar, cyl 3 leak 8 %, battery rest 12.6 cranking 10.1, odo 1234 km';

/**
 * A line of readings as people type it: what, value with unit, conditions, in any order.
 *
 * One meaning a careful person would write down is read; several are asked about, each with the line that would mean it
 * alone; none is refused. Never guesses in silence, and throws on nothing. No time, no state.
 */
export function readLine(typed: string, context: LineContext): LineReading {
  const whole = tidyKeepingCase(typed).replace(/\.$/u, '');
  const note = NOTE.exec(whole)?.groups?.['note'];
  const text = note === undefined ? whole : whole.replace(NOTE, '');
  if (text === '') return { verdict: 'refuse', problem: 'Nothing was typed.' };
  if (text.length > LONGEST)
    return { verdict: 'refuse', problem: `That is ${text.length} characters, too long for a reading.` };
  try {
    const found = readText(text, context);
    return found.verdict === 'read' && note !== undefined ? { ...found, note } : found;
  } catch (error) {
    if (error instanceof NotRead) return withNote(error.outcome, note);
    throw error;
  }
}

function withNote(outcome: LineReading, note: string | undefined): LineReading {
  if (outcome.verdict !== 'ask' || note === undefined) return outcome;
  return { ...outcome, options: outcome.options.map(({ typed }) => option(`${typed} note ${note}`)) };
}

function readText(text: string, context: LineContext): LineReading {
  if (/\d:\d/u.test(text)) throw refusal('That is a ratio, and no kind of reading here is one.');
  const range = RANGE.exec(text)?.groups;
  if (range !== undefined) {
    const { low = '', high = '' } = range;
    throw doubt(`${low} to ${high} is a range, and one value is needed. Which?`, [
      text.replace(RANGE, low),
      text.replace(RANGE, high),
    ]);
  }
  const pieces = takeApart(text, context.kinds);
  if (!pieces.some(({ type }) => type === 'amount')) throw refusal('There is no value in it.');
  const named = namedKinds(pieces, context.kinds, text);
  const outcomes = named.map((kind) => interpret(kind, pieces, text, context));
  const all = outcomes.filter((outcome) => outcome.verdict === 'read');
  const reads = likelyReads(all, context.kinds);
  const [read, ...others] = reads;
  const settled = read === undefined || reads.length === all.length;
  if (read !== undefined && others.length === 0) {
    const unlikely = all.filter((each) => each !== read);
    const readAs = settled ? read.readAs : [...read.readAs, settledBySize(read, unlikely)];
    return afterUnknown({ ...read, readAs }, pieces, text);
  }
  if (read !== undefined) {
    return ask(
      'Of what?',
      reads.map(({ kind }) => option(`${kind} ${text}`)),
    );
  }
  const asked = outcomes.filter((outcome) => outcome.verdict === 'ask');
  const firm = asked.filter((outcome) => outcome.verdict === 'ask' && outcome.faint !== true);
  const asks = firm.length > 0 ? firm : asked;
  const [question] = asks;
  if (question !== undefined) {
    const options = asks.flatMap((each) => (each.verdict === 'ask' ? each.options : []));
    const distinct = [...new Map(options.map((each) => [each.typed, each])).values()];
    return { ...question, options: distinct };
  }
  // of several refusals the one that knows what is wrong with the value says most
  const [only, another] = outcomes;
  const telling = outcomes.find((each) => each.verdict === 'refuse' && !each.problem.startsWith(NO_VALUE));
  const refused = telling ?? (another === undefined ? only : undefined);
  if (refused === undefined) {
    throw refusal(`"${text}" is no reading that is known here.`);
  }
  return refused;
}

const ask = (question: string, options: readonly ReturnType<typeof option>[]): LineReading => ({
  verdict: 'ask',
  question,
  options,
});

function interpret(
  kind: KindSpec,
  pieces: readonly Piece[],
  text: string,
  context: LineContext,
): LineReading {
  try {
    const roles = rolesOf(pieces, kind, wordsOf(context.kinds, 'boost'));
    refuseStrangeUnit(roles.values, pieces, kind, text);
    if (roles.values.length === 0 && roles.foreign.length > 0) sharedConditions(roles, pieces, kind, text);
    if (roles.values.length === 0) throw refusal(`${NO_VALUE} of ${kind.name} in it.`);
    const shared = sharedConditions(roles, pieces, kind, text);
    const named = pieces.some((piece) => piece.type === 'kind' && AFR_WORDS.includes(piece.word));
    const amounts = named ? roles.values.map((amount) => ({ ...amount, unit: 'AFR' })) : roles.values;
    refuseUnsaidZero(kind, amounts, pieces, text);
    refuseCounted(roles.values, kind, text);
    const figures = readValues(amounts, kind, text);
    if (kind.name === 'lambda')
      refuseOtherScales(
        figures.map(({ value }) => value),
        amounts.some(({ unit }) => /afr/iu.test(unit)),
        shared.fuel,
        pieces,
        text,
        context.afrOf,
      );
    const bound = bind(roles.values, pieces, kind, text, context.anyState);
    const values = figures.map(
      ({ value, shownIn }, index): LineValue => ({
        value,
        shownIn,
        conditions: { ...shared, states: [], ...bound[index] },
      }),
    );
    return {
      verdict: 'read',
      kind: kind.name,
      values,
      readAs: [...new Set(figures.flatMap(({ readAs }) => readAs))],
    };
  } catch (error) {
    if (error instanceof NotRead) return error.outcome;
    throw error;
  }
}

/** Words nobody knows are never passed over: they can be kept as a note. */
function afterUnknown(read: LineReading, pieces: readonly Piece[], text: string): LineReading {
  const unknown = pieces.filter(({ type }) => type === 'unknown');
  if (unknown.length === 0) return read;
  const said = unknown.map(({ start, end }) => text.slice(start, end)).join(' ');
  const rest = unknown
    .toReversed()
    .reduce((line, { start, end }) => `${line.slice(0, start)} ${line.slice(end)}`, text)
    .replace(/\s+/gu, ' ')
    .trim();
  if (ABOUT.test(said)) return ask(`“${said}”: is the figure itself what was measured?`, [option(rest)]);
  if (!/[\p{L}\d]/u.test(said)) throw refusal(`"${said}" is not read here.`);
  return ask(`What is “${said}” to say?`, [
    { label: `Keep it as a note: ${said}`, typed: `${rest} note ${said}` },
  ]);
}
