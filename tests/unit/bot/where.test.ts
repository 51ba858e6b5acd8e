import { describe, expect, it } from 'vitest';
import { isRunnable, type Runnable } from '../../../src/bot/command.ts';
import { worksAnywhere } from '../../../src/bot/where.ts';
import { registrationOf } from '../../../src/discord/registration.ts';
import { allCommands, openCrewBot } from '../../support/bot.ts';
import { typedExample } from '../../support/typed-example.ts';

const catalogue = await allCommands();
const names = catalogue.entries.map(({ name }) => name);

/** Every part of a command that can be tried: by its example, or because it asks for nothing. */
function partsOf(name: string): readonly (readonly [line: string, Runnable])[] {
  const does = catalogue.find(name)?.command.does ?? {};
  if (isRunnable(does)) return [[name, does]];
  return Object.entries(does).map(([sub, runnable]) => [`${name} ${sub}`, runnable]);
}

/** Whether a part answers outside a crew; undefined where it cannot be tried. */
async function answersAlone([line, { example }]: readonly [string, Runnable]): Promise<boolean | undefined> {
  const bot = await openCrewBot();
  const options = example === undefined ? {} : typedExample(catalogue, example).options;
  const result = await bot.run(line, options, { outside: true });
  // a form has not looked at anything yet
  if (result.ok) return result.reply.kind === 'form' ? undefined : true;
  if (result.error.code === 'which-one') return true;
  return result.error.code === 'not-now' ? false : undefined;
}

describe('where a command can be used', () => {
  it('is known of more than one command of either sort', () => {
    expect(names.filter(worksAnywhere).length).toBeGreaterThan(10);
    expect(names.filter((name) => !worksAnywhere(name)).length).toBeGreaterThan(3);
  });

  it.each(names)('/%s is offered to anybody when a part of it answers without a crew', async (name) => {
    const tried = await Promise.all(partsOf(name).map(answersAlone));
    const answers = tried.includes(true);
    // a part that cannot be tried here, for want of an example or a file, leaves the choice open
    if (answers || !tried.includes(undefined))
      expect(answers, `${name} in src/bot/where.ts: ${tried.join()}`).toBe(worksAnywhere(name));
  });

  it.each(registrationOf(catalogue))(
    '/$name is registered so',
    ({ name, contexts, integration_types: by }) => {
      expect({ contexts, by }).toEqual(
        worksAnywhere(name) ? { contexts: [0, 1, 2], by: [0, 1] } : { contexts: [0], by: [0] },
      );
    },
  );
});
