import { expect } from 'vitest';
import type { JsonObject } from '../../src/core/json.ts';
import type { Answer } from '../../src/core/reply.ts';
import { allCommands, cardIn, openCrewBot, refusalIn } from './bot.ts';
import { typedExample } from './typed-example.ts';

/** A sum typed as a whole line, asked in a private message: no team stands behind it. */
export async function sumOf(line: string): Promise<Answer> {
  const bot = await openCrewBot();
  const { line: command, options } = typedExample(await allCommands(), line);
  const result = await bot.run(command, options, { outside: true });
  expect(bot.reported).toEqual([]);
  expect(result.ok, `${line}: ${cardIn(result).result}`).toBe(true);
  return cardIn(result);
}

/** What is said against a line. */
export async function refusalOf(line: string): Promise<{ readonly code: string; readonly message: string }> {
  const bot = await openCrewBot();
  const { line: command, options } = typedExample(await allCommands(), line);
  const refusal = refusalIn(await bot.run(command, options, { outside: true }));
  expect(bot.reported).toEqual([]);
  return refusal;
}

/** A line, what its answer reads, and numbers of its data to one in ten thousand. */
export interface SumRow {
  readonly line: string;
  readonly result: string;
  readonly data?: Readonly<Record<string, number>>;
}

/** The answer in one line that can be read at arm's length, with its numbers as data. */
export async function expectSum({ line, result, data = {} }: SumRow): Promise<void> {
  const answer = await sumOf(line);
  expect(answer.result).toBe(result);
  expect(answer.result.length).toBeLessThanOrEqual(90);
  for (const [name, value] of Object.entries(data)) {
    const off = Math.abs(numberIn(answer.data, name) - value);
    expect(off, `${name}: not ${value}`).toBeLessThanOrEqual(1e-4 * Math.abs(value));
  }
}

function numberIn(data: JsonObject, name: string): number {
  const value = data[name];
  if (typeof value !== 'number') throw new Error(`no number ${name} in ${JSON.stringify(data)}`);
  return value;
}
