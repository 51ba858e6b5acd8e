import { z } from 'zod';
import { defineCommand, subcommand } from '../src/bot/command.ts';
import { gaugePressure, quantity, travelSpeed, turningSpeed } from '../src/bot/quantity-option.ts';
import { sumAnswer } from '../src/bot/sum-answer.ts';
import { outsidePressure } from '../src/calc/air/outside.ts';
import {
  clearanceForRatio,
  compressionRatio,
  deckCut,
  ratioOf,
} from '../src/calc/geometry/compression-ratio.ts';
import { boreAreaMm2, displacement, overbore } from '../src/calc/geometry/displacement.ts';
import { effectiveRatio } from '../src/calc/geometry/effective-ratio.ts';
import {
  meanPistonSpeed,
  pistonAcceleration,
  speedForPistonSpeed,
} from '../src/calc/geometry/piston-motion.ts';
import {
  meanEffectivePressure,
  powerOfTorque,
  torqueForMeanPressure,
  torqueOfPower,
} from '../src/calc/geometry/torque.ts';
import { together } from '../src/calc/together.ts';
import { GRAVITY } from '../src/calc/units/definitions.ts';
import { sayNumber } from '../src/calc/units/say.ts';
import type { Sayer } from '../src/calc/units/sayer.ts';
import { UserError } from '../src/core/user-error.ts';

/** The reader hands out distances in km. */
const metres = (km: number | undefined): number | undefined => (km === undefined ? undefined : km * 1000);
const boreOption = quantity('bore', 'length', 'Bore, e.g. 86 mm');
const strokeOption = quantity('stroke', 'length', 'Stroke, e.g. 86 mm');

const size = subcommand({
  description: 'Displacement from bore, stroke and cylinders, and what boring out adds',
  example: '/engine size bore:"86 mm" stroke:"86 mm" cylinders:4',
  assumes: ['cylinders'],
  input: z.object({
    bore: boreOption,
    stroke: strokeOption,
    cylinders: z.int().min(1).max(24).default(4).describe('Number of cylinders'),
    oversize: quantity('oversize', 'length', 'Bored out by, on the diameter, e.g. 0.5 mm').optional(),
  }),
  run({ bore, stroke, cylinders, oversize }, { say }) {
    const engine = { boreMm: bore, strokeMm: stroke, cylinders };
    const sum = displacement(engine);
    const bored = oversize === undefined ? undefined : overbore({ ...engine, oversizeMm: oversize });
    const displacementL = bored?.value.displacementL ?? sum.value.displacementL;
    return sumAnswer({
      subject: 'Engine',
      result: say.both('capacity', displacementL * 1000, 4),
      working: [
        `${say.both('capacity', (displacementL * 1000) / cylinders, 4)} in each of ${cylinders} cylinders`,
        ...(bored === undefined
          ? []
          : [`${say.both('capacity', bored.value.gainL * 1000)} more than before boring`]),
      ],
      calculation: together(sum, bored ?? {}),
      data: {
        kind: 'displacement',
        boreMm: bore,
        strokeMm: stroke,
        cylinders,
        displacementL,
        perCylinderL: displacementL / cylinders,
      },
    });
  },
});

const compression = subcommand({
  description: 'Compression ratio from measured volumes; what a cut or a wanted ratio takes',
  example:
    '/engine compression bore:"86 mm" stroke:"86 mm" chamber:"45 cc" gasket:"1 mm" deck:"0.2 mm" dish:"5 cc"',
  assumes: ['gasket', 'deck', 'dish'],
  input: z.object({
    bore: boreOption,
    stroke: strokeOption,
    chamber: quantity('chamber', 'volume', 'Chamber in the head, e.g. 45 cc'),
    gasket: quantity('gasket', 'length', 'Gasket, pressed thickness').prefault('1 mm'),
    ring: quantity('ring', 'length', 'Bore of the gasket; the bore plus 1 mm if left out').optional(),
    deck: quantity('deck', 'length', 'Piston below the face at the top').prefault('0 mm'),
    proud: quantity('proud', 'length', 'Or piston above the face').optional(),
    dish: quantity('dish', 'volume', 'Dish in the piston, valve pockets with it').prefault('0 cc'),
    dome: quantity('dome', 'volume', 'Or dome on the piston').optional(),
    want: quantity('want', 'ratio', 'Ratio wanted: says what has to change').optional(),
    cut: quantity('cut', 'length', 'Taken off block or head face').optional(),
  }),
  run(asked, { say }) {
    const { bore, stroke, gasket, want, cut } = asked;
    const cc = (cm3: number, figures?: number): string => say.one('capacity', cm3, figures);
    const deck = asked.deck - (asked.proud ?? 0);
    const dishL = asked.dish - (asked.dome ?? 0);
    const sum = compressionRatio({
      boreMm: bore,
      strokeMm: stroke,
      chamberCm3: asked.chamber * 1000,
      gasketBoreMm: asked.ring ?? bore + 1,
      gasketThicknessMm: gasket,
      deckMm: deck,
      dishCm3: dishL * 1000,
    });
    const { sweptCm3, clearanceCm3, gasketCm3, deckCm3, compressionRatio: ratio } = sum.value;
    const cutting =
      cut === undefined ? undefined : deckCut({ boreMm: bore, strokeMm: stroke, clearanceCm3, cutMm: cut });
    const wanted = want === undefined ? undefined : clearanceForRatio({ sweptCm3, compressionRatio: want });
    const shown = cutting?.value.ratioAfter ?? ratio;
    return sumAnswer({
      subject: 'Compression',
      result:
        cut === undefined
          ? `Compression ratio ${ratio.toFixed(2)} to 1`
          : `Compression ratio ${shown.toFixed(2)} to 1 after ${say.one('length', cut)} off, ${ratio.toFixed(2)} before`,
      working: [
        `swept ${cc(sweptCm3, 4)}, clearance ${cc(clearanceCm3)} (gasket ${cc(gasketCm3)}, deck ${cc(deckCm3)})`,
        ...(wanted === undefined
          ? []
          : [wantedWords(wanted.value.clearanceCm3 - clearanceCm3, bore, want ?? 0, say)]),
      ],
      calculation: together(
        sum,
        cutting ?? {},
        wanted ?? {},
        asked.ring === undefined
          ? {
              assumptions: [
                `gasket bore ${say.one('length', bore + 1)}, ${say.one('length', 1)} over the bore`,
              ],
            }
          : {},
        {
          assumptions: [
            `gasket ${say.one('length', gasket)}, deck ${say.one('length', deck)}, dish ${cc(dishL * 1000)}`,
          ],
        },
      ),
      data: {
        kind: 'compression',
        compressionRatio: shown,
        sweptL: sweptCm3 / 1000,
        clearanceL: clearanceCm3 / 1000,
        gasketL: gasketCm3 / 1000,
        deckL: deckCm3 / 1000,
        ...(cutting === undefined ? {} : { ratioBefore: ratio, removedL: cutting.value.removedCm3 / 1000 }),
        ...(wanted === undefined ? {} : { wantedClearanceL: wanted.value.clearanceCm3 / 1000 }),
      },
    });
  },
});

/** What has to change for the ratio wanted, as volume and as the same over the whole bore. */
function wantedWords(missingCm3: number, boreMm: number, want: number, say: Sayer): string {
  const mm = (Math.abs(missingCm3) * 1000) / boreAreaMm2(boreMm);
  const [volume, height] = [say.one('capacity', Math.abs(missingCm3)), say.one('length', mm)];
  return missingCm3 >= 0
    ? `for ${sayNumber(want, 3)} to 1: ${volume} more clearance, e.g. ${height} more gasket or that dish in the piston`
    : `for ${sayNumber(want, 3)} to 1: ${volume} less clearance, e.g. ${height} off the face where it acts over the whole bore`;
}

const volumes = subcommand({
  description: 'Compression ratio of a swept and a clearance volume, or the clearance for a ratio',
  example: '/engine volumes swept:"499.6 cc" clearance:"50 cc"',
  input: z.object({
    swept: quantity('swept', 'volume', 'Swept volume of one cylinder'),
    clearance: quantity('clearance', 'volume', 'All that is left above the piston at the top').optional(),
    ratio: quantity('ratio', 'ratio', 'Or the ratio wanted').optional(),
  }),
  run({ swept, clearance, ratio }, { say }) {
    const sweptCm3 = swept * 1000;
    if ((clearance === undefined) === (ratio === undefined)) {
      throw new UserError('bad-input', 'Give either clearance or ratio: clearance:"50 cc", or ratio:10.5.');
    }
    const sum =
      ratio === undefined
        ? ratioOf({ sweptCm3, clearanceCm3: (clearance ?? 0) * 1000 })
        : clearanceForRatio({ sweptCm3, compressionRatio: ratio });
    const compressionNow = 'compressionRatio' in sum.value ? sum.value.compressionRatio : (ratio ?? 0);
    const clearanceCm3 = 'clearanceCm3' in sum.value ? sum.value.clearanceCm3 : (clearance ?? 0) * 1000;
    return sumAnswer({
      subject: 'Compression',
      result:
        ratio === undefined
          ? `Compression ratio ${compressionNow.toFixed(2)} to 1`
          : `${say.both('capacity', clearanceCm3)} of clearance for ${sayNumber(ratio, 3)} to 1`,
      calculation: sum,
      data: {
        kind: 'compression',
        compressionRatio: compressionNow,
        sweptL: swept,
        clearanceL: clearanceCm3 / 1000,
      },
    });
  },
});

const effective = subcommand({
  description: 'Effective compression ratio with boost, to compare one build with another',
  example: '/engine effective ratio:9 boost:"1 bar"',
  assumes: ['altitude'],
  input: z.object({
    ratio: quantity('ratio', 'ratio', 'Static compression ratio'),
    boost: gaugePressure('boost', 'Gauge pressure in the manifold'),
    altitude: quantity('altitude', 'distance', 'Height above sea level, e.g. 1600 m').optional(),
  }),
  run({ ratio, boost, altitude }, { say }) {
    const outside = outsidePressure({ altitudeM: metres(altitude) });
    const sum = effectiveRatio({ compressionRatio: ratio, boostKpa: boost, ...outside.value });
    return sumAnswer({
      subject: 'Compression',
      result: `Effective ratio ${sum.value.effectiveRatio.toFixed(1)} to 1 at ${say.both('pressure', boost)} boost`,
      working: [
        `static ${ratio.toFixed(2)} to 1, ${say.one('pressure', outside.value.atmosphereKpa, 4)} outside`,
      ],
      calculation: together(outside, sum),
      data: {
        kind: 'effective-ratio',
        effectiveRatio: sum.value.effectiveRatio,
        compressionRatio: ratio,
        boostKPa: boost,
        atmosphereKPa: outside.value.atmosphereKpa,
      },
    });
  },
});

const piston = subcommand({
  description: 'Mean piston speed and acceleration, or the engine speed for a piston speed',
  example: '/engine piston stroke:"86 mm" speed:7000rpm rod:"139 mm"',
  input: z.object({
    stroke: strokeOption,
    speed: turningSpeed('speed', 'Engine speed').optional(),
    limit: travelSpeed('limit', 'Or a mean piston speed, e.g. 20 m/s').optional(),
    rod: quantity('rod', 'length', 'Rod between centres: gives the acceleration').optional(),
  }),
  run({ stroke, speed, limit, rod }, { say }) {
    if ((speed === undefined) === (limit === undefined)) {
      throw new UserError('bad-input', 'Give either speed or limit: speed:7000rpm, or limit:"20 m/s".');
    }
    const back =
      limit === undefined ? undefined : speedForPistonSpeed({ strokeMm: stroke, speedMs: limit / 3.6 });
    const speedRpm = back?.value.speedRpm ?? speed ?? 0;
    const mean = meanPistonSpeed({ strokeMm: stroke, speedRpm });
    const thrust =
      rod === undefined ? undefined : pistonAcceleration({ strokeMm: stroke, rodMm: rod, speedRpm });
    const meanWords = say.both('pistonSpeed', mean.value.speedMs);
    return sumAnswer({
      subject: 'Piston',
      result:
        back === undefined
          ? `Mean piston speed ${meanWords} at ${Math.round(speedRpm)} rpm`
          : `${Math.round(speedRpm)} rpm for a mean piston speed of ${meanWords}`,
      working:
        thrust === undefined
          ? []
          : [
              `${Math.round(thrust.value.accelerationMs2)} m/s² at top dead centre (${Math.round(thrust.value.accelerationMs2 / GRAVITY)} g), rod ratio ${thrust.value.rodRatio.toFixed(2)}`,
            ],
      calculation: together(mean, thrust ?? {}),
      data: {
        kind: 'piston-speed',
        pistonSpeedMPerS: mean.value.speedMs,
        speedRpm,
        ...(thrust === undefined
          ? {}
          : { accelerationMPerS2: thrust.value.accelerationMs2, rodRatio: thrust.value.rodRatio }),
      },
    });
  },
});

const bmep = subcommand({
  description: 'Brake mean effective pressure from torque, or the torque for one',
  example: '/engine bmep displacement:"2 L" torque:"300 Nm"',
  assumes: ['cycle'],
  input: z.object({
    displacement: quantity('displacement', 'volume', 'Displacement, e.g. 2 L'),
    torque: quantity('torque', 'torque', 'Torque at the crankshaft').optional(),
    pressure: quantity('pressure', 'pressure', 'Or the mean pressure').optional(),
    cycle: z.enum(['four-stroke', 'two-stroke']).default('four-stroke').describe('How it works'),
  }),
  run({ displacement: displacementL, torque, pressure, cycle }, { say }) {
    if ((torque === undefined) === (pressure === undefined)) {
      throw new UserError(
        'bad-input',
        'Give either torque or pressure: torque:"300 Nm", or pressure:"18 bar".',
      );
    }
    const sum =
      torque === undefined
        ? torqueForMeanPressure({ bmepKpa: pressure ?? 0, displacementL, cycle })
        : meanEffectivePressure({ torqueNm: torque, displacementL, cycle });
    const bmepKpa = 'bmepKpa' in sum.value ? sum.value.bmepKpa : (pressure ?? 0);
    const torqueNm = 'torqueNm' in sum.value ? sum.value.torqueNm : (torque ?? 0);
    return sumAnswer({
      subject: 'Engine',
      result:
        torque === undefined
          ? `${say.both('torque', torqueNm)} at ${say.both('pressure', bmepKpa)}`
          : `Mean effective pressure ${say.both('pressure', bmepKpa)}`,
      calculation: sum,
      data: { kind: 'bmep', bmepKPa: bmepKpa, torqueNm, displacementL },
    });
  },
});

const power = subcommand({
  description: 'Power of a torque at a speed, or the torque of a power',
  example: '/engine power speed:6000rpm torque:"200 Nm"',
  input: z.object({
    speed: turningSpeed('speed', 'Engine speed'),
    torque: quantity('torque', 'torque', 'Torque').optional(),
    power: quantity('power', 'power', 'Or power').optional(),
  }),
  run({ speed, torque, power: given }, { say }) {
    if ((torque === undefined) === (given === undefined)) {
      throw new UserError('bad-input', 'Give either torque or power: torque:"200 Nm", or power:"150 kW".');
    }
    const sum =
      torque === undefined
        ? torqueOfPower({ powerKw: given ?? 0, speedRpm: speed })
        : powerOfTorque({ torqueNm: torque, speedRpm: speed });
    const powerKw = 'powerKw' in sum.value ? sum.value.powerKw : (given ?? 0);
    const torqueNm = 'torqueNm' in sum.value ? sum.value.torqueNm : (torque ?? 0);
    const powerWords = say.both('power', powerKw);
    const torqueWords = say.both('torque', torqueNm);
    return sumAnswer({
      subject: 'Engine',
      result: `${torque === undefined ? torqueWords : powerWords} at ${Math.round(speed)} rpm`,
      working: [torque === undefined ? powerWords : torqueWords],
      calculation: sum,
      data: { kind: 'power', powerKW: powerKw, torqueNm, speedRpm: speed },
    });
  },
});

export default defineCommand({
  description: 'Displacement, compression, piston speed, mean pressure, torque and power',
  subcommands: { size, compression, volumes, effective, piston, bmep, power },
});
