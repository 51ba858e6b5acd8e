import { z } from 'zod';
import { defineCommand, subcommand } from '../src/bot/command.ts';
import { quantity } from '../src/bot/quantity-option.ts';
import { sumAnswer } from '../src/bot/sum-answer.ts';
import { blendByVolume } from '../src/calc/fuel/blend.ts';
import { cellCorrection } from '../src/calc/fuel/cell-correction.ts';
import { fuelChange } from '../src/calc/fuel/fuel-change.ts';
import type { KnownFuel } from '../src/calc/fuel/known-fuel.ts';
import { GAUGE_AFR } from '../src/calc/fuel/lambda.ts';
import { type FuelScale, lambdaOfReading, type Reading } from '../src/calc/fuel/reading.ts';
import { mixTank, topUpFor } from '../src/calc/fuel/tank.ts';
import { typedFuel, typedLiquid } from '../src/calc/fuel/typed-fuel.ts';
import { together } from '../src/calc/together.ts';
import { sayNumber } from '../src/calc/units/say.ts';
import type { Calculation } from '../src/core/calculation.ts';
import { UserError } from '../src/core/user-error.ts';
import { FUEL_EXAMPLES, readFuelName } from '../src/phrases/fuel-name.ts';
import { readMixture } from '../src/phrases/mixture.ts';
import { fuelNames, fuelRows } from '../src/tables/fuels.ts';

const SUBJECT = 'Lambda';
const text = (description: string) => z.string().min(1).max(80).describe(description);
const fuelText = (description: string) => text(description).default('petrol');
const petrolDensity = quantity('density', 'density', 'Of the petrol; EN 228 allows 0.720 to 0.775').prefault(
  '0.745 g/cc',
);
const petrolAfr = z
  .number()
  .min(13)
  .max(16)
  .default(GAUGE_AFR)
  .describe('Stoichiometric ratio of the petrol in it');

/** The fuel meant by an option. @throws UserError naming the option when it means none, or several. */
function fuelOf(
  field: string,
  typed: string,
  petrol: { afr?: number; density?: number } = {},
): Calculation<KnownFuel> {
  return typedFuel(readFuelName(typed, fuelNames), fuelRows, {
    field,
    accepted: FUEL_EXAMPLES,
    petrol: { stoichiometricAfr: petrol.afr, densityKgM3: petrol.density },
  });
}

function liquidOf(field: string, typed: string, petrolKgM3: number): Calculation<KnownFuel> {
  return typedLiquid(readFuelName(typed, fuelNames), fuelRows, {
    field,
    accepted: FUEL_EXAMPLES,
    petrol: { densityKgM3: petrolKgM3 },
  });
}

/** @throws UserError naming the option when the text is no mixture, or could be several. */
function mixtureTyped(field: string, typed: string): Reading {
  const read = readMixture(typed);
  if (read.verdict === 'read') return read;
  if (read.verdict === 'refuse') {
    throw new UserError(
      'bad-input',
      `${field}: ${read.why} What would be read: 12.4 afr, 12.4:1, λ 0.86 or 0.86.`,
    );
  }
  const choices = read.options.map((option) => ({ label: option, value: option }));
  throw new UserError('which-one', read.why, { field, choices });
}

const leanOrRich = (lambdaRatio: number): string => {
  const off = Math.abs(lambdaRatio - 1) * 100;
  if (off < 0.5) return 'stoichiometric';
  return `${sayNumber(off, 2)} % ${lambdaRatio < 1 ? 'rich' : 'lean'}`;
};
const three = (value: number): string => value.toFixed(3);
const two = (value: number): string => value.toFixed(2);

const read = subcommand({
  description: 'λ of an AFR reading, or the AFR of a λ, for any fuel',
  example: '/lambda read reading:"12.4 afr"',
  assumes: ['fuel', 'scale', 'gauge'],
  input: z.object({
    reading: text('What the gauge says: 12.4 afr, 12.4:1, λ 0.86'),
    fuel: fuelText('What is in the tank: petrol, E85, M15, 70% ethanol'),
    scale: z
      .enum(['petrol', 'fuel'])
      .optional()
      .describe('What an AFR is counted in: petrol as most gauges, or the fuel'),
    gauge: z.number().min(5).max(20).default(GAUGE_AFR).describe('AFR that the gauge shows at λ 1'),
  }),
  run({ reading, fuel, scale, gauge }) {
    const tank = fuelOf('fuel', fuel);
    const given = mixtureTyped('reading', reading);
    const { name, stoichiometricAfr } = tank.value;
    const sum = lambdaOfReading(given, { stoichiometricAfr, gaugeAfr: gauge, scale });
    const { lambdaRatio, afr, phiRatio, excessAirRatio, countedIn } = sum.value;
    const gaugeShows = lambdaRatio * gauge;
    const other = Math.abs(gaugeShows - afr) > 0.05;
    return sumAnswer({
      subject: SUBJECT,
      result:
        given.as === 'afr'
          ? `λ ${three(lambdaRatio)}, ${leanOrRich(lambdaRatio)} (${sayNumber(given.value)} : 1, ${countedIn === 'petrol' ? 'petrol gauge' : name})`
          : `${two(afr)} : 1 on ${name} (λ ${three(lambdaRatio)}, ${leanOrRich(lambdaRatio)})`,
      working: [
        `${name} burns completely at ${two(stoichiometricAfr)} : 1`,
        ...(other
          ? [
              `A gauge lettered for ${two(gauge)} shows ${two(gaugeShows)}; the fuel's own ratio is ${two(afr)} : 1`,
            ]
          : []),
        `φ ${three(phiRatio)}, excess air ${sayNumber(excessAirRatio * 100, 3)} %`,
      ],
      certainty: 'The sensor knows λ. A gauge lettered in AFR is usually λ × 14.7, whatever is in the tank.',
      calculation: together(sum, tank),
      data: {
        kind: 'afr-lambda',
        fuel: name,
        lambda: lambdaRatio,
        afr: given.as === 'afr' ? given.value : afr,
        fuelAfr: afr,
        gaugeAfr: gaugeShows,
        phi: phiRatio,
        excessAirRatio,
        stoichiometricAfr,
        result: given.as === 'afr' ? { value: lambdaRatio, unit: 'lambda' } : { value: afr, unit: 'AFR' },
      },
    });
  },
});

const fuel = subcommand({
  description: 'Stoichiometric ratio, density and oxygen of a fuel or blend',
  example: '/lambda fuel fuel:E85',
  assumes: ['petrol', 'density'],
  input: z.object({
    fuel: text('petrol, E85, M15, LPG, 90% E85 + 10% toluene, petrol 2.7% oxygen'),
    petrol: petrolAfr,
    density: petrolDensity,
  }),
  run({ fuel: typed, petrol, density }) {
    const said = { afr: petrol, density };
    const tank = fuelOf('fuel', typed, said);
    const plain = fuelOf('fuel', 'petrol', said);
    const { name, stoichiometricAfr, densityKgM3, oxygenRatio, alcoholRatio, calorificKjPerKg, liquid } =
      tank.value;
    const sameInjectors = (of: KnownFuel) => ({ ...of, flowCcMin: 100 });
    const change = liquid ? fuelChange(sameInjectors(plain.value), sameInjectors(tank.value)) : undefined;
    return sumAnswer({
      subject: SUBJECT,
      result: `${name}: ${two(stoichiometricAfr)} : 1${liquid ? `, ${three(densityKgM3 / 1000)} g/cc` : ' by mass, a gas'}`,
      facts: [
        ['Oxygen in it', `${sayNumber(oxygenRatio * 100, 3)} % by mass`],
        ...(alcoholRatio > 0
          ? [['Alcohol in it', `${sayNumber(alcoholRatio * 100, 3)} % by volume`] as const]
          : []),
        ['Heat in it', `${sayNumber(calorificKjPerKg / 1000, 3)} MJ/kg`],
        ...(change === undefined || Math.abs(change.value.volumeRatio - 1) < 0.001
          ? []
          : [
              [
                'Against petrol',
                `× ${three(change.value.volumeRatio)} by volume for the same air and λ`,
              ] as const,
            ]),
      ],
      calculation: together(tank, { caveats: change?.caveats ?? [] }),
      data: {
        kind: 'fuel',
        fuel: name,
        stoichiometricAfr,
        densityKgM3,
        oxygenRatio,
        alcoholRatio,
        calorificKjPerKg,
        ...(change === undefined
          ? {}
          : { volumeRatio: change.value.volumeRatio, massRatio: change.value.massRatio }),
      },
    });
  },
});

const correct = subcommand({
  description: 'From measured λ to the wanted one: what the cell of the fuel table is multiplied by',
  example: '/lambda correct measured:0.86 wanted:0.90',
  assumes: ['limit', 'fuel', 'scale'],
  input: z.object({
    measured: text('What was read at that cell: λ 0.86 or 12.4 afr'),
    wanted: text('What it is to be: λ 0.90 or 13.2 afr'),
    cell: z.number().gt(0).optional().describe('What stands in the cell now'),
    limit: quantity('limit', 'percent', 'Largest change in one step').prefault('10 %'),
    fuel: fuelText('What is in the tank; counts only when one is λ and the other AFR'),
    scale: z
      .enum(['petrol', 'fuel'])
      .optional()
      .describe('What an AFR is counted in: petrol as most gauges, or the fuel'),
  }),
  run({ measured, wanted, cell, limit, fuel: typed, scale }) {
    const tank = fuelOf('fuel', typed);
    const [from, to] = [mixtureTyped('measured', measured), mixtureTyped('wanted', wanted)];
    const { lambdas, notes } = bothLambdas(from, to, tank.value, scale);
    const sum = cellCorrection({ ...lambdas, limitRatio: limit });
    const { multiplierRatio, fullMultiplierRatio, limited, steps } = sum.value;
    const percent = `${sayNumber(Math.abs(multiplierRatio - 1) * 100, 2)} %`;
    const direction = multiplierRatio < 1 ? `Take ${percent} out` : `Put ${percent} in`;
    const none = Math.abs(multiplierRatio - 1) < 0.0005;
    return sumAnswer({
      subject: SUBJECT,
      result: none ? 'Leave it: it is where it should be' : `${direction}: × ${three(multiplierRatio)}`,
      certainty: limited
        ? `The whole way is × ${three(fullMultiplierRatio)}: held to one step, about ${steps} steps in all. Read again after each.`
        : 'Change it, drive the same cell again, and read again.',
      working: [
        `λ ${three(lambdas.measuredLambdaRatio)} measured, ${three(lambdas.wantedLambdaRatio)} wanted`,
        ...(cell === undefined
          ? []
          : [`The cell goes from ${sayNumber(cell)} to ${sayNumber(cell * multiplierRatio)}`]),
      ],
      calculation: together(sum, notes),
      data: {
        kind: 'afr-lambda',
        ...(from.as === 'afr' ? { afr: from.value } : { lambda: from.value }),
        ...(to.as === 'afr' ? { targetAfr: to.value } : { targetLambda: to.value }),
        multiplierRatio,
        fullMultiplierRatio,
        limited,
        steps,
        ...(cell === undefined ? {} : { cell, newCell: cell * multiplierRatio }),
        result: { value: fullMultiplierRatio - 1, unit: 'fuel change' },
      },
    });
  },
});

/** Both readings as λ; where both are counted alike the fuel cancels and is not asked about. */
function bothLambdas(from: Reading, to: Reading, tank: KnownFuel, scale: FuelScale | undefined) {
  const alike = from.as === to.as;
  const counted = {
    stoichiometricAfr: alike ? GAUGE_AFR : tank.stoichiometricAfr,
    gaugeAfr: GAUGE_AFR,
    scale,
  };
  const [measured, wanted] = [lambdaOfReading(from, counted), lambdaOfReading(to, counted)];
  return {
    lambdas: {
      measuredLambdaRatio: measured.value.lambdaRatio,
      wantedLambdaRatio: wanted.value.lambdaRatio,
    },
    notes: alike ? together() : together(measured, wanted),
  };
}

const tank = subcommand({
  description: 'What is in the tank after topping up, or how much to add for a wanted share of alcohol',
  example: '/lambda tank litres:20L holds:E10 with:E85 add:30L',
  assumes: ['density'],
  input: z.object({
    litres: quantity('litres', 'volume', 'What is in the tank, e.g. 20 L'),
    holds: text('Fuel in the tank, e.g. E10'),
    with: text('Fuel that is added, e.g. E85'),
    add: quantity('add', 'volume', 'How much of it is added, e.g. 30 L').optional(),
    wanted: quantity('wanted', 'percent', 'Or the share of alcohol wanted, e.g. 60 %').optional(),
    density: petrolDensity,
  }),
  run({ litres, holds, with: added, add, wanted, density }, { say }) {
    const [first, second] = [liquidOf('holds', holds, density), liquidOf('with', added, density)];
    if ((add === undefined) === (wanted === undefined)) {
      throw new UserError('bad-input', 'Give add (litres) or wanted (the share of alcohol), one of the two.');
    }
    const inTank = { volumeL: litres, alcoholRatio: first.value.alcoholRatio };
    const needed = topUp(inTank, second.value.alcoholRatio, wanted);
    const addL = add ?? needed?.value.addL ?? 0;
    const mixed = mixTank(inTank, { volumeL: addL, alcoholRatio: second.value.alcoholRatio });
    const shareAdded = addL / mixed.value.volumeL;
    const blend = blendByVolume([
      { volumeRatio: 1 - shareAdded, fuel: first.value },
      { volumeRatio: shareAdded, fuel: second.value },
    ]);
    const { stoichiometricAfr, densityKgM3 } = blend.value;
    const share = `${sayNumber(mixed.value.alcoholRatio * 100, 3)} % alcohol`;
    return sumAnswer({
      subject: SUBJECT,
      result:
        needed === undefined
          ? `${share}, ${two(stoichiometricAfr)} : 1, in ${say.both('volume', mixed.value.volumeL)}`
          : `Add ${say.both('volume', addL)} of ${second.value.name} for ${share}`,
      working: [
        `${say.one('volume', litres)} of ${first.value.name} and ${say.one('volume', addL)} of ${second.value.name}: ${say.one('volume', mixed.value.volumeL)}`,
        `Stoichiometric ${two(stoichiometricAfr)} : 1, ${three(densityKgM3 / 1000)} g/cc`,
      ],
      calculation: together(mixed, blend, first, second, {
        caveats: ['Fuel vapour burns: no flame, earth the can, fill outdoors.'],
      }),
      data: {
        kind: 'tank',
        volumeL: mixed.value.volumeL,
        addL,
        alcoholRatio: mixed.value.alcoholRatio,
        stoichiometricAfr,
        densityKgM3,
      },
    });
  },
});

function topUp(
  inTank: { volumeL: number; alcoholRatio: number },
  addedAlcoholRatio: number,
  wanted: number | undefined,
) {
  return wanted === undefined
    ? undefined
    : topUpFor({ inTank, addedAlcoholRatio, wantedAlcoholRatio: wanted });
}

export default defineCommand({
  description: 'λ and air–fuel ratio for any fuel, the correction of a fuel table, and mixing fuels',
  subcommands: { read, correct, fuel, tank },
});
