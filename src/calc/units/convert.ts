import { gaugeOfArea, wireOfGauge } from '../../calc/electrics/wire-gauge.ts';
import { UserError } from '../../core/user-error.ts';
import { dimensions, type UnitId, units } from './table.ts';

/**
 * A figure in a unit as a figure in the base unit of its dimension: mm, kPa, N·m, °C, cc/min and so on.
 *
 * Source: the unit's own (docs/sources.md). Valid: any finite figure; a wire gauge from 4/0 (−3) to 40.
 * @throws UserError 'out-of-range' for a wire gauge there is none of.
 */
export function toBase(figure: number, unit: UnitId): number {
  const { scale } = units[unit];
  switch (scale.kind) {
    case 'factor':
      return figure * scale.factor;
    case 'offset':
      return (figure - scale.zero) * scale.factor;
    case 'reciprocal':
      return scale.factor / figure;
    case 'wire-gauge':
      return wireOfGauge({ gaugeNumber: figure }).value.areaMm2;
  }
}

/** The other way round. @throws UserError 'out-of-range' for an area no wire gauge has. */
export function fromBase(base: number, unit: UnitId): number {
  const { scale } = units[unit];
  switch (scale.kind) {
    case 'factor':
      return base / scale.factor;
    case 'offset':
      return base / scale.factor + scale.zero;
    case 'reciprocal':
      return scale.factor / base;
    case 'wire-gauge':
      return gaugeOfArea({ areaMm2: base }).value.gaugeNumber;
  }
}

/** @throws UserError 'bad-input' for units of two dimensions; 'out-of-range' as `toBase`. */
export function convert(figure: number, from: UnitId, to: UnitId): number {
  const [source, target] = [units[from], units[to]];
  if (source.dimension !== target.dimension) {
    throw new UserError(
      'bad-input',
      `${source.sign} is ${dimensions[source.dimension].called} and ${target.sign} is ${dimensions[target.dimension].called}: the one does not become the other.`,
    );
  }
  return from === to ? figure : fromBase(toBase(figure, from), to);
}

/**
 * How large a difference is in the base unit: 10 °F apart is 5.56 °C apart, whatever the zeros of the two scales.
 *
 * For a unit counted the other way round, or a gauge, a difference has a size only beside a value; it is given here for
 * a small one around `at`.
 */
export function differenceToBase(difference: number, unit: UnitId, at: number): number {
  const { scale } = units[unit];
  if (scale.kind === 'factor' || scale.kind === 'offset') return Math.abs(difference) * scale.factor;
  return Math.abs(toBase(at + difference, unit) - toBase(at - difference, unit)) / 2;
}
