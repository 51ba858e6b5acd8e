import { describe, expect, it } from 'vitest';
import type { Result } from '../../../src/bot/request.ts';
import { allCommands, openCrewBot } from '../../support/bot.ts';
import { examplesOf, typedExample } from '../../support/typed-example.ts';

/** How a measurement is taken or a model made: there is no number in it to put another for. */
const NOT_A_NUMBER: readonly string[] = [
  ...['/air altitude', '/battery', '/brake', '/coolant mix', '/engine piston', '/engine volumes'],
  ...[
    '/injector dead',
    '/oil grade',
    '/sensor trigger',
    '/torque change',
    '/torque pattern',
    '/torque wrench',
  ],
];

/** The platform's forms hold as many fields. */
const MOST_FIELDS = 5;

const catalogue = await allCommands();
const bot = await openCrewBot();
const asked = await Promise.all(
  examplesOf(catalogue).map(async (example) => {
    const { line, options } = typedExample(catalogue, example);
    const [name = '', sub = null] = line.split(' ');
    return {
      example,
      assumes: catalogue.runnable(name, sub)?.assumes ?? [],
      result: await bot.run(line, options),
    };
  }),
);

function assumptionsIn({ reply }: Result): readonly unknown[] {
  const listed = reply.kind === 'answer' ? reply.data['assumptions'] : undefined;
  return Array.isArray(listed) ? listed : [];
}

describe('what a sum assumes', () => {
  it('can be changed by a button wherever there is a number in it', () => {
    const fixed = asked.filter(
      ({ example, assumes, result }) =>
        assumptionsIn(result).length > 0 &&
        assumes.length === 0 &&
        !NOT_A_NUMBER.some((line) => example.startsWith(line)),
    );
    expect(asked.filter(({ result }) => assumptionsIn(result).length > 0).length).toBeGreaterThan(45);
    expect(fixed.map(({ example }) => example)).toEqual([]);
  });

  it('is asked in a form that has room for all of it', () => {
    const long = asked.filter(({ assumes }) => assumes.length > MOST_FIELDS);
    expect(long.map(({ example, assumes }) => `${example}: ${assumes.join()}`)).toEqual([]);
  });
});
