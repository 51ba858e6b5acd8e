import { z } from 'zod';
import { defineCommand, subcommand } from '../src/bot/command.ts';
import { absolutePressure, gaugePressure, height, quantity } from '../src/bot/quantity-option.ts';
import { sumAnswer } from '../src/bot/sum-answer.ts';
import { compressorEfficiency, compressorOutlet, pressureRatio } from '../src/calc/air/boost.ts';
import { boostedCharge, intercoolerEffectiveness, intercoolerOutlet } from '../src/calc/air/intercooler.ts';
import { outsidePressure } from '../src/calc/air/outside.ts';
import { together } from '../src/calc/together.ts';
import { sayIn, sayNumber } from '../src/calc/units/say.ts';
import type { Sayer } from '../src/calc/units/sayer.ts';
import { UserError } from '../src/core/user-error.ts';

const LOSSES = ['inlet', 'loss'] as const;

const place = {
  inlet: quantity('inlet', 'pressure', 'Lost in filter and inlet pipe').prefault('1 kPa'),
  loss: quantity('loss', 'pressure', 'Lost in intercooler and pipes after the compressor').prefault('5 kPa'),
  altitude: height('altitude', 'Height above sea level, e.g. 1600 m').optional(),
  barometer: absolutePressure('barometer', 'Air pressure where the car stands').optional(),
};

interface Boosted {
  readonly boost: number;
  readonly inlet: number;
  readonly loss: number;
  readonly altitude?: number | undefined;
  readonly barometer?: number | undefined;
}

function ratioOf({ boost, inlet, loss, altitude, barometer }: Boosted, say: Sayer) {
  const outside = outsidePressure({
    barometerKpa: barometer,
    altitudeM: altitude === undefined ? undefined : altitude * 1000,
  });
  const sum = pressureRatio({ ...outside.value, boostKpa: boost, inletLossKpa: inlet, chargeLossKpa: loss });
  const losses = `${say.one('pressure', inlet)} lost before the compressor, ${say.one('pressure', loss)} after it (common practice unless measured)`;
  return {
    ...outside.value,
    ...sum.value,
    boostKpa: boost,
    notes: together(outside, sum, { assumptions: [losses], sources: ['COMMON'] }),
  };
}

const ratio = subcommand({
  description: 'Pressure ratio the compressor works at, with the losses either side of it',
  example: '/boost ratio boost:"1 bar"',
  assumes: [...LOSSES, 'altitude', 'barometer'],
  input: z.object({ boost: gaugePressure('boost', 'Gauge pressure in the manifold'), ...place }),
  run(asked, { say }) {
    const {
      pressureRatio: ratioNow,
      inletKpa,
      outletKpa,
      atmosphereKpa,
      boostKpa,
      notes,
    } = ratioOf(asked, say);
    return sumAnswer({
      subject: 'Boost',
      result: `Pressure ratio ${ratioNow.toFixed(2)} at ${say.both('pressure', boostKpa)} boost`,
      working: [
        `${say.one('pressure', outletKpa, 4)} after the compressor over ${say.one('pressure', inletKpa, 4)} before it, absolute`,
      ],
      calculation: notes,
      data: {
        kind: 'pressure-ratio',
        pressureRatio: ratioNow,
        boostKPa: boostKpa,
        atmosphereKPa: atmosphereKpa,
        inletKPa: inletKpa,
        outletKPa: outletKpa,
      },
    });
  },
});

const charge = subcommand({
  description: 'What boost is worth: charge temperature and density after compressor and intercooler',
  example: '/boost charge boost:"14.5 psi" cooler:"70 %"',
  assumes: ['temp', 'efficiency', 'cooler', ...LOSSES],
  input: z.object({
    boost: gaugePressure('boost', 'Gauge pressure in the manifold'),
    temp: quantity('temp', 'temperature', 'Air before the compressor').prefault('20 °C'),
    efficiency: quantity('efficiency', 'percent', 'Compressor efficiency: 60 to 78 % usual').prefault('70 %'),
    cooler: quantity('cooler', 'percent', 'Intercooler effectiveness, 0 % for none').prefault('70 %'),
    coolant: quantity(
      'coolant',
      'temperature',
      'Air or water that reaches the core; as temp if left out',
    ).optional(),
    ...place,
  }),
  run(asked, { say }) {
    const pressures = ratioOf(asked, say);
    const { temp, efficiency, cooler, coolant = temp, loss } = asked;
    const sum = boostedCharge({
      inletKpa: pressures.inletKpa,
      inletC: temp,
      pressureRatio: pressures.pressureRatio,
      efficiencyRatio: efficiency,
      effectivenessRatio: cooler,
      chargeLossKpa: loss,
      coolantC: coolant,
    });
    const { compressorOutC, chargeC, chargeKpa, densityRatio } = sum.value;
    const given = `compressor ${sayIn(efficiency, 'percent', 2)}, intercooler ${sayIn(cooler, 'percent', 2)} (common practice unless measured)`;
    return sumAnswer({
      subject: 'Boost',
      result: `Charge ${say.both('temperature', chargeC)}, ${densityRatio.toFixed(2)} times as dense as the air taken in`,
      working: [
        `pressure ratio ${pressures.pressureRatio.toFixed(2)}`,
        `${say.both('temperature', compressorOutC)} after the compressor, ${say.both('temperature', chargeC)} after the intercooler`,
        `${say.both('pressure', chargeKpa)} absolute in the manifold`,
      ],
      calculation: together(pressures.notes, sum, { assumptions: [given] }),
      data: {
        kind: 'boosted-charge',
        pressureRatio: pressures.pressureRatio,
        compressorOutC,
        chargeC,
        chargeKPa: chargeKpa,
        densityRatio,
      },
    });
  },
});

const compressor = subcommand({
  description: 'Temperature after a compressor, or its efficiency from a measured one',
  example: '/boost compressor ratio:2 temp:"25 °C" out:"118 °C"',
  assumes: ['efficiency'],
  input: z.object({
    ratio: quantity('ratio', 'ratio', 'Pressure ratio, absolute over absolute'),
    temp: quantity('temp', 'temperature', 'Air before the compressor'),
    out: quantity('out', 'temperature', 'Measured after the compressor: gives its efficiency').optional(),
    efficiency: quantity('efficiency', 'percent', 'Compressor efficiency: 60 to 78 % usual').prefault('70 %'),
  }),
  run({ ratio: pressures, temp, out, efficiency }, { say }) {
    const given = { pressureRatio: pressures, inletC: temp };
    if (out !== undefined) {
      const sum = compressorEfficiency({ inletC: temp, outletC: out, pressureRatio: pressures });
      const { efficiencyRatio } = sum.value;
      return sumAnswer({
        subject: 'Compressor',
        result: `Compressor efficiency ${sayIn(efficiencyRatio, 'percent', 2)}`,
        working: [
          `${say.one('temperature', temp)} in, ${say.one('temperature', out)} out at a pressure ratio of ${pressures.toFixed(2)}`,
        ],
        calculation: sum,
        data: { kind: 'compressor-efficiency', ...given, outletC: out, efficiencyRatio },
      });
    }
    const sum = compressorOutlet({ inletC: temp, pressureRatio: pressures, efficiencyRatio: efficiency });
    const { outletC, isentropicC } = sum.value;
    return sumAnswer({
      subject: 'Compressor',
      result: `${say.both('temperature', outletC)} after the compressor`,
      working: [`a compressor without loss would give ${say.one('temperature', isentropicC)}`],
      calculation: together(
        { assumptions: [`efficiency ${sayIn(efficiency, 'percent', 2)} (common practice)`] },
        sum,
      ),
      data: {
        kind: 'compressor-outlet',
        ...given,
        outletC,
        isentropicC,
        efficiencyRatio: efficiency,
      },
    });
  },
});

const cooler = subcommand({
  description: 'Intercooler effectiveness from three temperatures, or what it makes of a charge',
  example: '/boost cooler in:"140 °C" coolant:"30 °C" out:"62 °C"',
  input: z.object({
    in: quantity('in', 'temperature', 'Charge before the intercooler'),
    coolant: quantity('coolant', 'temperature', 'Air or water that reaches the core'),
    out: quantity('out', 'temperature', 'Charge after the intercooler').optional(),
    effectiveness: quantity('effectiveness', 'percent', 'Instead of out: 60 to 80 % usual').optional(),
  }),
  run({ in: inletC, coolant, out, effectiveness }, { say }) {
    if ((out === undefined) === (effectiveness === undefined)) {
      throw new UserError(
        'bad-input',
        'Give either out or effectiveness: out:"62 °C", or effectiveness:"70 %".',
      );
    }
    const given = { inletC, coolantC: coolant };
    if (out !== undefined) {
      const sum = intercoolerEffectiveness({ inletC, outletC: out, coolantC: coolant });
      const { effectivenessRatio } = sum.value;
      return sumAnswer({
        subject: 'Intercooler',
        result: `Intercooler effectiveness ${sayIn(effectivenessRatio, 'percent', 2)}`,
        working: [
          `takes out ${sayNumber(inletC - out, 3)} K of the ${sayNumber(inletC - coolant, 3)} K there are`,
        ],
        calculation: sum,
        data: { kind: 'intercooler', ...given, outletC: out, effectivenessRatio },
      });
    }
    const sum = intercoolerOutlet({ inletC, coolantC: coolant, effectivenessRatio: effectiveness ?? 0 });
    const { outletC } = sum.value;
    return sumAnswer({
      subject: 'Intercooler',
      result: `${say.both('temperature', outletC)} after the intercooler`,
      calculation: sum,
      data: { kind: 'intercooler', ...given, outletC, effectivenessRatio: effectiveness ?? 0 },
    });
  },
});

export default defineCommand({
  description: 'Pressure ratio, charge temperature, compressor and intercooler',
  subcommands: { ratio, charge, compressor, cooler },
});
