import type { KindSpec } from './kind-spec.ts';
import type { LineAmount, Piece } from './take-apart.ts';

/** What each amount of a line is to a kind of reading. */
export interface Roles {
  readonly values: readonly LineAmount[];
  readonly speed: readonly LineAmount[];
  readonly temperature: readonly LineAmount[];
  readonly boost: readonly LineAmount[];
  /** A pressure that nobody named. */
  readonly pressure: readonly LineAmount[];
  /** A number without a unit that can be nothing. */
  readonly bare: readonly LineAmount[];
  /** With a unit of something else. */
  readonly foreign: readonly LineAmount[];
}

type Role = keyof Roles;

const ENGINE_SPEED = /^\d{3,5}$/;
const SLOWEST_RPM = 300;

/** Tells value and conditions apart by their units; a number alone goes by its neighbours. */
export function rolesOf(pieces: readonly Piece[], kind: KindSpec, boostWords: readonly string[]): Roles {
  const boosted = labelled(pieces, boostWords);
  const roles = new Map<LineAmount, Role>();
  for (const piece of pieces) {
    if (piece.type === 'amount') roles.set(piece, roleByUnit(piece, kind, boosted));
  }
  const bare = [...roles].flatMap(([amount, role]) => (role === 'bare' ? [amount] : []));
  for (const amount of bare.toReversed()) {
    // "12.1 12.0 11.8 bar": what stands right before a value shares its unit
    const next = pieces[pieces.indexOf(amount) + 1];
    if (next?.type === 'amount' && roles.get(next) === 'values') roles.set(amount, 'values');
  }
  for (const amount of bare.filter((each) => roles.get(each) === 'bare')) {
    const speedSaid = [...roles.values()].includes('speed');
    if (amount.afterAt && !speedSaid && isEngineSpeed(amount.figures)) roles.set(amount, 'speed');
  }
  const valued = (): boolean => [...roles.values()].includes('values');
  const given = valued();
  for (const amount of bare.filter((each) => roles.get(each) === 'bare' && !each.afterAt)) {
    const another = hasPlaces(kind) && (!given || sameFooting(amount, pieces, roles));
    if (another || !valued()) roles.set(amount, 'values');
  }
  return grouped(roles);
}

/** Kinds of which one line may hold several values, each with a word of its own. */
const hasPlaces = ({ place, name }: KindSpec): boolean => place !== undefined || name === 'battery voltage';

const isEngineSpeed = (figures: string): boolean =>
  ENGINE_SPEED.test(figures) && Number(figures) >= SLOWEST_RPM;

function roleByUnit(amount: LineAmount, kind: KindSpec, boosted: ReadonlySet<Piece>): Role {
  const { fields, ownUnit } = amount;
  if (ownUnit)
    return kind.field === null && kind.unit.toLowerCase() === amount.unit.toLowerCase()
      ? 'values'
      : 'foreign';
  if (fields.length === 0) return 'bare';
  if (boosted.has(amount) && kind.name !== 'boost') return 'boost';
  if (kind.field !== null && fields.includes(kind.field)) return 'values';
  if (fields.includes('speed')) return 'speed';
  if (fields.includes('temperature')) return 'temperature';
  return fields.includes('pressure') ? 'pressure' : 'foreign';
}

/** A bare number with a state or a place of its own, beside values that have units: "12.65 V rest 10.2 cranking". */
function sameFooting(
  amount: LineAmount,
  pieces: readonly Piece[],
  roles: ReadonlyMap<LineAmount, Role>,
): boolean {
  const at = pieces.indexOf(amount);
  const labelled = [pieces[at - 1], pieces[at + 1]].some(
    (piece) => piece?.type === 'state' || piece?.type === 'place',
  );
  return labelled && [...roles].some(([, role]) => role === 'values');
}

/** Pressures named as boost: the one right behind the word, else the one right before it. */
function labelled(pieces: readonly Piece[], boostWords: readonly string[]): ReadonlySet<Piece> {
  const found = new Set<Piece>();
  for (const [index, piece] of pieces.entries()) {
    if (piece.type !== 'kind' || !boostWords.includes(piece.word)) continue;
    const neighbours = [pieces[index + 1], pieces[index - 1]];
    const pressure = neighbours.find((each) => each?.type === 'amount' && each.fields.includes('pressure'));
    if (pressure !== undefined) found.add(pressure);
  }
  return found;
}

function grouped(roles: ReadonlyMap<LineAmount, Role>): Roles {
  const of = (wanted: Role): readonly LineAmount[] =>
    [...roles].flatMap(([amount, role]) => (role === wanted ? [amount] : []));
  return {
    values: of('values'),
    speed: of('speed'),
    temperature: of('temperature'),
    boost: of('boost'),
    pressure: of('pressure'),
    bare: of('bare'),
    foreign: of('foreign'),
  };
}
