import { z } from 'zod';
import { defineCommand, subcommand } from '../src/bot/command.ts';
import { quantity } from '../src/bot/quantity-option.ts';
import { sumAnswer } from '../src/bot/sum-answer.ts';
import type { KnownFuel } from '../src/calc/fuel/known-fuel.ts';
import { GAUGE_AFR } from '../src/calc/fuel/lambda.ts';
import { correctionAnswer, readingAnswer } from '../src/calc/fuel/lambda-answer.ts';
import type { Reading } from '../src/calc/fuel/reading.ts';
import { fuelAnswer, tankAnswer } from '../src/calc/fuel/tank-answer.ts';
import { typedFuel, typedLiquid } from '../src/calc/fuel/typed-fuel.ts';
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
  run({ reading, fuel, scale, gauge: gaugeAfr }) {
    const asked = { tank: fuelOf('fuel', fuel), reading: mixtureTyped('reading', reading), scale, gaugeAfr };
    return sumAnswer({ subject: SUBJECT, ...readingAnswer(asked) });
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
    const answer = fuelAnswer(fuelOf('fuel', typed, said), fuelOf('fuel', 'petrol', said).value);
    return sumAnswer({ subject: SUBJECT, ...answer });
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
  run({ measured, wanted, cell, limit: limitRatio, fuel: typed, scale }) {
    const answer = correctionAnswer({
      measured: mixtureTyped('measured', measured),
      wanted: mixtureTyped('wanted', wanted),
      tank: fuelOf('fuel', typed).value,
      scale,
      limitRatio,
      cell,
    });
    return sumAnswer({ subject: SUBJECT, ...answer });
  },
});

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
  run({ litres, holds: first, with: second, add, wanted, density }, { say }) {
    const [holds, added] = [liquidOf('holds', first, density), liquidOf('with', second, density)];
    if ((add === undefined) === (wanted === undefined)) {
      throw new UserError('bad-input', 'Give add (litres) or wanted (the share of alcohol), one of the two.');
    }
    const by = wanted === undefined ? { addL: add ?? 0 } : { wantedAlcoholRatio: wanted };
    return sumAnswer({ subject: SUBJECT, ...tankAnswer({ litres, holds, added, by }, say) });
  },
});

export default defineCommand({
  description: 'λ and air–fuel ratio for any fuel, the correction of a fuel table, and mixing fuels',
  subcommands: { read, correct, fuel, tank },
});
