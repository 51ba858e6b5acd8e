import { convert } from '../../calc/units/convert.ts';
import { type UnitId, units } from '../../calc/units/table.ts';
import { doubt, type NotRead } from './outcome.ts';
import { typedValue } from './say-line.ts';

/** The air at sea level (docs/sources.md, ISO2533). */
const AIR_KPA = 101.325;

/**
 * A pressure counted from nothing, where gauges count from the air outside.
 *
 * @param instead the line with another figure in its place.
 */
export function aboveAir(
  read: { readonly figure: number; readonly typedUnit: UnitId },
  instead: (figure: string) => string,
): NotRead {
  const gauge = gaugeOf(read);
  const said = `${read.figure} ${units[read.typedUnit].sign}`;
  return doubt(`${said} from nothing is ${gauge} above the air at sea level. Is that it?`, [instead(gauge)]);
}

/** "0.187 bar" of 1.2 bar absolute, to a thousandth of the air. */
export function gaugeOf({
  figure,
  typedUnit,
}: {
  readonly figure: number;
  readonly typedUnit: UnitId;
}): string {
  const kPa = Math.round((convert(figure, typedUnit, 'kPa') - AIR_KPA) * 10) / 10;
  return typedValue(Number(convert(kPa, 'kPa', typedUnit).toPrecision(4)), typedUnit);
}
