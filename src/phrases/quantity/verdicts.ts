import { fromBase, toBase } from '../../calc/units/convert.ts';
import { sayExactly, sayFigure } from '../../calc/units/say.ts';
import { type UnitId, units } from '../../calc/units/table.ts';
import type { Admitted, Field } from './fields.ts';
import type { Ask, Offer, Refusal } from './reading.ts';

/** A figure in a unit as a value of a field, whether or not it is within its limits. */
export interface Valued {
  readonly value: number;
  readonly unit: UnitId;
  readonly figure: number;
  readonly typedUnit: UnitId;
  readonly possible: boolean;
}

/** A refusal in two sentences: what was wrong, and what would be read. */
export function refuse(problem: string, field: Field): Refusal {
  return { verdict: 'refuse', problem: `${problem} Type it like ${field.examples}.` };
}

/** A question with the readings that are possible; those beyond the limits are left out. */
export function ask(question: string, options: readonly Valued[]): Ask {
  return { verdict: 'ask', question, options: options.filter(({ possible }) => possible).map(offer) };
}

export function offer({ value, unit, figure, typedUnit }: Valued): Offer {
  return { value, unit, typed: sayExactly(figure, typedUnit) };
}

/** The value of a figure, in the unit the field works in, and whether it can be true. */
export function valued(figure: number, typedUnit: UnitId, field: Field): Valued {
  const place = placeOf(typedUnit, field);
  const unit = place.unit;
  const gauge = units[typedUnit].scale.kind === 'wire-gauge';
  if (gauge && !(Number.isInteger(figure) && figure >= -3 && figure <= 40)) {
    return { value: Number.NaN, unit, figure, typedUnit, possible: false };
  }
  // minus zero is zero
  const value = fromBase(toBase(figure, typedUnit), unit) + 0;
  const { min, max, zero } = place;
  const possible =
    Number.isFinite(value) && ((value >= min && value <= max) || (zero === true && value === 0));
  return { value, unit, figure, typedUnit, possible };
}

/** What the field says of the dimension a unit is of. */
export function placeOf(unit: UnitId, field: Field): Admitted {
  const { dimension } = units[unit];
  const place = field.admits.find((each) => each.dimension === dimension);
  if (place === undefined) throw new Error(`${unit} is none of ${field.called}`);
  return place;
}

/** Says which limits a value is beyond, in the unit it was typed in where that has the same direction. */
export function beyondLimits(typed: string, unit: UnitId, field: Field): Refusal {
  const { min, max, unit: own } = placeOf(unit, field);
  return refuse(
    `${field.called} of ${typed} cannot be: it is between ${sayFigure(min, own)} and ${sayFigure(max, own)}.`,
    field,
  );
}
