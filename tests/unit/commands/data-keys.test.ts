import { expect, it } from 'vitest';
import type { Json } from '../../../src/core/json.ts';
import { allCommands, openCrewBot } from '../../support/bot.ts';
import { examplesOf, typedExample } from '../../support/typed-example.ts';

/** A number's key ends in its unit, as in `pressureKPa`, or says that it is a share. */
const WITH_UNIT =
  /(?:Mm|Mm2|L|Kg|N|NPerMm|Nm|KPa|KW|KJ|KmH|MPerS|MPerS2|Rpm|CcMin|Gs|KgM3|Mm2S|MPaS|GPerKWh|V|A|Ohm|Hz|S|Deg|C|K|PerK|Km|Ratio|Probability)$/;

/** Numbers that have no unit: counts, numbers of a table, and ratios that have a name of their own. */
const WITHOUT_UNIT: ReadonlySet<string> = new Set([
  ...['cylinders', 'count', 'steps', 'turns', 'leanest', 'richest', 'weakest', 'worst'],
  ...['dash', 'hoseDash', 'gaugeNumber', 'hotGrade', 'coldGrade', 'viscosityIndex'],
  ...['duty', 'dutyLimit', 'probability', 'phi', 'nutFactor', 'reynolds', 'frictionFactor'],
  ...['lambda', 'targetLambda', 'lambdaUnchanged'],
  ...['afr', 'fuelAfr', 'gaugeAfr', 'stoichiometricAfr'],
  // a sensor reads what its owner says, in `readingUnit`
  ...['reading', 'perVolt', 'atZeroVolt'],
]);

interface Told {
  readonly key: string;
  readonly value: Json;
  /** What stands beside it, the unit of a `value` among it. */
  readonly beside: readonly string[];
}

/** Below these keys stand the crew's own words, each beside what was written down of it. */
const IN_THEIR_WORDS: ReadonlySet<string> = new Set(['facts']);

function told(value: Json | undefined): readonly Told[] {
  if (Array.isArray(value)) return value.flatMap((each: Json) => told(each));
  if (typeof value !== 'object' || value === null) return [];
  const beside = Object.keys(value);
  return Object.entries(value).flatMap(([key, inner]) => [
    { key, value: inner ?? null, beside },
    ...(IN_THEIR_WORDS.has(key) ? [] : told(inner)),
  ]);
}

/** Every example, documents and pictures among them. */
it('names every number of an answer with its unit, in one style', async () => {
  const catalogue = await allCommands();
  const bot = await openCrewBot();
  const examples = examplesOf(catalogue);
  const placed = examples.filter((example) => example.startsWith('/order place'));
  const seen = { keys: 0, numbers: 0 };
  const wrong: string[] = [];
  for (const example of [...placed, ...examples]) {
    const { line, options } = typedExample(catalogue, example);
    const { reply } = await bot.run(line, options);
    if (reply.kind === 'form') continue;
    const { data } = reply;
    const isSum = Array.isArray(data['sources']);
    for (const { key, value, beside } of told(data)) {
      seen.keys += 1;
      if (!/^[a-z][a-zA-Z0-9]*$/.test(key)) wrong.push(`${example}: ${key}`);
      if (typeof value !== 'number' || (!isSum && Number.isInteger(value))) continue;
      seen.numbers += 1;
      if (!WITH_UNIT.test(key) && !WITHOUT_UNIT.has(key) && !beside.includes('unit'))
        wrong.push(`${example}: ${key} is ${value} of what?`);
    }
  }
  expect(seen.keys).toBeGreaterThan(300);
  expect(seen.numbers).toBeGreaterThan(150);
  expect(wrong).toEqual([]);
}, 30_000);
