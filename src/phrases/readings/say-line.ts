import { isUnitId, units } from '../../calc/units/table.ts';
import type { LineConditions } from './line-reading.ts';

/** A figure to be typed again: without groups, and with no three digits behind a point. */
export function typedFigure(figure: number): string {
  const plain = String(Number(figure.toPrecision(10)));
  return /\.\d{3}$/u.test(plain) ? `${plain}0` : plain;
}

/** A value as it would be typed: `4.1 bar`, `0.86`, `6 turns`. */
export function typedValue(figure: number, unit: string): string {
  const sign = isUnitId(unit) ? units[unit].sign : unit;
  return unit === 'lambda' ? typedFigure(figure) : `${typedFigure(figure)} ${sign}`.trim();
}

/** Conditions as they would be typed behind a value. */
export function typedConditions({
  speedRpm,
  temperatureC,
  boostKPa,
  place,
  fuel,
  states,
}: LineConditions): string {
  return [
    place,
    speedRpm === undefined ? undefined : `at ${typedFigure(speedRpm)} rpm`,
    temperatureC === undefined ? undefined : `${typedFigure(temperatureC)} °C`,
    boostKPa === undefined ? undefined : `${typedFigure(boostKPa)} kPa boost`,
    fuel,
    ...states,
  ]
    .filter((part) => part !== undefined)
    .join(' ');
}

/** A line that reads back as just this. */
export function sayLine(
  kind: string,
  values: readonly { readonly figure: number; readonly unit: string; readonly conditions: LineConditions }[],
): string {
  const several = values.length > 1;
  const parts = values.map(({ figure, unit, conditions }) => {
    const { place, states, ...shared } = conditions;
    const own = [place, ...(several ? states : [])].filter((part) => part !== undefined).join(' ');
    const rest = several ? '' : typedConditions({ ...shared, states });
    return `${own} ${typedValue(figure, unit)} ${rest}`.trim();
  });
  const [first] = values;
  const behind =
    several && first !== undefined ? typedConditions({ ...withoutPlace(first.conditions), states: [] }) : '';
  return `${kind} ${parts.join(' ')} ${behind}`.replace(/\s+/gu, ' ').trim();
}

function withoutPlace({ place: _place, ...rest }: LineConditions): LineConditions {
  return rest;
}
