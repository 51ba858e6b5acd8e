import { z } from 'zod';
import { defineCommand, subcommand } from '../src/bot/command.ts';
import { enginePower, fuelUseOptions } from '../src/bot/engine-power.ts';
import { gaugePressure, pumpFlow, quantity, runLength } from '../src/bot/quantity-option.ts';
import { sumAnswer } from '../src/bot/sum-answer.ts';
import { smallestHose } from '../src/calc/fittings/dash.ts';
import { boreForVelocity, lineFlow } from '../src/calc/fuel/fuel-line.ts';
import { pressureAcrossInjector } from '../src/calc/fuel/injector-pressure.ts';
import type { KnownFuel } from '../src/calc/fuel/known-fuel.ts';
import { pumpNeed, pumpSupply } from '../src/calc/fuel/pump.ts';
import { ccMinOf, typedFuelUse, typedLiquid } from '../src/calc/fuel/typed-fuel.ts';
import { FUEL_CAUTION } from '../src/calc/fuel/words.ts';
import { percent } from '../src/calc/sum-words.ts';
import { together } from '../src/calc/together.ts';
import { toBase } from '../src/calc/units/convert.ts';
import { INCH_MM } from '../src/calc/units/definitions.ts';
import { sayIn, sayNumber } from '../src/calc/units/say.ts';
import type { Calculation } from '../src/core/calculation.ts';
import { UserError } from '../src/core/user-error.ts';
import { FUEL_EXAMPLES, readFuelName } from '../src/phrases/fuel-name.ts';
import { readFuelUse } from '../src/phrases/fuel-use.ts';
import { readPairs } from '../src/phrases/pairs.ts';
import { dashSizes } from '../src/tables/fitting-sizes.ts';
import { fuelNames, fuelRows } from '../src/tables/fuels.ts';

const SUBJECT = 'Fuel pump';
const text = (description: string) => z.string().min(1).max(200).describe(description);
const options = {
  fuel: text('petrol, E85, M15, 70% ethanol, petrol 2.7% oxygen').default('petrol'),
  base: quantity('base', 'pressure', 'Rail pressure without boost').prefault('3 bar'),
  boost: gaugePressure('boost', 'Boost in the manifold that the regulator adds, 1:1').prefault('0 bar'),
} as const;

function fuelOf(typed: string, densityKgM3?: number): Calculation<KnownFuel> {
  const read = readFuelName(typed, fuelNames);
  return typedLiquid(read, fuelRows, { field: 'fuel', accepted: FUEL_EXAMPLES, densityKgM3 });
}

/** Rail pressure that a regulator following the manifold holds. */
const railOf = (baseKpa: number, boostKpa: number) =>
  pressureAcrossInjector({ baseKpa, manifoldKpa: boostKpa, referenced: true });

const need = subcommand({
  description: 'Flow a pump must bring for a power, and at which pressure',
  example: '/pump need power:400hp boost:1.2bar fuel:E85',
  assumes: ['fuel', 'intake', 'bsfc', 'margin', 'base'],
  input: z.object({
    power: enginePower('power', 'Power wanted, e.g. 400 hp, 300 kW, 380 whp'),
    boost: options.boost,
    base: options.base,
    fuel: options.fuel,
    intake: fuelUseOptions.intake,
    bsfc: fuelUseOptions.bsfc,
    margin: quantity('margin', 'percent', 'In hand over what is burnt').prefault('20 %'),
    at: fuelUseOptions.at,
    loss: fuelUseOptions.loss,
    density: fuelUseOptions.density,
  }),
  run(asked, { say }) {
    const tank = fuelOf(asked.fuel, asked.density);
    const { densityKgM3 } = tank.value;
    const typedUse = asked.bsfc === undefined ? undefined : readFuelUse(asked.bsfc);
    const use = typedFuelUse(typedUse, asked.intake, tank.value);
    const { powerKw, at } = asked.power;
    const wheels = (asked.at ?? at) === 'wheels';
    const crankPowerKw = wheels ? powerKw / (1 - asked.loss) : powerKw;
    const sum = pumpNeed({
      crankPowerKw,
      bsfcGPerKwh: use.value.bsfcGPerKwh,
      densityKgM3,
      marginRatio: asked.margin,
    });
    const rail = railOf(asked.base, asked.boost);
    const { flowCcMin, withMarginCcMin, fuelFlowGs } = sum.value;
    return sumAnswer({
      subject: SUBJECT,
      result: `${say.both('pumpFlow', withMarginCcMin)} of ${tank.value.name} at ${say.both('pressure', rail.value.railKpa)}`,
      certainty:
        "Read it off the pump's curve at that pressure and at the volts it really gets: /pump supply.",
      working: [
        `${say.one('power', crankPowerKw)} burn ${say.one('burn', fuelFlowGs)}: ${say.one('pumpFlow', flowCcMin)}, with ${percent(asked.margin)} in hand ${say.one('pumpFlow', withMarginCcMin)}`,
        `Rail ${say.one('pressure', asked.base)} and boost ${say.one('pressure', asked.boost)}`,
      ],
      calculation: together(sum, use, tank, rail, {
        assumptions: wheels ? [`${percent(asked.loss)} lost in the drive line`] : [],
        caveats: [FUEL_CAUTION],
      }),
      data: {
        kind: 'pump',
        powerKW: powerKw,
        crankPowerKW: crankPowerKw,
        fuel: tank.value.name,
        bsfcGPerKWh: use.value.bsfcGPerKwh,
        densityKgM3,
        fuelGs: fuelFlowGs,
        flowCcMin,
        flowWithMarginCcMin: withMarginCcMin,
        railKPa: rail.value.railKpa,
        result: { value: withMarginCcMin, unit: 'cc/min' },
      },
    });
  },
});

const BAR = { bar: 100, kpa: 1, psi: toBase(1, 'psi') } as const;
const LITRES_HOUR = {
  'l/h': toBase(1, 'L/h'),
  lph: toBase(1, 'L/h'),
  'l/hr': toBase(1, 'L/h'),
  'cc/min': 1,
} as const;
const VOLTS = { v: 1, volt: 1, volts: 1 } as const;
const CURVE_EXAMPLE = '3bar 255, 4bar 225, 5bar 190 (bar and L/h)';
const VOLTS_EXAMPLE = '12V 205, 13.5V 255 (V and L/h)';

function curveOf(field: string, typed: string, at: Readonly<Record<string, number>>, example: string) {
  const read = readPairs(typed, at, LITRES_HOUR);
  if (read.verdict === 'read') return read.pairs;
  throw new UserError('bad-input', `${field}: ${read.why} What would be read: ${example}.`);
}

const supply = subcommand({
  description: 'What a pump brings at a pressure and voltage, from the curves on its sheet',
  example:
    '/pump supply curve:"3bar 255, 4bar 225, 5bar 190" boost:1.2bar volts:12.8V voltcurve:"12V 205, 13.5V 255"',
  assumes: ['base', 'tested'],
  input: z.object({
    curve: text(`Pressure and flow: ${CURVE_EXAMPLE}`),
    boost: options.boost,
    base: options.base,
    volts: quantity('volts', 'voltage', 'Voltage at the pump, running').optional(),
    voltcurve: text(`Voltage and flow at one pressure: ${VOLTS_EXAMPLE}`).optional(),
    tested: quantity('tested', 'voltage', 'Voltage of the pressure curve').prefault('13.5 V'),
    need: pumpFlow('need', 'Flow needed, e.g. 215 L/h').optional(),
    lines: quantity('lines', 'pressure', 'Lost in line and filter').prefault('0 bar'),
  }),
  run(asked, { say }) {
    const rail = railOf(asked.base, asked.boost);
    const pressureKpa = rail.value.railKpa + asked.lines;
    if ((asked.volts === undefined) !== (asked.voltcurve === undefined)) {
      throw new UserError(
        'bad-input',
        `Give volts and voltcurve together, e.g. volts:12.8V voltcurve:"${VOLTS_EXAMPLE}".`,
      );
    }
    const sum = pumpSupply({
      pressureCurve: curveOf('curve', asked.curve, BAR, CURVE_EXAMPLE),
      pressureKpa,
      ...(asked.volts === undefined || asked.voltcurve === undefined
        ? {}
        : {
            voltage: {
              curve: curveOf('voltcurve', asked.voltcurve, VOLTS, VOLTS_EXAMPLE),
              testV: asked.tested,
              atPumpV: asked.volts,
            },
          }),
    });
    const { flowCcMin, voltageRatio } = sum.value;
    const needCcMin =
      asked.need === undefined ? undefined : ccMinOf(asked.need, fuelOf('petrol').value.densityKgM3);
    const spare = needCcMin === undefined ? undefined : flowCcMin / needCcMin - 1;
    const verdict =
      spare === undefined ? '' : spare < 0 ? `: ${percent(-spare)} short` : `: ${percent(spare)} in hand`;
    return sumAnswer({
      subject: SUBJECT,
      result: `${say.both('pumpFlow', flowCcMin)} at ${say.both('pressure', pressureKpa)}${verdict}`,
      ...(spare !== undefined && spare < 0 ? { tone: 'late' as const } : {}),
      certainty: 'Measure it: into a can through the regulator, at that pressure, for 30 seconds.',
      working: [
        `Rail ${say.one('pressure', rail.value.railKpa)}, lines and filter ${say.one('pressure', asked.lines)}`,
        ...(asked.volts === undefined
          ? []
          : [
              `× ${voltageRatio.toFixed(3)} for ${sayIn(asked.volts, 'V')} instead of ${sayIn(asked.tested, 'V')}`,
            ]),
      ],
      calculation: together(sum, rail, {
        caveats: [
          FUEL_CAUTION,
          ...(spare !== undefined && spare < 0
            ? ['Short of fuel under boost is lean under boost: do not load it.']
            : []),
        ],
      }),
      data: {
        kind: 'pump',
        flowCcMin,
        pressureKPa: pressureKpa,
        voltageRatio,
        ...(spare === undefined ? {} : { needCcMin: needCcMin ?? 0, spareRatio: spare }),
        result: { value: flowCcMin, unit: 'cc/min' },
      },
    });
  },
});

/** The trade's limits of velocity in m/s; books differ, no source. */
const VELOCITY = { pressure: 3, suction: 1, return: 2 } as const;

const line = subcommand({
  description: 'Fuel line: bore by velocity, and the pressure a line costs',
  example: '/pump line flow:215L/h bore:8mm length:4m',
  assumes: ['fuel', 'length', 'side', 'velocity'],
  input: z.object({
    flow: pumpFlow('flow', 'Flow in the line, e.g. 215 L/h'),
    bore: quantity(
      'bore',
      'length',
      'Inside diameter, e.g. 8 mm, 3/8; left out: the bore that is needed',
    ).optional(),
    length: runLength('length', 'Length of the line').prefault('4 m'),
    side: z.enum(['pressure', 'suction', 'return']).default('pressure').describe('Which line it is'),
    velocity: z.number().min(0.1).max(10).optional().describe('Velocity allowed, m/s, instead of the usual'),
    fuel: options.fuel,
    viscosity: quantity('viscosity', 'viscosity', 'Of the fuel, instead of the table').optional(),
  }),
  run(asked, { say }) {
    const tank = fuelOf(asked.fuel);
    const flowCcMin = ccMinOf(asked.flow, tank.value.densityKgM3);
    const allowed = asked.velocity ?? VELOCITY[asked.side];
    const least = boreForVelocity({ flowCcMin, velocityMPerS: allowed });
    const viscosityMm2S = asked.viscosity ?? tank.value.viscosityMm2S;
    if (viscosityMm2S === undefined) {
      throw new UserError(
        'bad-input',
        `The viscosity of ${tank.value.name} is not in the table: give viscosity.`,
      );
    }
    const boreMm = asked.bore ?? least.value.boreMm;
    const sum = lineFlow({
      flowCcMin,
      boreMm,
      lengthMm: asked.length,
      densityKgM3: tank.value.densityKgM3,
      viscosityMm2S,
    });
    const { velocityMPerS, dropKpa, reynolds, frictionFactor } = sum.value;
    const hose = smallestHose(least.value.boreMm, dashSizes);
    const narrow = velocityMPerS > allowed * 1.001;
    const boreWords = say.both('length', boreMm);
    return sumAnswer({
      subject: SUBJECT,
      result:
        asked.bore === undefined
          ? `${boreWords} bore at least for ${say.one('velocity', allowed, 2)}`
          : `${say.one('velocity', velocityMPerS)}, ${say.both('pressure', dropKpa)} lost${narrow ? `: narrow, ${say.both('length', least.value.boreMm)} wanted` : ''}`,
      ...(narrow ? { tone: 'soon' as const } : {}),
      certainty: 'Fittings, bends and the filter come on top; on the suction side every kPa counts.',
      working: [
        `${say.both('pumpFlow', flowCcMin)} through ${boreWords}: ${say.one('velocity', velocityMPerS)}, Re ${sayNumber(reynolds, 3)}, f ${sayNumber(frictionFactor, 3)}`,
        `${say.both('pressure', dropKpa)} over ${say.one('length', asked.length)}`,
        hose === undefined
          ? 'No hose named by its bore is that wide.'
          : `Smallest hose wide enough: -${hose.dash}, bore ${say.both('length', hose.byBoreIn * INCH_MM, 4)}`,
      ],
      calculation: together(sum, least, tank, {
        assumptions: [
          `${say.one('length', asked.length)} of line`,
          `${asked.side} side, at most ${say.one('velocity', allowed, 2)}: common practice, books differ`,
        ],
        sources: ['COMMON', 'HOSEBORE'],
        caveats: [FUEL_CAUTION],
      }),
      data: {
        kind: 'line',
        hoseDash: hose?.dash ?? null,
        flowCcMin,
        boreMm,
        leastBoreMm: least.value.boreMm,
        lengthMm: asked.length,
        velocityMPerS,
        reynolds,
        frictionFactor,
        dropKPa: dropKpa,
        result: { value: dropKpa, unit: 'kPa' },
      },
    });
  },
});

export default defineCommand({
  description:
    'Fuel pump and lines: flow needed, what a pump brings at pressure and volts, line size and loss',
  subcommands: { need, supply, line },
});
