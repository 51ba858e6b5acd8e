import { z } from 'zod';
import { defineCommand, subcommand } from '../src/bot/command.ts';
import {
  absolutePressure,
  fuelFlow,
  gaugePressure,
  height,
  lambdaValue,
  massFlow,
  quantity,
  turningSpeed,
} from '../src/bot/quantity-option.ts';
import { sumAnswer } from '../src/bot/sum-answer.ts';
import { airForPower, powerFromAir } from '../src/calc/air/air-power.ts';
import { airDensity } from '../src/calc/air/density.ts';
import { airFromFuel, engineAirFlow, volumetricEfficiency } from '../src/calc/air/engine-air.ts';
import { outsidePressure } from '../src/calc/air/outside.ts';
import { powerCorrection } from '../src/calc/air/power-correction.ts';
import { standardAtmosphere } from '../src/calc/air/standard-atmosphere.ts';
import { together } from '../src/calc/together.ts';
import { toBase } from '../src/calc/units/convert.ts';
import { sayIn, sayNumber } from '../src/calc/units/say.ts';
import { UserError } from '../src/core/user-error.ts';

const boost = gaugePressure('boost', 'Gauge pressure in the manifold; vacuum is negative').optional();
const altitude = height('altitude', 'Height above sea level, e.g. 1600 m').optional();
const map = absolutePressure('map', 'Absolute pressure in the manifold, instead of boost').optional();
const lambda = lambdaValue('lambda', 'λ at that load').prefault('0.85');
const afr = quantity('afr', 'ratio', 'Stoichiometric ratio of the fuel: petrol 14.7, E85 9.8').prefault(
  '14.7',
);

/** Absolute manifold pressure from whichever was given; full throttle without boost when nothing was. */
function manifold(given: {
  readonly map?: number | undefined;
  readonly boost?: number | undefined;
  readonly altitude?: number | undefined;
}) {
  if (given.map !== undefined && given.boost !== undefined) {
    throw new UserError('bad-input', 'Give map (absolute) or boost (above the air outside), not both.');
  }
  if (given.map !== undefined) return { pressureKpa: given.map, notes: together() };
  const outside = outsidePressure({
    altitudeM: given.altitude === undefined ? undefined : given.altitude * 1000,
  });
  const pressureKpa = outside.value.atmosphereKpa + (given.boost ?? 0);
  const unsaid =
    given.boost === undefined ? ['no boost and full throttle: the manifold is at the pressure outside'] : [];
  return { pressureKpa, notes: together(outside, { assumptions: unsaid }) };
}

const flow = subcommand({
  description: 'Air an engine breathes, from displacement, speed, VE, pressure and temperature',
  example: '/air flow displacement:"2 L" speed:6500rpm boost:"1 bar"',
  assumes: ['ve', 'temp', 'altitude'],
  input: z.object({
    displacement: quantity('displacement', 'volume', 'Displacement, e.g. 2 L, 1998 cc, 350 ci'),
    speed: turningSpeed('speed', 'Engine speed'),
    ve: quantity('ve', 'percent', 'Volumetric efficiency, of the air in the manifold').prefault('90 %'),
    temp: quantity('temp', 'temperature', 'Air in the manifold').prefault('40 °C'),
    boost,
    map,
    altitude,
  }),
  run(asked, { say }) {
    const { pressureKpa, notes } = manifold(asked);
    const sum = engineAirFlow({
      displacementL: asked.displacement,
      speedRpm: asked.speed,
      veRatio: asked.ve,
      pressureKpa,
      temperatureC: asked.temp,
    });
    const { massFlowGs, volumeFlowM3h, densityKgM3 } = sum.value;
    const flowCcMin = toBase(volumeFlowM3h, 'm3/h');
    return sumAnswer({
      subject: 'Air',
      result: `${say.both('airFlow', massFlowGs)} of air`,
      working: [
        `${say.one('pressure', pressureKpa)} absolute at ${say.one('temperature', asked.temp)}: ${densityKgM3.toFixed(3)} kg/m³`,
        `${sayIn(flowCcMin, 'm3/h', 3)} of it (${sayIn(flowCcMin, 'cfm', 3)})`,
      ],
      calculation: together(
        {
          assumptions: [
            `VE ${sayIn(asked.ve, 'percent', 2)} (common practice unless measured), air at ${say.one('temperature', asked.temp)}`,
          ],
        },
        notes,
        sum,
      ),
      data: {
        kind: 'air-flow',
        massFlowGs,
        volumeFlowCcMin: flowCcMin,
        densityKgM3,
        manifoldKPa: pressureKpa,
        veRatio: asked.ve,
      },
    });
  },
});

const ve = subcommand({
  description: 'Volumetric efficiency back from fuel flow and λ, or from a measured air flow',
  example: '/air ve displacement:"2 L" speed:6500rpm fuel:"28 g/s" lambda:0.82 boost:"1 bar"',
  assumes: ['lambda', 'afr', 'temp', 'density', 'altitude'],
  input: z.object({
    displacement: quantity('displacement', 'volume', 'Displacement, e.g. 2 L, 1998 cc, 350 ci'),
    speed: turningSpeed('speed', 'Engine speed'),
    fuel: fuelFlow('fuel', 'All the fuel it burns: g/s, kg/h, cc/min').optional(),
    air: massFlow('air', 'Or the air, measured: g/s, kg/h, lb/min').optional(),
    lambda,
    afr,
    temp: quantity('temp', 'temperature', 'Air in the manifold').prefault('40 °C'),
    density: quantity('density', 'density', 'Of the fuel, when it is given in cc/min').prefault('0.745 g/cc'),
    boost,
    map,
    altitude,
  }),
  run(asked, { say }) {
    const { pressureKpa, notes } = manifold(asked);
    const breathed = airBreathed(asked);
    const sum = volumetricEfficiency({
      displacementL: asked.displacement,
      speedRpm: asked.speed,
      massFlowGs: breathed.massFlowGs,
      pressureKpa,
      temperatureC: asked.temp,
    });
    const { veRatio } = sum.value;
    return sumAnswer({
      subject: 'Air',
      result: `Volumetric efficiency ${sayIn(veRatio, 'percent', 2)} of the air in the manifold`,
      working: [
        `${say.both('airFlow', breathed.massFlowGs)} of air`,
        `${say.one('pressure', pressureKpa)} absolute at ${say.one('temperature', asked.temp)}`,
      ],
      calculation: together(breathed.notes, notes, sum),
      data: {
        kind: 've',
        veRatio,
        massFlowGs: breathed.massFlowGs,
        manifoldKPa: pressureKpa,
        temperatureC: asked.temp,
      },
    });
  },
});

/** @throws UserError 'bad-input' unless exactly one of fuel and air was given. */
function airBreathed(asked: {
  readonly fuel?: { readonly massGs: number } | { readonly volumeCcMin: number } | undefined;
  readonly air?: number | undefined;
  readonly lambda: number;
  readonly afr: number;
  readonly density: number;
}) {
  const { fuel, air, density } = asked;
  if ((fuel === undefined) === (air === undefined)) {
    throw new UserError('bad-input', 'Give either fuel or air: fuel:"28 g/s" with its λ, or air:"170 g/s".');
  }
  if (fuel === undefined) return { massFlowGs: air ?? 0, notes: together() };
  const byVolume = 'volumeCcMin' in fuel;
  const sum = airFromFuel({
    fuelFlowGs: byVolume ? (fuel.volumeCcMin * density) / 60_000 : fuel.massGs,
    lambdaRatio: asked.lambda,
    stoichiometricAfr: asked.afr,
  });
  return {
    ...sum.value,
    notes: together(sum, {
      assumptions: [
        `λ ${sayNumber(asked.lambda)}, stoichiometric ratio ${sayNumber(asked.afr)}`,
        ...(byVolume ? [`fuel of ${sayIn(density, 'kg/m3', 3)}`] : []),
      ],
    }),
  };
}

/**
 * Fuel per work to expect, g/kWh: 300 on petrol, and by as much more as another fuel needs for the same air, since a gram of
 * air releases about as much heat with any of them. Common practice, no source.
 */
const usualFuelUse = (stoichiometricAfr: number): number => (300 * PETROL_AFR) / stoichiometricAfr;
const PETROL_AFR = 14.7;

const power = subcommand({
  description: 'Power that an air flow can make, or the air a power needs',
  example: '/air power air:"150 g/s"',
  assumes: ['lambda', 'afr', 'bsfc'],
  input: z.object({
    air: massFlow('air', 'Air flow: g/s, kg/h, lb/min').optional(),
    power: quantity('power', 'power', 'Or the power wanted, at the crankshaft').optional(),
    lambda,
    afr,
    bsfc: z
      .number()
      .min(150)
      .max(900)
      .optional()
      .describe('Fuel per work, g/kWh: petrol 270 to 330 usual; left out, 300 for petrol'),
  }),
  run(asked, { say }) {
    const bsfc = asked.bsfc ?? usualFuelUse(asked.afr);
    const mixture = { lambdaRatio: asked.lambda, stoichiometricAfr: asked.afr, bsfcGPerKwh: bsfc };
    if ((asked.air === undefined) === (asked.power === undefined)) {
      throw new UserError('bad-input', 'Give either air or power: air:"150 g/s", or power:"300 hp".');
    }
    const assumed = {
      assumptions: [
        `λ ${sayNumber(asked.lambda)}, stoichiometric ratio ${sayNumber(asked.afr)}, ${sayNumber(bsfc, 3)} g/kWh (common practice unless measured)`,
      ],
    };
    const sum =
      asked.power === undefined
        ? powerFromAir({ massFlowGs: asked.air ?? 0, ...mixture })
        : airForPower({ powerKw: asked.power, ...mixture });
    const powerKw = 'powerKw' in sum.value ? sum.value.powerKw : (asked.power ?? 0);
    const massFlowGs = 'massFlowGs' in sum.value ? sum.value.massFlowGs : (asked.air ?? 0);
    return sumAnswer({
      subject: 'Air',
      result:
        asked.power === undefined ? say.both('power', powerKw) : `${say.both('airFlow', massFlowGs)} of air`,
      working: [
        asked.power === undefined ? `${say.both('airFlow', massFlowGs)} of air` : say.both('power', powerKw),
        `${say.both('burn', sum.value.fuelFlowGs)} of fuel`,
      ],
      calculation: together(assumed, sum),
      data: {
        kind: 'air-power',
        powerKW: powerKw,
        massFlowGs,
        fuelFlowGs: sum.value.fuelFlowGs,
        lambdaRatio: asked.lambda,
        bsfcGPerKWh: bsfc,
      },
    });
  },
});

const altitudeOf = subcommand({
  description: 'Pressure, temperature and density of the standard day at a height',
  example: '/air altitude height:"1600 m"',
  input: z.object({ height: height('height', 'Height above sea level, e.g. 1600 m, 5000 ft') }),
  run({ height }, { say }) {
    const sum = standardAtmosphere({ altitudeM: height * 1000 });
    const { pressureKpa, temperatureC, densityKgM3, densityRatio } = sum.value;
    return sumAnswer({
      subject: 'Air',
      result: `${say.both('pressure', pressureKpa, 4)}, ${sayIn(Math.abs(1 - densityRatio), 'percent', 2)} ${densityRatio > 1 ? 'more' : 'less'} air than at sea level`,
      working: [
        `${say.one('temperature', temperatureC)} and ${densityKgM3.toFixed(3)} kg/m³ at ${say.both('height', height * 1000, 4)}`,
      ],
      calculation: sum,
      data: {
        kind: 'atmosphere',
        altitudeMm: height * 1e6,
        pressureKPa: pressureKpa,
        temperatureC,
        densityKgM3,
        densityRatio,
      },
    });
  },
});

const density = subcommand({
  description: 'Density of air at a pressure and temperature, dry or moist',
  example: '/air density temp:"30 °C" humidity:"60 %"',
  assumes: ['pressure', 'humidity'],
  input: z.object({
    temp: quantity('temp', 'temperature', 'Air temperature'),
    pressure: absolutePressure('pressure', 'Absolute pressure').prefault('1 atm'),
    humidity: quantity('humidity', 'percent', 'Relative humidity').prefault('0 %'),
  }),
  run({ temp, pressure, humidity }, { say }) {
    const sum = airDensity({ pressureKpa: pressure, temperatureC: temp, humidityRatio: humidity });
    const { densityKgM3, vapourKpa, dryKpa } = sum.value;
    return sumAnswer({
      subject: 'Air',
      result: `${densityKgM3.toFixed(3)} kg/m³, ${sayIn(densityKgM3 / 1.225, 'percent', 2)} of the standard day at sea level`,
      working:
        humidity > 0
          ? [`${say.one('pressure', vapourKpa)} of it is water vapour, ${say.one('pressure', dryKpa, 4)} dry`]
          : [],
      calculation: together({ assumptions: [`${say.one('pressure', pressure, 4)} absolute`] }, sum),
      data: {
        kind: 'air-density',
        densityKgM3,
        pressureKPa: pressure,
        temperatureC: temp,
        vapourKPa: vapourKpa,
        dryKPa: dryKpa,
      },
    });
  },
});

const correct = subcommand({
  description: 'Carries a measured power to the standard day: ISO 1585, SAE J1349 or DIN 70020',
  example: '/air correct power:"250 hp" pressure:"95 kPa" temp:"30 °C"',
  assumes: ['rule'],
  input: z.object({
    power: quantity('power', 'power', 'Power as measured'),
    pressure: absolutePressure('pressure', 'Air pressure, less vapour for ISO 1585 and J1349'),
    temp: quantity('temp', 'temperature', 'Intake air'),
    rule: z.enum(['iso1585', 'j1349', 'din70020']).default('iso1585').describe('Which rule'),
  }),
  run({ power: measured, pressure, temp, rule }, { say }) {
    const sum = powerCorrection({ rule, pressureKpa: pressure, temperatureC: temp });
    const { factorRatio } = sum.value;
    return sumAnswer({
      subject: 'Air',
      result: `${say.both('power', measured * factorRatio)} corrected, factor ${factorRatio.toFixed(3)}`,
      working: [
        `${say.both('power', measured)} measured at ${say.one('pressure', pressure)} and ${say.one('temperature', temp)}`,
      ],
      calculation: sum,
      data: { kind: 'power-correction', rule, powerKW: measured * factorRatio, factorRatio },
    });
  },
});

export default defineCommand({
  description: 'Air an engine breathes, what power it is good for, and the air outside',
  subcommands: { flow, ve, power, altitude: altitudeOf, density, correct },
});
