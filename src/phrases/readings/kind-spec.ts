import { convert } from '../../calc/units/convert.ts';
import { isUnitId, type UnitId } from '../../calc/units/table.ts';
import type { FieldName } from '../quantity/fields.ts';

/** A kind of reading as far as reading a typed line needs to know it. */
export interface KindSpec {
  readonly name: string;
  /** What people call it, in small letters; the name itself always counts. */
  readonly words: readonly string[];
  /** How its value is typed; null where its unit is the crew's own word. */
  readonly field: FieldName | null;
  /** What it is kept in. */
  readonly unit: string;
  /** What `possible` and `usual` are counted in. */
  readonly shown: string;
  readonly possible?: readonly [min: number, max: number] | undefined;
  readonly usual?: readonly [min: number, max: number] | undefined;
  /** Numbers beside one another belong to cylinder 1, 2, 3 and so on. */
  readonly place?: 'cylinder' | 'bearing' | 'valve' | undefined;
}

/** A value in the kind's own unit as a figure in what its bounds are counted in. */
export function inShown(value: number, { unit, shown }: KindSpec): number {
  return isUnitId(unit) && isUnitId(shown) ? convert(value, unit, shown) : value;
}

/** A value of a field, in that field's unit, as one in the unit the kind is kept in. */
export function inKept(value: number, from: UnitId, { unit }: KindSpec): number {
  return isUnitId(unit) && unit !== from && !RATIOS.has(unit) ? convert(value, from, unit) : value;
}

/** A λ and a share are plain numbers in their fields. */
const RATIOS: ReadonlySet<string> = new Set(['lambda', '1']);

/** Whether a value, in the kind's own unit, lies within bounds given in what it is shown in. */
export function within(
  value: number,
  bounds: readonly [number, number] | undefined,
  kind: KindSpec,
): boolean {
  if (bounds === undefined) return true;
  const [min, max] = bounds;
  const figure = inShown(value, kind);
  const slack = 1e-9 * Math.max(Math.abs(min), Math.abs(max));
  return figure >= min - slack && figure <= max + slack;
}
