import { type Choice, UserError } from '../../core/user-error.ts';
import type { EndBook } from './book.ts';
import { pipeDash } from './book.ts';
import type { End } from './end.ts';

/** What was said of an end; whatever was not is left open. */
export interface EndWords {
  readonly systems: readonly string[];
  readonly seats: readonly string[];
  readonly series: readonly string[];
  readonly gender: 'male' | 'female' | undefined;
  readonly nominal: string | undefined;
  readonly metric: boolean | undefined;
  readonly pitchMm: number | undefined;
  readonly tpi: number | undefined;
  readonly dash: number | undefined;
  readonly tapered: boolean | undefined;
  readonly washers: number | undefined;
  readonly unused: readonly string[];
}

/** An end as typed, with every end of the book it can mean; never empty. */
export interface AskedEnd {
  readonly typed: string;
  readonly ends: readonly End[];
  readonly sizeSaid: boolean;
  readonly unused: readonly string[];
}

const DASHED = new Set(['jic37', 'an37', 'sae45', 'orb', 'orfs']);

/**
 * Every end that what was typed can mean, the likelier kinds first.
 *
 * @throws UserError 'not-found' with the sizes there are when no end fits.
 */
export function endsMeant(book: EndBook, typed: string, words: EndWords): AskedEnd {
  const sizeSaid = words.nominal !== undefined || words.dash !== undefined;
  const kind = book.ends.filter((end) => isOfKind(end, words));
  const ends = kind
    .filter((end) => isOfSize(end, words))
    .map((end) =>
      words.washers === undefined || end.seat !== 'washer' ? end : { ...end, washersFitted: words.washers },
    );
  if (ends.length > 0) return { typed, ends: ends.toSorted(byLikelihood), sizeSaid, unused: words.unused };
  const sized = book.ends.filter((end) => isOfSize(end, words));
  const [of, known] = kind.length > 0 && words.systems.length > 0 ? ['size', kind] : ['kind', sized];
  const names = [...new Set(known.map(({ fittingId, thread }) => fittingId ?? thread.id))];
  const near = names.slice(0, MOST_NAMED);
  throw new UserError(
    'not-found',
    near.length === 0
      ? `No thread or fitting in the tables is "${typed}". Measure it, and let /thread name it.`
      : `No end of that ${of} is known: "${typed}". Known: ${near.join(', ')}${names.length > near.length ? ' …' : ''}.`,
  );
}

const MOST_NAMED = 12;

function isOfKind(end: End, words: EndWords): boolean {
  const { systems, seats, series, gender, tapered } = words;
  if (systems.length > 0 ? !systems.includes(end.system) : BY_NAME_ONLY.has(end.system)) return false;
  if (seats.length > 0 ? !seats.includes(end.seat) : !end.usual) return false;
  if (gender !== undefined && end.gender !== gender) return false;
  if (tapered !== undefined && systems.length === 0 && end.tapered !== tapered) return false;
  return series.length === 0 || series.includes(end.thread.series);
}

/** Kinds meant only when they are named: others share their thread and are seen more often, or look different. */
const BY_NAME_ONLY: ReadonlySet<string> = new Set(['an37', 'nptf', 'npsm', 'banjo']);

function isOfSize(end: End, words: EndWords): boolean {
  const { nominal, metric, pitchMm, tpi, dash } = words;
  const { thread } = end;
  if (dash !== undefined && end.dash !== dash) return false;
  if (metric !== undefined && metric !== (thread.family === 'iso-metric')) return false;
  if (pitchMm !== undefined && Math.abs(thread.pitchMm - pitchMm) > 0.01) return false;
  if (tpi !== undefined && thread.tpi !== tpi) return false;
  if (nominal === undefined || thread.nominal === nominal) return true;
  const byTube = DASHED.has(end.system) && words.systems.length > 0 && tpi === undefined;
  return byTube && nominal.includes('/') && pipeDash(nominal) === end.dash;
}

const LIKELY: readonly string[] = [
  'jic37',
  'an37',
  'orb',
  'g',
  'npt',
  'iso6149',
  'banjo',
  'plain',
  'sae45',
  'orfs',
  'r',
  'rc',
  'rp',
];

function byLikelihood(a: End, b: End): number {
  const rank = ({ system }: End): number => {
    const at = LIKELY.indexOf(system);
    return at < 0 ? LIKELY.length : at;
  };
  return rank(a) - rank(b);
}

/**
 * The one end that was meant.
 *
 * @throws UserError 'which-one' with the fair readings when there are several.
 */
export function oneEnd({ typed, ends }: AskedEnd, field: string): End {
  const [only, ...more] = ends;
  if (only !== undefined && more.length === 0) return only;
  throw whichEnd(typed, field, ends);
}

/** The question which of several ends was meant. */
export function whichEnd(typed: string, field: string, ends: readonly End[]): UserError {
  const sizes = new Set(ends.map(({ thread }) => thread.id));
  const what =
    sizes.size > MOST_CHOICES
      ? `"${typed}" could be ${sizes.size} threads. Say the size too, like 9/16-18, M14x1.5 or -6`
      : `"${typed}" could be several ends, and it matters which.`;
  return new UserError('which-one', what, { field, choices: spread(ends).map(endChoice) });
}

const MOST_CHOICES = 5;

/** One of each kind before a second of any, so that the few buttons show what there is to choose between. */
function spread(ends: readonly End[]): readonly End[] {
  const kinds = [...Map.groupBy(ends, (end) => `${end.system} ${end.seat} ${end.gender}`).values()];
  const firsts = kinds.flatMap(([first]) => first ?? []);
  return [...firsts, ...ends.filter((end) => !firsts.includes(end))].slice(0, MOST_CHOICES);
}

export const endChoice = ({ id }: End): Choice => ({ label: id, value: id });
