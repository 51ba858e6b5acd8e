import { fromBase, toBase } from './convert.ts';
import { BUILT_IN, type OwnUnits, type Saying, sayings, type Way } from './own-units.ts';
import { sayFigure } from './say.ts';
import type { UnitId } from './table.ts';

/** Says quantities in the units of whoever asks. Each is handed over in the unit its saying names as given. */
export interface Sayer {
  /** In their unit, and what the other trade says beside it: "58 psi (4 bar)". */
  both(what: Saying, figure: number, figures?: number): string;
  /** In their unit alone: "58 psi". */
  one(what: Saying, figure: number, figures?: number): string;
  /** An injector's flow, which is sold by volume and by mass: "440 cc/min (45.6 lb/h)". */
  injector(flow: { readonly ccMin: number; readonly densityKgM3: number }): string;
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
    one: (what, figure, figures) => say(what, figure, unitOf(what, figure), figures),
    both(what, figure, figures) {
      const beside = unitOn(wayNamed(what, chosen(what, own, typed).beside), figure);
      return `${say(what, figure, unitOf(what, figure), figures)} (${say(what, figure, beside, figures)})`;
    },
    injector({ ccMin, densityKgM3 }) {
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

/** Degrees are whole unless somebody asks for more: no thermometer of a workshop is read closer. */
function say(what: Saying, figure: number, unit: UnitId, figures: number | undefined): string {
  const { given } = sayings[what];
  const shown = unit === given ? figure : fromBase(toBase(figure, given), unit);
  if (what === 'temperature' && figures === undefined) return sayFigure(Math.round(shown), unit);
  return sayFigure(shown, unit, figures ?? FIGURES);
}
