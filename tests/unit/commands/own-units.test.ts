import { describe, expect, it } from 'vitest';
import type { OptionSpec } from '../../../src/bot/options.ts';
import { fromBase } from '../../../src/calc/units/convert.ts';
import { sayExactly } from '../../../src/calc/units/say.ts';
import { type UnitId, units } from '../../../src/calc/units/table.ts';
import type { Dimension } from '../../../src/calc/units/unit.ts';
import type { Json, JsonObject } from '../../../src/core/json.ts';
import type { Answer } from '../../../src/core/reply.ts';
import { readQuantityList } from '../../../src/phrases/quantity/read-list.ts';
import { readQuantity } from '../../../src/phrases/quantity/read-quantity.ts';
import { allCommands, type CrewBot, cardIn, openCrewBot } from '../../support/bot.ts';
import { examplesOf, typedExample } from '../../support/typed-example.ts';

const catalogue = await allCommands();

/** How an American would have typed it. */
const AMERICAN: Partial<Record<Dimension, UnitId>> = {
  pressure: 'psi',
  torque: 'lbf.ft',
  temperature: 'degF',
  length: 'in',
  volume: 'usQt',
  'volume-flow': 'usGph',
  'mass-flow': 'lb/h',
  power: 'hp',
  force: 'lbf',
  speed: 'mph',
};

/** Outside brackets, where the other trade's unit stands. */
const METRIC =
  /[\d⁄½] ?(?:bar|mbar|kPa|MPa|N·m|°C|mm|m|L|L\/h|L\/min|cc|kW|kN|N|km|km\/h|m\/s|g\/s|kg\/h)(?![\p{L}²/·])/u;

/** Sums that answer in units; a cable's size is a thing of its own, as a sensor's scale is. */
const SUMS = /^\/(?:air|boost|brake|check|coolant|engine|injector|lambda|oil|pump|torque|sensor (?!linear))/;
const sums = examplesOf(catalogue).filter((example) => SUMS.test(example));

function optionsOf(line: string): readonly OptionSpec[] {
  const [name = '', sub] = line.split(' ');
  const entry = catalogue.find(name);
  return (
    (sub === undefined ? entry?.options : entry?.subcommands.find((one) => one.name === sub)?.options) ?? []
  );
}

/** A quantity typed in the American unit of its dimension; anything else as it was. */
function americanised(
  specs: readonly OptionSpec[],
  [name, typed]: [string, Json | undefined],
): [string, Json] {
  const measures = specs.find((spec) => spec.name === name)?.measures;
  if (measures === undefined || typeof typed !== 'string') return [name, typed ?? null];
  const read = readQuantity(typed, measures);
  const row = read.verdict === 'read' ? { values: [read.value], ...read } : readQuantityList(typed, measures);
  if (row.verdict !== 'read') return [name, typed];
  const unit = AMERICAN[units[row.typedUnit].dimension];
  if (unit === undefined) return [name, typed];
  return [name, row.values.map((value) => sayExactly(fromBase(value, unit), unit)).join('; ')];
}

async function sumIn(bot: CrewBot, line: string, options: JsonObject): Promise<Answer> {
  const result = await bot.run(line, options);
  if (!result.ok) throw new Error(`${line} ${JSON.stringify(options)}: ${cardIn(result).result}`);
  return cardIn(result);
}

describe('a crew that counts in psi, lbf·ft, °F, in and US quarts', () => {
  it('is answered in them, whatever is asked', async () => {
    const bot = await openCrewBot();
    await bot.run('team', { units: 'US' });
    const wrong: string[] = [];
    let seen = 0;
    for (const example of sums) {
      const { line, options } = typedExample(catalogue, example);
      const specs = optionsOf(line);
      const american = Object.fromEntries(
        Object.entries(options).map((option) => americanised(specs, option)),
      );
      const answer = await sumIn(bot, line, american);
      seen += 1;
      const leading = answer.result.replaceAll(/\([^)]*\)/gu, '');
      if (METRIC.test(leading)) wrong.push(`${example}: ${answer.result}`);
      if (answer.result.length > 90) wrong.push(`${answer.result.length} characters: ${answer.result}`);
    }
    expect(seen).toBeGreaterThan(40);
    expect(wrong).toEqual([]);
  }, 30_000);

  it('gets the same numbers as data as everybody else', async () => {
    const [plain, american] = [await openCrewBot(), await openCrewBot()];
    await american.run('team', { units: 'US' });
    let seen = 0;
    for (const example of sums) {
      const { line, options } = typedExample(catalogue, example);
      const [ours, theirs] = [await sumIn(plain, line, options), await sumIn(american, line, options)];
      seen += 1;
      const { assumptions: _ours, ...numbers } = ours.data;
      const { assumptions: _theirs, ...same } = theirs.data;
      expect(same, example).toEqual(numbers);
    }
    expect(seen).toBeGreaterThan(40);
  }, 30_000);
});

describe('whoever types a unit', () => {
  it.each([
    ['boost ratio', { boost: '14.5 psi' }, '14.5 psi (1 bar)'],
    ['boost ratio', { boost: '1 bar' }, '1 bar (14.5 psi)'],
    ['oil viscosity', { temp: '200 °F' }, '200 °F (93 °C)'],
    ['engine power', { speed: '5252 rpm', power: '300 kW' }, '545 N·m (402 lbf·ft)'],
    ['engine size', { bore: '4 in', stroke: '3.48 in', cylinders: 8 }, '349.8 in³ (5733 cc)'],
    ['check compression', { readings: '165 170 168 90' }, '90 psi (6.21 bar)'],
  ] as const)('%s %j is answered in it', async (line, options, words) => {
    const bot = await openCrewBot();
    expect(cardIn(await bot.run(line, { ...options })).result).toContain(words);
  });

  it('is answered in it before the crew’s own, and the rest in the crew’s', async () => {
    const bot = await openCrewBot();
    await bot.run('team', { units: 'US' });
    const { result } = cardIn(await bot.run('coolant boil', { cap: '1.1 bar' }));
    expect(result).toBe('Boils at 266 °F (130 °C) under 1.1 bar (16 psi)');
  });
});
