import { z } from 'zod';
import { defineCommand, subcommand } from '../src/bot/command.ts';
import { readRow, row } from '../src/bot/quantity-list-option.ts';
import { absolutePressure, height, quantity } from '../src/bot/quantity-option.ts';
import { sumAnswer } from '../src/bot/sum-answer.ts';
import { outsidePressure } from '../src/calc/air/outside.ts';
import { type BarsInWords, barsOf } from '../src/calc/readings/bars.ts';
import { clearanceAnswer } from '../src/calc/readings/clearance-answer.ts';
import type { ClearanceLimit } from '../src/calc/readings/clearances.ts';
import { compressionAnswer } from '../src/calc/readings/compression-answer.ts';
import { holdAnswer } from '../src/calc/readings/hold-answer.ts';
import { leakAnswer } from '../src/calc/readings/leak-answer.ts';
import { HISSES, type Hiss } from '../src/calc/readings/leak-down.ts';
import { ringGapAnswer } from '../src/calc/readings/ring-gap-answer.ts';
import type { SumWords } from '../src/calc/sum-words.ts';
import { type UnitId, units } from '../src/calc/units/table.ts';
import type { Drawing } from '../src/core/reply.ts';
import { UserError } from '../src/core/user-error.ts';
import { cylinderBars } from '../src/pictures/cylinder-bars.ts';
import { readingLimit } from '../src/tables/reading-limits.ts';

const SHARES = {
  natural: 'ring-gap-natural',
  boosted: 'ring-gap-boosted',
  'high boost': 'ring-gap-high-boost',
} as const;
const PISTONS = { cast: 'piston-cast', 4032: 'piston-4032', 2618: 'piston-2618' } as const;
const HISS_NAMES = Object.keys(HISSES).filter((name): name is Hiss => name in HISSES);

/** A share as the table of limits has it, as it would be typed: "10 %". */
const usual = (id: string, end: 'min' | 'max'): string => `${readingLimit(id)[end] ?? 0} %`;
const shares = (id: string) => {
  const { min = 0, max = 0 } = readingLimit(id);
  return { minRatio: min, maxRatio: max };
};

/** Figures without a unit, by the size they can have: no engine cranks 12 psi, and none 165 bar. */
function compressionUnit(largest: number): UnitId | undefined {
  if (largest >= 3 && largest <= 35) return 'bar';
  if (largest >= 45 && largest <= 400) return 'psi';
  return largest >= 450 && largest <= 3500 ? 'kPa' : undefined;
}

/** Diameters of an engine without a unit: none has a journal of 15 in, or a bore of 8 mm. */
const diameterUnit = (largest: number): UnitId | undefined =>
  largest >= 15 ? 'mm' : largest < 8 ? 'in' : undefined;
/** Ring gaps without a unit. */
const gapUnit = (largest: number): UnitId | undefined =>
  largest >= 0.12 ? 'mm' : largest < 0.06 ? 'in' : undefined;

/** What rows of bare figures were taken for, said with what was assumed. */
function told(
  calculation: SumWords['calculation'],
  ...rows: readonly ReturnType<typeof readRow>[]
): SumWords['calculation'] {
  const assumed = rows.find(({ unitAssumed }) => unitAssumed);
  if (assumed === undefined) return calculation;
  const words = `figures without a unit are ${units[assumed.typedUnit].sign}`;
  return { ...calculation, assumptions: [words, ...calculation.assumptions] };
}

function drawn(
  bars: BarsInWords | undefined,
  title: string,
  called: { low: string; high: string },
): readonly Drawing[] {
  if (bars === undefined || bars.values.length < 2) return [];
  return [cylinderBars({ ...barsOf(bars), title, called, name: 'cylinders.png' })];
}

const metres = (km: number | undefined): number | undefined => (km === undefined ? undefined : km * 1000);

const compression = subcommand({
  description: 'A compression test: spread, the weak cylinder, wet against dry, height',
  example: '/check compression readings:"165 170 168 90 psi" wet:"172 176 175 140 psi"',
  assumes: ['unit', 'limit', 'altitude', 'barometer', 'rise'],
  input: z.object({
    readings: row('pressure', 'One for each cylinder in order: 12.1 12 11.8 9.6 bar'),
    wet: row('pressure', 'Again with a spoon of oil in each').optional(),
    unit: z.enum(['bar', 'psi', 'kPa']).optional().describe('Of figures without one'),
    limit: quantity('limit', 'percent', 'Spread let pass').prefault(usual('compression-spread', 'max')),
    least: quantity('least', 'pressure', 'The maker’s least, at sea level').optional(),
    altitude: height('altitude', 'Height above sea level, e.g. 1600 m').optional(),
    barometer: absolutePressure('barometer', 'Or the air pressure where it stands').optional(),
    rise: quantity('rise', 'percent', 'Rise with oil that means the rings').prefault(
      usual('compression-wet-rise', 'min'),
    ),
  }),
  run({ readings, wet, unit, limit, least, altitude, barometer, rise }, { say }) {
    const dry = readRow('readings', 'pressure', readings, (largest) => unit ?? compressionUnit(largest));
    const { bars, ...answer } = compressionAnswer(
      {
        readingsKpa: dry.values,
        wetKpa: wet === undefined ? undefined : readRow('wet', 'pressure', wet, () => dry.typedUnit).values,
        limitRatio: limit,
        riseRatio: rise,
        leastKpa: least,
        outside: outsidePressure({ barometerKpa: barometer, altitudeM: metres(altitude) }),
        placed: altitude !== undefined || barometer !== undefined,
      },
      say.answering(dry.typedUnit),
    );
    return {
      ...sumAnswer({ subject: 'Compression test', ...answer, calculation: told(answer.calculation, dry) }),
      drawings: drawn(bars, answer.result, { low: 'weak', high: 'high' }),
    };
  },
});

const leakDown = subcommand({
  description: 'A leak-down test: how much each cylinder leaks, and where the hissing points',
  example: '/check leak-down held:"95 94 71 90 psi" supply:"100 psi"',
  assumes: ['supply', 'good', 'limit', 'hiss'],
  input: z.object({
    held: row('pressure', 'What each cylinder holds, in order: 95 94 71 90 psi').optional(),
    leak: row('percent', 'Or the leaks the tester shows: 5 6 29 10 %').optional(),
    supply: quantity('supply', 'pressure', 'Pressure let in').prefault('100 psi'),
    hiss: z.enum(HISS_NAMES).optional().describe('Where the worst one is heard'),
    good: quantity('good', 'percent', 'Good up to here').prefault(usual('leak-good', 'max')),
    limit: quantity('limit', 'percent', 'Looked into from here on').prefault(
      usual('leak-investigate', 'min'),
    ),
  }),
  run({ held, leak, supply, hiss, good, limit }, { say }) {
    if ((held === undefined) === (leak === undefined)) {
      throw new UserError(
        'bad-input',
        'Give either held or leak: held:"95 94 71 90 psi" with supply:"100 psi", or leak:"5 6 29 10 %".',
      );
    }
    const row = held === undefined ? undefined : readRow('held', 'pressure', held, () => 'psi');
    const { bars, ...answer } = leakAnswer(
      {
        supplyKpa: supply,
        heldKpa: row?.values,
        leakRatios: leak === undefined ? undefined : readRow('leak', 'percent', leak, () => 'percent').values,
        goodRatio: good,
        investigateRatio: limit,
        hiss,
      },
      row === undefined ? say : say.answering(row.typedUnit),
    );
    const calculation = row === undefined ? answer.calculation : told(answer.calculation, row);
    return {
      ...sumAnswer({ subject: 'Leak-down', ...answer, calculation }),
      drawings: drawn(bars, answer.result, { low: '', high: 'leaks' }),
    };
  },
});

const pressureHold = subcommand({
  description: 'Whether fuel pressure holds after the pump stops, and where it goes if not',
  example: '/check pressure-hold before:"3 bar" after:"2.7 bar" minutes:5',
  assumes: ['minutes', 'limit'],
  input: z.object({
    before: quantity('before', 'pressure', 'When the pump stopped'),
    after: quantity('after', 'pressure', 'Some minutes later'),
    minutes: z.number().min(0.1).max(1440).default(5).describe('How many minutes later'),
    limit: quantity('limit', 'percent', 'Fall in 5 minutes let pass').prefault(
      usual('fuel-pressure-fall', 'max'),
    ),
  }),
  run({ before, after, minutes, limit }, { say }) {
    const { minutes: overMinutes = 5 } = readingLimit('fuel-pressure-fall');
    const answer = holdAnswer(
      { startKpa: before, endKpa: after, minutes, limitRatio: limit, overMinutes },
      say,
    );
    return sumAnswer({ subject: 'Pressure hold', ...answer });
  },
});

const ringGap = subcommand({
  description: 'Gaps of the rings for a bore, and measured ones against them',
  example: '/check ring-gap bore:"86 mm" use:boosted',
  assumes: ['unit', 'use', 'least', 'most'],
  input: z.object({
    bore: quantity('bore', 'length', 'Bore, e.g. 86 mm'),
    use: z.enum(['natural', 'boosted', 'high boost']).default('boosted').describe('How it is filled'),
    measured: row('length', 'Top rings as measured, in order: 0.42 0.45 0.40 mm').optional(),
    unit: z.enum(['mm', 'in']).optional().describe('Of measured figures without one'),
    least: quantity('least', 'length', 'Least top gap the maker asks, instead of the usual').optional(),
    most: quantity('most', 'length', 'Widest top gap the maker allows').optional(),
  }),
  run({ bore, use, measured, unit, least, most }, { say }) {
    const meant = (largest: number) => unit ?? gapUnit(largest);
    const found = measured === undefined ? undefined : readRow('measured', 'length', measured, meant);
    const { bars, ...answer } = ringGapAnswer(
      {
        boreMm: bore,
        use,
        top: shares(SHARES[use]),
        secondMore: shares('ring-gap-second'),
        oilRailMm: readingLimit('ring-gap-oil').min ?? 0,
        own: least === undefined ? undefined : { minMm: least, maxMm: most },
        measuredMm: found?.values,
      },
      say,
    );
    return {
      ...sumAnswer({
        subject: 'Ring gap',
        ...answer,
        calculation: told(answer.calculation, ...(found === undefined ? [] : [found])),
      }),
      drawings: drawn(bars, answer.result, { low: 'too small', high: 'wide' }),
    };
  },
});

const lengthUnit = z.enum(['mm', 'in']).optional().describe('Of figures without one');
const ownLimits = {
  unit: lengthUnit,
  least: quantity('least', 'length', 'Least clearance, instead of the usual').optional(),
  most: quantity('most', 'length', 'Widest clearance, instead of the usual').optional(),
};

/** The crew's own limits where both are given, else shares of the shaft. @throws UserError 'bad-input' for one of them. */
function limitFrom(
  { least, most }: { readonly least?: number | undefined; readonly most?: number | undefined },
  id: string,
): ClearanceLimit {
  if (least !== undefined && most !== undefined) return { kind: 'length', minMm: least, maxMm: most };
  if (least === undefined && most === undefined) return { kind: 'share', ...shares(id) };
  throw new UserError('bad-input', 'Give both least and most, or neither: least:"0.04 mm" most:"0.07 mm".');
}

const bearing = subcommand({
  description: 'Oil clearance of main and big-end bearings, one for each journal',
  example: '/check bearing journals:"54.98 54.97 54.98 mm" shells:"55.03 55.04 55.03 mm"',
  assumes: ['unit', 'least', 'most'],
  input: z.object({
    journals: row('length', 'Measured journals in order: 54.98 54.97 54.98 mm'),
    shells: row('length', 'Bores with shells in and caps torqued, in order, or one for all'),
    ...ownLimits,
  }),
  run({ journals, shells, unit, ...own }, { say }) {
    const meant = (largest: number) => unit ?? diameterUnit(largest);
    const shafts = readRow('journals', 'length', journals, meant);
    const holes = readRow('shells', 'length', shells, meant);
    const { bars, ...answer } = clearanceAnswer(
      {
        kind: 'bearing',
        shaftsMm: shafts.values,
        holesMm: holes.values,
        limit: limitFrom(own, 'bearing'),
        limitFor: 'plain bearing',
      },
      say.answering(shafts.typedUnit),
    );
    return {
      ...sumAnswer({ subject: 'Bearings', ...answer, calculation: told(answer.calculation, shafts, holes) }),
      drawings: drawn(bars, answer.result, { low: 'tight', high: 'wide' }),
    };
  },
});

const piston = subcommand({
  description: 'Clearance of pistons in their bores, one for each cylinder',
  example: '/check piston bores:"86.07 86.07 86.08 mm" pistons:"85.99 85.98 85.99 mm"',
  assumes: ['unit', 'type', 'least', 'most'],
  input: z.object({
    bores: row('length', 'Measured bores in order: 86.07 86.07 86.08 mm'),
    pistons: row('length', 'Pistons across the skirt, in order, or one for all'),
    type: z.enum(['2618', '4032', 'cast']).default('2618').describe('Forged 2618 or 4032, or cast'),
    ...ownLimits,
  }),
  run({ bores, pistons, type, unit, ...own }, { say }) {
    const meant = (largest: number) => unit ?? diameterUnit(largest);
    const holes = readRow('bores', 'length', bores, meant);
    const shafts = readRow('pistons', 'length', pistons, meant);
    const { bars, ...answer } = clearanceAnswer(
      {
        kind: 'piston',
        shaftsMm: shafts.values,
        holesMm: holes.values,
        limit: limitFrom(own, PISTONS[type]),
        limitFor: type === 'cast' ? 'cast piston' : `forged ${type} piston`,
      },
      say.answering(holes.typedUnit),
    );
    return {
      ...sumAnswer({ subject: 'Pistons', ...answer, calculation: told(answer.calculation, holes, shafts) }),
      drawings: drawn(bars, answer.result, { low: 'tight', high: 'wide' }),
    };
  },
});

export default defineCommand({
  description: 'Checks of assembly: ring gaps, bearings, pistons, compression, leak-down, fuel pressure',
  subcommands: {
    compression,
    'leak-down': leakDown,
    'ring-gap': ringGap,
    bearing,
    piston,
    'pressure-hold': pressureHold,
  },
});
