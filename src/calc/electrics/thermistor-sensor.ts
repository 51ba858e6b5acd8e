import type { Calculation } from '../../core/calculation.ts';
import { UserError } from '../../core/user-error.ts';
import { sayNumber } from '../units/say.ts';
import {
  betaOfPoints,
  curveResistance,
  curveTemperature,
  fitThermistor,
  type ThermistorPoint,
  thermistorResistance,
  thermistorTemperature,
} from './thermistor.ts';

/** A thermistor as far as its points tell, whichever formula they allow. */
export interface ThermistorSensor {
  readonly resistanceAt: (temperatureC: number) => { readonly resistanceOhm: number };
  readonly temperatureAt: (resistanceOhm: number) => { readonly temperatureC: number };
  /** What describes it, in one line. */
  readonly words: string;
  readonly coldestC: number;
  readonly hottestC: number;
  readonly notes: Pick<Calculation<unknown>, 'assumptions' | 'sources' | 'caveats'>;
  readonly data: Readonly<Record<string, number>>;
}

/**
 * A thermistor from one point with its B value, from two points (which give B), or from three (Steinhart–Hart).
 *
 * Sources and ranges: as thermistorResistance (key IEC60539) and fitThermistor (key SH68).
 * @throws UserError 'bad-input' when points and B value do not go together, 'out-of-range' as the sums it uses.
 */
export function thermistorOf(points: readonly ThermistorPoint[], betaK?: number): ThermistorSensor {
  const [one, two, three, ...more] = points;
  if (one === undefined || more.length > 0)
    throw new UserError('bad-input', 'Give one, two or three points.');
  if (betaK !== undefined && two !== undefined) {
    throw new UserError(
      'bad-input',
      'A B value goes with one point; two or three points say it better. Leave beta out.',
    );
  }
  const temperatures = points.map(({ temperatureC }) => temperatureC);
  const span = { coldestC: Math.min(...temperatures), hottestC: Math.max(...temperatures) };
  if (two !== undefined && three !== undefined) return byCurve([one, two, three], span);
  if (two !== undefined) return byBeta(one, betaOfPoints(one, two).value.betaK, span);
  if (betaK === undefined) {
    throw new UserError('bad-input', 'One point alone is no curve: give its beta, or a second point.');
  }
  // B values are taken between 25 and 85 °C by custom.
  return byBeta(one, betaK, {
    coldestC: Math.min(25, one.temperatureC),
    hottestC: Math.max(85, one.temperatureC),
  });
}

type Span = Pick<ThermistorSensor, 'coldestC' | 'hottestC'>;

function byBeta(at: ThermistorPoint, betaK: number, span: Span): ThermistorSensor {
  return {
    ...span,
    resistanceAt: (temperatureC) => thermistorResistance({ at, betaK, temperatureC }).value,
    temperatureAt: (resistanceOhm) => thermistorTemperature({ at, betaK, resistanceOhm }).value,
    words: `B = ${Math.round(betaK)} K, ${Number(at.resistanceOhm.toPrecision(5))} Ω at ${sayNumber(at.temperatureC)} °C`,
    notes: {
      assumptions: [`one B value, ${Math.round(betaK)} K, over the whole range`],
      sources: ['IEC60539'],
      caveats: [
        'Far from its points a B value is out by several degrees: measure a third point for a table.',
      ],
    },
    data: { betaK },
  };
}

function byCurve(
  points: readonly [ThermistorPoint, ThermistorPoint, ThermistorPoint],
  span: Span,
): ThermistorSensor {
  const { value: curve, sources } = fitThermistor(points);
  const words = [curve.a, curve.b, curve.c].map((each) => each.toExponential(6).replace('-', '−'));
  return {
    ...span,
    resistanceAt: (temperatureC) => curveResistance(curve, { temperatureC }).value,
    temperatureAt: (resistanceOhm) => curveTemperature(curve, { resistanceOhm }).value,
    words: `A = ${words[0]}, B = ${words[1]}, C = ${words[2]}`,
    notes: {
      assumptions: ['the three points are right: each degree they are out bends the curve'],
      sources,
      caveats: [],
    },
    data: { aPerK: curve.a, bPerK: curve.b, cPerK: curve.c },
  };
}
