import { z } from 'zod';
import { defineCommand, subcommand } from '../src/bot/command.ts';
import { gaugePressure, height, quantity, travelSpeed, turningSpeed } from '../src/bot/quantity-option.ts';
import { sumAnswer } from '../src/bot/sum-answer.ts';
import { outsidePressure } from '../src/calc/air/outside.ts';
import {
  compressionAnswer,
  effectiveAnswer,
  volumesAnswer,
} from '../src/calc/geometry/compression-answer.ts';
import { displacement, overbore } from '../src/calc/geometry/displacement.ts';
import { pistonAnswer } from '../src/calc/geometry/piston-answer.ts';
import {
  meanEffectivePressure,
  powerOfTorque,
  torqueForMeanPressure,
  torqueOfPower,
} from '../src/calc/geometry/torque.ts';
import { together } from '../src/calc/together.ts';
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
    const answer = compressionAnswer(
      {
        boreMm: asked.bore,
        strokeMm: asked.stroke,
        chamberCm3: asked.chamber * 1000,
        gasketThicknessMm: asked.gasket,
        gasketBoreMm: asked.ring,
        deckMm: asked.deck - (asked.proud ?? 0),
        dishCm3: (asked.dish - (asked.dome ?? 0)) * 1000,
        wantedRatio: asked.want,
        cutMm: asked.cut,
      },
      say,
    );
    return sumAnswer({ subject: 'Compression', ...answer });
  },
});

const volumes = subcommand({
  description: 'Compression ratio of a swept and a clearance volume, or the clearance for a ratio',
  example: '/engine volumes swept:"499.6 cc" clearance:"50 cc"',
  input: z.object({
    swept: quantity('swept', 'volume', 'Swept volume of one cylinder'),
    clearance: quantity('clearance', 'volume', 'All that is left above the piston at the top').optional(),
    ratio: quantity('ratio', 'ratio', 'Or the ratio wanted').optional(),
  }),
  run({ swept, clearance, ratio }, { say }) {
    if ((clearance === undefined) === (ratio === undefined)) {
      throw new UserError('bad-input', 'Give either clearance or ratio: clearance:"50 cc", or ratio:10.5.');
    }
    const given =
      ratio === undefined ? { clearanceCm3: (clearance ?? 0) * 1000 } : { compressionRatio: ratio };
    return sumAnswer({ subject: 'Compression', ...volumesAnswer(swept * 1000, given, say) });
  },
});

const effective = subcommand({
  description: 'Effective compression ratio with boost, to compare one build with another',
  example: '/engine effective ratio:9 boost:"1 bar"',
  assumes: ['altitude'],
  input: z.object({
    ratio: quantity('ratio', 'ratio', 'Static compression ratio'),
    boost: gaugePressure('boost', 'Gauge pressure in the manifold'),
    altitude: height('altitude', 'Height above sea level, e.g. 1600 m').optional(),
  }),
  run({ ratio, boost, altitude }, { say }) {
    const outside = outsidePressure({ altitudeM: metres(altitude) });
    return sumAnswer({ subject: 'Compression', ...effectiveAnswer(ratio, boost, outside, say) });
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
  run({ stroke: strokeMm, speed, limit, rod: rodMm }, { say }) {
    if ((speed === undefined) === (limit === undefined)) {
      throw new UserError('bad-input', 'Give either speed or limit: speed:7000rpm, or limit:"20 m/s".');
    }
    const given = speed === undefined ? { limitMPerS: (limit ?? 0) / 3.6 } : { speedRpm: speed };
    return sumAnswer({ subject: 'Piston', ...pistonAnswer({ strokeMm, given, rodMm }, say) });
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
