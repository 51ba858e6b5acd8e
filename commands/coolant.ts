import { z } from 'zod';
import { defineCommand, subcommand } from '../src/bot/command.ts';
import { absolutePressure, gaugePressure, height, quantity, shareOfMix } from '../src/bot/quantity-option.ts';
import { sumAnswer } from '../src/bot/sum-answer.ts';
import { outsidePressure } from '../src/calc/air/outside.ts';
import {
  drainAndFill,
  drainNeeded,
  mixTwo,
  oldLeft,
  systemVolume,
} from '../src/calc/fluids/coolant-change.ts';
import { coolantHeat } from '../src/calc/fluids/coolant-heat.ts';
import {
  capForBoiling,
  type Glycol,
  glycolBoiling,
  glycolForFreezing,
  glycolFreezing,
  massShare,
} from '../src/calc/fluids/glycol.ts';
import { together } from '../src/calc/together.ts';
import { sayIn } from '../src/calc/units/say.ts';
import { UserError } from '../src/core/user-error.ts';
import { coolantStandard, glycols } from '../src/tables/fluids.ts';

const HALF = 0.5;

const glycolName = z
  .enum(['ethylene', 'propylene'])
  .default('ethylene')
  .describe('What the antifreeze is made of; most engine coolant is ethylene');
const share = shareOfMix('share', 'Antifreeze by volume, e.g. 50 % or 50/50');
const fresh = shareOfMix('fresh', 'Antifreeze in what is filled in; 100 % is neat, 0 % water').prefault(
  '100 %',
);
const volume = quantity('volume', 'volume', 'Volume of the whole system, e.g. 8 L');

function glycolOf(id: 'ethylene' | 'propylene'): Glycol {
  const found = glycols.find((glycol) => glycol.id === id);
  if (found === undefined) throw new RangeError(`no table for ${id}`);
  return found;
}

const percent = (ratio: number): string => sayIn(ratio, 'percent', 3);
const freeze = subcommand({
  description: 'Freezing point by share of antifreeze, or the share for a freezing point',
  example: '/coolant freeze share:"50 %"',
  assumes: ['glycol'],
  input: z.object({
    share: share.optional(),
    wanted: quantity('wanted', 'temperature', 'Or how cold it must not freeze: says the share').optional(),
    glycol: glycolName,
  }),
  run({ share: given, wanted, glycol: id }, { say }) {
    if ((given === undefined) === (wanted === undefined)) {
      throw new UserError('bad-input', 'Give either share or wanted: share:"50 %", or wanted:"-30 °C".');
    }
    const glycol = glycolOf(id);
    const volumeRatio = given ?? glycolForFreezing({ freezingC: wanted ?? 0, glycol }).value.volumeRatio;
    const sum = glycolFreezing({ volumeRatio, glycol });
    const { massRatio } = massShare({ volumeRatio, densityKgM3: glycol.densityKgM3 }).value;
    const asked = id === 'ethylene' && Math.abs(volumeRatio - HALF) < 0.005;
    return sumAnswer({
      subject: 'Coolant',
      result:
        given === undefined
          ? `Takes ${percent(volumeRatio)} ${glycol.name} not to freeze above ${say.both('temperature', sum.value.freezingC)}`
          : `${percent(volumeRatio)} ${glycol.name} freezes at ${say.both('temperature', sum.value.freezingC)}`,
      working: [
        `${percent(massRatio)} by mass`,
        ...(asked
          ? [
              `${coolantStandard.name}: at most ${say.one('temperature', coolantStandard.freezingMostC, 3)}, boiling from ${say.one('temperature', coolantStandard.boilingLeastC, 4)}`,
            ]
          : []),
      ],
      calculation: together(sum, asked ? { sources: coolantStandard.source } : {}),
      data: {
        kind: 'coolant',
        glycolRatio: volumeRatio,
        massRatio,
        freezingC: sum.value.freezingC,
      },
    });
  },
});

const boil = subcommand({
  description: 'Boiling point under the cap, by share and height; or the cap for a boiling point',
  example: '/coolant boil cap:"1.1 bar" share:"50 %"',
  assumes: ['share', 'glycol', 'altitude'],
  input: z.object({
    cap: gaugePressure('cap', 'What is stamped on the cap, e.g. 1.1 bar or 16 psi').optional(),
    wanted: quantity('wanted', 'temperature', 'Or the boiling point wanted: says the cap').optional(),
    share: share.prefault('50 %'),
    glycol: glycolName,
    altitude: height('altitude', 'Height above sea level, e.g. 1600 m').optional(),
    barometer: absolutePressure('barometer', 'Air pressure where the car stands').optional(),
  }),
  run({ cap: given, wanted, share: volumeRatio, glycol: id, altitude, barometer }, { say }) {
    if ((given === undefined) === (wanted === undefined)) {
      throw new UserError('bad-input', 'Give either cap or wanted: cap:"1.1 bar", or wanted:"130 °C".');
    }
    const outside = outsidePressure({
      barometerKpa: barometer,
      altitudeM: altitude === undefined ? undefined : altitude * 1000,
    });
    const glycol = glycolOf(id);
    const { atmosphereKpa } = outside.value;
    const cap =
      given ?? capForBoiling({ volumeRatio, glycol, boilingC: wanted ?? 0, atmosphereKpa }).value.capKpa;
    const pressureKpa = atmosphereKpa + cap;
    const sum = glycolBoiling({ volumeRatio, glycol, pressureKpa });
    const { boilingC, waterBoilingC } = sum.value;
    return sumAnswer({
      subject: 'Coolant',
      result:
        given === undefined
          ? `A cap of ${say.both('pressure', cap)} at least boils at ${say.both('temperature', boilingC)}`
          : `Boils at ${say.both('temperature', boilingC)} under ${say.both('pressure', cap)}`,
      working: [
        `${percent(volumeRatio)} ${glycol.name}; plain water ${say.both('temperature', waterBoilingC)}`,
        `${say.one('pressure', pressureKpa, 4)} absolute`,
      ],
      calculation: together(outside, sum),
      data: {
        kind: 'coolant-boiling',
        boilingC,
        waterBoilingC,
        capKPa: cap,
        pressureKPa: pressureKpa,
        glycolRatio: volumeRatio,
      },
    });
  },
});

const fill = subcommand({
  description: 'How much antifreeze and water for an empty system',
  example: '/coolant fill volume:"6.5 L" share:"40 %"',
  assumes: ['fresh'],
  input: z.object({ volume, share, fresh }),
  run({ volume: systemL, share: toRatio, fresh: freshRatio }, { say }) {
    const sum = drainNeeded({ systemL, fromRatio: 0, toRatio, freshRatio });
    const antifreezeL = sum.value.drainL;
    return sumAnswer({
      subject: 'Coolant',
      result: `${say.both('volume', antifreezeL)} of antifreeze and ${say.both('volume', systemL - antifreezeL)} of water`,
      working: [`${percent(toRatio)} by volume in ${say.one('volume', systemL)}`],
      calculation: together(sum, { assumptions: ['the system is empty, block and heater too'] }),
      data: {
        kind: 'coolant-fill',
        antifreezeL,
        waterL: systemL - antifreezeL,
        volumeL: systemL,
        glycolRatio: toRatio,
      },
    });
  },
});

const change = subcommand({
  description: 'How much to drain and refill to reach a share',
  example: '/coolant change volume:"8 L" from:"30 %" to:"50 %"',
  assumes: ['fresh'],
  input: z.object({
    volume,
    from: shareOfMix('from', 'Antifreeze in it now, by refractometer'),
    to: shareOfMix('to', 'Antifreeze wanted'),
    fresh,
  }),
  run({ volume: systemL, from: fromRatio, to: toRatio, fresh: freshRatio }, { say }) {
    const sum = drainNeeded({ systemL, fromRatio, toRatio, freshRatio });
    const { drainL } = sum.value;
    return sumAnswer({
      subject: 'Coolant',
      result: `Drain ${say.both('volume', drainL)} and fill in as much at ${percent(freshRatio)}`,
      working: [`${percent(fromRatio)} to ${percent(toRatio)} in ${say.one('volume', systemL)}`],
      calculation: sum,
      data: {
        kind: 'coolant-change',
        drainL,
        volumeL: systemL,
        fromRatio,
        toRatio,
        freshRatio,
      },
    });
  },
});

const drain = subcommand({
  description: 'Share after draining part and filling up, once or several times',
  example: '/coolant drain volume:"8 L" drained:"2 L" from:"30 %"',
  assumes: ['fresh', 'times'],
  input: z.object({
    volume,
    drained: quantity('drained', 'volume', 'What came out'),
    from: shareOfMix('from', 'Antifreeze in it now'),
    fresh,
    times: z.number().int().min(1).max(20).default(1).describe('How often, run warm in between'),
  }),
  run({ volume: systemL, drained: drainedL, from, fresh: freshRatio, times }, { say }) {
    const old = oldLeft({ systemL, drainedL, changes: times });
    // as one change that leaves as much of the old
    const sum = drainAndFill({
      systemL,
      fromRatio: from,
      drainedL: systemL * (1 - old.value.oldRatio),
      freshRatio,
    });
    return sumAnswer({
      subject: 'Coolant',
      result: `${percent(sum.value.shareRatio)} antifreeze, ${percent(old.value.oldRatio)} of the old fluid left`,
      working: [
        `${say.one('volume', drainedL)} of ${say.one('volume', systemL)}, ${times === 1 ? 'once' : `${times} times`}`,
      ],
      calculation: together(sum, old),
      data: {
        kind: 'coolant-drain',
        glycolRatio: sum.value.shareRatio,
        oldRatio: old.value.oldRatio,
        drainedL,
        volumeL: systemL,
      },
    });
  },
});

const mix = subcommand({
  description: 'Share of two mixtures put together',
  example: '/coolant mix volume:"3 L" share:"50 %" with:"5 L" at:"30 %"',
  input: z.object({
    volume: quantity('volume', 'volume', 'How much of the one'),
    share,
    with: quantity('with', 'volume', 'How much of the other'),
    at: shareOfMix('at', 'Antifreeze in the other'),
  }),
  run({ volume: volumeL, share: shareRatio, with: otherL, at }, { say }) {
    const sum = mixTwo({ volumeL, shareRatio }, { volumeL: otherL, shareRatio: at });
    return sumAnswer({
      subject: 'Coolant',
      result: `${percent(sum.value.shareRatio)} antifreeze in ${say.both('volume', sum.value.volumeL)}`,
      calculation: sum,
      data: { kind: 'coolant-mix', glycolRatio: sum.value.shareRatio, volumeL: sum.value.volumeL },
    });
  },
});

const volumeOf = subcommand({
  description: 'Volume of a system from a drain and refill, by refractometer before and after',
  example: '/coolant volume drained:"2 L" from:"30 %" after:"47.5 %"',
  assumes: ['fresh'],
  input: z.object({
    drained: quantity('drained', 'volume', 'What came out and was filled in'),
    from: shareOfMix('from', 'Antifreeze before, by refractometer'),
    after: shareOfMix('after', 'Antifreeze after, run warm'),
    fresh,
  }),
  run({ drained: drainedL, from: fromRatio, after: afterRatio, fresh: freshRatio }, { say }) {
    const sum = systemVolume({ drainedL, fromRatio, afterRatio, freshRatio });
    const { systemL, perPercentL } = sum.value;
    return sumAnswer({
      subject: 'Coolant',
      result: `The system holds ${say.both('volume', systemL)}`,
      certainty: `A reading one per cent out makes it ${say.one('volume', perPercentL, 2)} more or less.`,
      working: [
        `${say.one('volume', drainedL)} at ${percent(freshRatio)} moved ${percent(fromRatio)} to ${percent(afterRatio)}`,
      ],
      calculation: sum,
      data: { kind: 'coolant-volume', volumeL: systemL, drainedL, fromRatio, afterRatio, freshRatio },
    });
  },
});

const heat = subcommand({
  description: 'Heat that coolant carries away, from flow and rise',
  example: '/coolant heat flow:"100 L/min" rise:6',
  assumes: ['density', 'specific'],
  input: z.object({
    flow: quantity('flow', 'flow', 'Flow by volume, e.g. 100 L/min'),
    rise: z.number().min(0.1).max(80).describe('Temperature rise, K (a °F counts 5/9)'),
    density: quantity('density', 'density', 'Of the coolant').prefault('1050 kg/m3'),
    specific: z
      .number()
      .min(1)
      .max(4.3)
      .default(3.5)
      .describe('Specific heat, kJ/(kg·K): water 4.2, half and half 3.5'),
  }),
  run({ flow, rise, density, specific }, { say }) {
    const sum = coolantHeat({
      flowLMin: flow / 1000,
      riseK: rise,
      densityKgM3: density,
      heatKjKgK: specific,
    });
    return sumAnswer({
      subject: 'Coolant',
      result: `Carries ${say.both('power', sum.value.powerKw)} of heat`,
      calculation: sum,
      data: { kind: 'coolant-heat', powerKW: sum.value.powerKw, flowCcMin: flow, riseK: rise },
    });
  },
});

export default defineCommand({
  description: 'Coolant: freezing and boiling, fill, drain and refill to a share, cap pressure, heat',
  subcommands: { freeze, boil, fill, change, drain, mix, volume: volumeOf, heat },
});
