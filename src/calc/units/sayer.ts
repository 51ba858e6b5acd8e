import { fromBase, toBase } from './convert.ts';
import { BUILT_IN, type OwnUnits, type Saying, sayings, type Way } from './own-units.ts';
import { sayFigure } from './say.ts';
import { type UnitId, units } from './table.ts';

/** Says quantities in the units of whoever asks. Each is handed over in the unit its saying names as given. */
export interface Sayer {
  /** In their unit, and what the other trade says beside it: "58 psi (4 bar)". */
  both(what: Saying, figure: number, figures?: number): string;
  /** In their unit alone: "58 psi". */
  one(what: Saying, figure: number, figures?: number): string;
  /** Both ends in one unit: "0.43 to 0.47 mm (0.0169 to 0.0185 in)". */
  bothRange(what: Saying, from: number, to: number, figures?: number): string;
  /** The same in their unit alone. */
  range(what: Saying, from: number, to: number, figures?: number): string;
  /** An injector's flow, which is sold by volume and by mass: "440 cc/min (45.6 lb/h)". */
  injector(ccMin: number, densityKgM3: number): string;
  /** The same for a request that meant this unit without typing it. */
  answering(unit: UnitId): Sayer;
  /** The unit it would be said in. */
  unitOf(what: Saying, figure: number): UnitId;
}

const FIGURES = 3;

/**
 * @param own the crew's choice.
 * @param typed units of the request itself: who types psi is answered in psi, the first of a kind before the others.
 */
export function sayerFor(own: OwnUnits = BUILT_IN, typed: readonly UnitId[] = []): Sayer {
  const unitOf = (what: Saying, figure: number): UnitId => unitOn(chosen(what, own, typed), figure);
  return {
    unitOf,
    answering: (unit) => sayerFor(own, [...typed, unit]),
    one: (what, figure, figures) => say(what, figure, unitOf(what, figure), figures),
    both(what, figure, figures) {
      const beside = unitOn(wayNamed(what, chosen(what, own, typed).beside), figure);
      return `${say(what, figure, unitOf(what, figure), figures)} (${say(what, figure, beside, figures)})`;
    },
    range: (what, from, to, figures) => rangeIn(what, [from, to], unitOf(what, to), figures),
    bothRange(what, from, to, figures) {
      const beside = unitOn(wayNamed(what, chosen(what, own, typed).beside), to);
      const ends = [from, to] as const;
      return `${rangeIn(what, ends, unitOf(what, to), figures)} (${rangeIn(what, ends, beside, figures)})`;
    },
    injector(ccMin, densityKgM3) {
      const volume = sayFigure(ccMin, 'cc/min', FIGURES);
      const mass = sayFigure(fromBase((ccMin * densityKgM3) / 60_000, 'lb/h'), 'lb/h', FIGURES);
      const sold = typed.find((unit) => unit === 'cc/min' || unit === 'lb/h') ?? own.flow;
      return sold === 'lb/h' ? `${mass} (${volume})` : `${volume} (${mass})`;
    },
  };
}

/** As the request itself says it, else as the crew does. */
function chosen(what: Saying, own: OwnUnits, typed: readonly UnitId[]): Way {
  const { by, ways } = sayings[what];
  for (const unit of typed) {
    const asTyped = [...ways.values()].find((each) => each.typed.includes(unit));
    if (asTyped !== undefined) return asTyped;
  }
  return wayNamed(what, own[by]);
}

function wayNamed(what: Saying, name: string): Way {
  const found = sayings[what].ways.get(name);
  if (found === undefined) throw new Error(`${what} is not said in ${name}`);
  return found;
}

const unitOn = ({ steps: [first, ...larger] }: Way, figure: number): UnitId =>
  (larger.findLast(([from]) => Math.abs(figure) >= from) ?? first)[1];

/** Degrees are whole unless somebody asks for more, and clearances end where a micrometer does. */
function say(what: Saying, figure: number, unit: UnitId, figures: number | undefined): string {
  const { given } = sayings[what];
  const shown = unit === given ? figure : fromBase(toBase(figure, given), unit);
  if (what === 'temperature' && figures === undefined) return sayFigure(Math.round(shown), unit);
  if (what === 'clearance') return sayFigure(Number(shown.toFixed(unit === 'in' ? 4 : 3)), unit);
  return sayFigure(shown, unit, figures ?? FIGURES);
}

/** The unit once, behind the second end. */
function rangeIn(
  what: Saying,
  [from, to]: readonly [number, number],
  unit: UnitId,
  figures: number | undefined,
): string {
  const { sign } = units[unit];
  const low = say(what, from, unit, figures);
  return `${low.slice(0, -sign.length).trimEnd()} to ${say(what, to, unit, figures)}`;
}
