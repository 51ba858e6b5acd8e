import { readdirSync, readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { readActionRef, writeActionRef } from '../../../src/bot/action-ref.ts';
import type { Catalogue } from '../../../src/bot/catalogue.ts';
import { isRunnable } from '../../../src/bot/command.ts';
import type { OptionSpec } from '../../../src/bot/options.ts';
import type { Result } from '../../../src/bot/request.ts';
import type { ActionRef } from '../../../src/core/reply.ts';
import { instantOf } from '../../../src/core/time.ts';
import { cardOf } from '../../../src/discord/card.ts';
import { modalOf } from '../../../src/discord/modal.ts';
import { registrationOf } from '../../../src/discord/registration.ts';
import { writeRecordFile } from '../../../src/exchange/record-file.ts';
import { allCommands, type CrewBot, cardIn, MONDAY, openCrewBot, TEAM } from '../../support/bot.ts';
import { filesOf, strangeLog } from '../../support/log-files.ts';
import { readingReplies } from '../../support/reading-replies.ts';
import { examplesOf, typedExample } from '../../support/typed-example.ts';

const root = new URL('../../../', import.meta.url);
const names = readdirSync(new URL('commands/', root)).map((file) => file.replace(/\.ts$/, ''));

let catalogue: Catalogue;
beforeAll(async () => {
  catalogue = await allCommands();
});

/** Names, descriptions and choice values of one command, all nested ones included. */
function budgetOf(part: { readonly [key: string]: unknown }): number {
  const own = ['name', 'description', 'value'].map((key) => part[key]);
  const nested = ['options', 'choices'].flatMap((key) => part[key] ?? []);
  const texts = own.filter((text) => typeof text === 'string').reduce((sum, text) => sum + text.length, 0);
  // what stands in these two lists is made of the same parts
  return texts + (nested as (typeof part)[]).reduce((sum, inner) => sum + budgetOf(inner), 0);
}

/** Limits: developer documentation of the platform, application commands, "naming" and "structure". */
describe.each(names)('/%s', (name) => {
  const entry = () => {
    const found = catalogue.find(name);
    if (!found) throw new Error(`${name} was not loaded`);
    return found;
  };
  const optionLists = (): readonly (readonly OptionSpec[])[] => [
    entry().options,
    ...entry().subcommands.map(({ options }) => options),
  ];

  it('has names of 1 to 32 small letters, digits and dashes', () => {
    const all = [
      name,
      ...entry().subcommands.map((sub) => sub.name),
      ...optionLists()
        .flat()
        .map((one) => one.name),
    ];
    for (const one of all) expect(one).toMatch(/^[a-z0-9_-]{1,32}$/);
  });

  it('describes itself in 1 to 100 characters', () => {
    const all = [entry(), ...entry().subcommands, ...optionLists().flat()];
    for (const { description } of all) {
      expect(description.length, description).toBeGreaterThan(0);
      expect(description.length, description).toBeLessThanOrEqual(100);
    }
  });

  it('has at most 25 subcommands, options and choices, each name once', () => {
    expect(entry().subcommands.length).toBeLessThanOrEqual(25);
    for (const options of optionLists()) {
      expect(options.length).toBeLessThanOrEqual(25);
      expect(new Set(options.map((one) => one.name)).size).toBe(options.length);
      for (const { choices } of options) expect(choices.length).toBeLessThanOrEqual(25);
    }
  });

  it('asks for what it must have first', () => {
    for (const options of optionLists()) {
      const must = options.map(({ required }) => required);
      expect(must.toSorted((a, b) => Number(b) - Number(a))).toEqual(must);
    }
  });

  it('keeps within 8000 characters as it is registered', () => {
    const part = registrationOf(catalogue).find((one) => one.name === name);
    const budget = budgetOf({ ...part });
    expect(budget).toBeGreaterThan(name.length);
    expect(budget).toBeLessThanOrEqual(8_000);
  });

  it('offers suggestions only for options it has, and never beside fixed choices', () => {
    const { does } = entry().command;
    const runnables = isRunnable(does) ? [does] : Object.values(does);
    for (const [index, runnable] of runnables.entries()) {
      const options = entry().subcommands[index]?.options ?? entry().options;
      for (const one of Object.keys(runnable.suggest))
        expect(options.map((option) => option.name)).toContain(one);
      for (const { choices, suggests } of options) expect(choices.length > 0 && suggests).toBe(false);
    }
  });

  it('has an example', () => {
    expect(examplesOf(catalogue).some((example) => example.startsWith(`/${name}`))).toBe(true);
  });

  it('is in the README', () => {
    expect(readFileSync(new URL('README.md', root), 'utf8')).toContain(`/${name}`);
  });
});

/** Every reference that a reply contains, buttons, menus and forms alike. */
function refsIn({ reply }: Result): readonly ActionRef[] {
  if (reply.kind === 'form') return [reply.does];
  const buttons = [...(reply.buttons ?? []), ...(reply.items ?? []).flatMap((item) => item.buttons ?? [])];
  return [...buttons.map(({ does }) => does), ...(reply.menu ? [reply.menu.does] : [])];
}

/** What the dispatcher does without any command. */
const OF_THE_BOT_ITSELF: ReadonlySet<string> = new Set(['draft/choose', 'again/form', 'again/run']);

function expectLeadsSomewhere(result: Result): void {
  for (const ref of refsIn(result)) {
    const read = readActionRef(writeActionRef(ref));
    expect(read).not.toBeNull();
    const known = catalogue.find(ref.command)?.command.actions[ref.action];
    expect(
      known !== undefined || OF_THE_BOT_ITSELF.has(`${ref.command}/${ref.action}`),
      `${ref.command}/${ref.action}`,
    ).toBe(true);
  }
  // laying it out checks the platform's own lengths as well
  if (result.reply.kind === 'form') expect(modalOf(result.reply).custom_id.length).toBeLessThanOrEqual(100);
  else expect(cardOf(result.reply).components.length).toBeGreaterThan(0);
}

describe('every example', () => {
  it.each([0, 1, 2, 3, 4, 5, 6])(
    'works as it stands in a fresh team, %i days after a Monday',
    async (days) => {
      const bot = await openCrewBot();
      bot.clock.set(MONDAY + days * 24 * 3_600_000);
      const placed = examplesOf(catalogue).filter((example) => example.startsWith('/order place'));
      const rest = examplesOf(catalogue).filter((example) => !placed.includes(example));
      expect(placed).toHaveLength(1);
      expect(rest.length).toBeGreaterThan(7);
      for (const example of [...placed, ...rest]) {
        // what has all come is ordered once more, for the next example to act on
        const { orders } = cardIn(await bot.run('order list')).data;
        const awaited = JSON.stringify(orders).includes('"what":"head gasket"');
        if (!awaited && example !== placed[0]) await run(bot, placed[0] ?? '');
        const result = await run(bot, example);
        expect(result.ok, `${example}: ${cardIn(result).result}`).toBe(true);
        expectLeadsSomewhere(result);
      }
      expect(bot.reported).toEqual([]);
    },
  );
});

function run(bot: CrewBot, example: string): Promise<Result> {
  const { line, options } = typedExample(catalogue, example);
  return bot.run(line, options);
}

/** A parcel, a part here, one fitted and one missing, a supplier that is shut: a card with each of their buttons. */
async function partsAndSuppliers(bot: CrewBot): Promise<readonly Result[]> {
  const lines = Array.from({ length: 13 }, (_, index) => `stud ${'abcdefghijklm'[index]} x2 3.00`).join('; ');
  const parcel = await bot.run('order several', { lines, supplier: 'Pellgate', due: '2026-12-04' });
  for (const name of ['block', 'pin', 'plug']) await bot.run('part add', { name, needed: 2 });
  await bot.run('part shelf', { part: 'pin', quantity: 2 });
  await bot.run('part fitted', { part: 'pin', quantity: 1 });
  const shut = { supplier: 'Pellgate', from: '21 Dec', to: '31 Dec' };
  for (let lead = 1; lead <= 13; lead++) {
    await bot.run('supplier set', { supplier: `Tarn ${lead} ${'x'.repeat(lead * 3)}`, lead });
  }
  return [
    parcel,
    await bot.run('order show', { order: 'stud b' }),
    await bot.run('order list'),
    await bot.run('order several'),
    await bot.run('part list'),
    await bot.run('part show', { part: 'pin' }),
    await bot.run('part show', { part: 'plug' }),
    await bot.run('supplier list'),
    await bot.run('supplier shut', shut),
    await bot.run('cost show'),
  ];
}

/** Searches at every point they can be at: a test, a cause, another guide, beyond it, closed, and a list of them. */
async function searches(bot: CrewBot): Promise<readonly Result[]> {
  const begin = (symptom: string): Promise<Result> => bot.run('fault start', { symptom });
  const find = (search: string, result: string): Promise<Result> =>
    bot.run('fault found', { search, result });
  for (const symptom of ['smoke', 'charging', 'wont rev', 'no oil pressure', 'rough idle'])
    await begin(symptom);
  const begun = await begin('no spark');
  const test = await find('smoke', 'blue');
  await begin('boost');
  await find('boost', 'too much');
  const beyond = await find('boost', 'a big hose');
  const toCorrect = { walk: String(cardIn(beyond).data['walk']), finding: 2 };
  const correct = await bot.press(writeActionRef({ command: 'fault', action: 'correct', args: toCorrect }));
  await begin('wont start');
  const another = await find('will not start', 'does not turn');
  await begin('no crank');
  const cause = await find('no crank', 'spins');
  return [test, correct, begun, cause, another, beyond, await bot.run('fault list')];
}

/** Jobs enough for two pages, one with a joint, one done, days away: a card with each of their buttons. */
async function jobsAndDays(bot: CrewBot): Promise<readonly Result[]> {
  await bot.press(writeActionRef({ command: 'job', action: 'take', args: { set: 'assembly', key: '*' } }));
  const joint = await bot.run('job add', { name: 'refit the sump and the cylinder head' });
  return [
    joint,
    await bot.run('job list'),
    await bot.run('now'),
    await bot.run('job from-set', { set: 'bearing failure' }),
    await bot.run('when date'),
    await bot.run('when order-by'),
    await bot.run('when away', { from: '24 Dec', to: '2 Jan' }),
    await bot.run('when away'),
  ];
}

/** Something temporary in every state, cases that lack something, stages with everything open: a card with each of their buttons. */
async function stagesAndFluids(bot: CrewBot): Promise<readonly Result[]> {
  const nothingFilled = await bot.run('ready', { stage: 'fluids' });
  for (const [at, name] of ['sump', 'axle', 'gearbox', 'radiator', 'brakes', 'steering', 'washer'].entries())
    await bot.run('fluid case', { name, grade: `grade ${at + 1}0`, capacity: '5 L' });
  const poured = await bot.run('fluid poured', { what: '2 L into sump' });
  await bot.run('order place', { what: 'grade 10, 5 L can', supplier: 'Norvale', due: '2026-12-04' });
  const bottles = await bot.run('order arrived', { order: 'grade 10' });
  for (const name of 'abcdefg') await bot.run('temporary put', { what: `bung ${name}` });
  const untied = await bot.run('temporary put', { what: 'fuses out, required for cranking' });
  const undone = await bot.run('temporary undone', { measure: 'bung a' });
  for (const said of ['horn sounds', 'doors shut'])
    await bot.run('stage ask', { stage: 'first start', said });
  return [
    nothingFilled,
    poured,
    bottles,
    untied,
    undone,
    await bot.run('fluid list'),
    await bot.run('fluid budget'),
    await bot.run('temporary list'),
    await bot.run('ready', { stage: 'oil pressure' }),
    await bot.run('ready', { stage: 'first start' }),
    await bot.run('stage list'),
    await bot.run('stage show', { stage: 'first start' }),
    await bot.run('stage steps', { stage: 'first start' }),
  ];
}

/** A log whose columns are asked about, and those that were told: a card with each of their buttons. */
async function logsRead(bot: CrewBot): Promise<readonly Result[]> {
  const asked = await bot.run('log fuel', { file: 'odd.csv' });
  await bot.press(
    writeActionRef({ command: 'log', action: 'assign', args: { file: 'odd.csv', lambda: '4' } }),
  );
  return [asked, await bot.run('log columns')];
}

/** A record of another crew, as it is carried in a file. */
async function anotherRecord(): Promise<string> {
  const bot = await openCrewBot();
  await bot.run('build name', { name: 'Van' });
  return writeRecordFile(bot.teams.at(TEAM).whole.read(), { on: '2026-11-23', team: 'Others' });
}

/** The help, a list that is asked for, and two that are shown. */
async function helpAndImports(bot: CrewBot): Promise<readonly Result[]> {
  const rows = Array.from({ length: 12 }, (_, index) => `shim ${'abcdefghijkl'[index]},Norvale,2026-12-04`);
  return [
    await bot.run('help'),
    await bot.run('help', { command: 'order' }),
    await bot.run('import orders'),
    await bot.run('import orders', { lines: ['what,from,due', ...rows].join('\n') }),
    await bot.run('import orders', { lines: 'what,from,due\ncircuit tester,Norvale,2026-12-04' }),
  ];
}

describe('every button, menu and form', () => {
  it('leads to an action there is, followed from reply to reply', { timeout: 60_000 }, async () => {
    const bot = await openCrewBot(
      undefined,
      filesOf({ 'odd.csv': strangeLog(), 'record.json': await anotherRecord() }),
    );
    for (const what of ['gasket', 'ring set', 'pump', 'hose', 'clamp', 'sensor']) {
      await bot.run('order place', { what, supplier: 'Norvale', due: 'tomorrow', quantity: 3 });
    }
    await bot.run('order arrived', { order: 'gasket', quantity: 1, condition: 'wrong' });
    bot.clock.set(instantOf('2026-11-26', '08:31', 'Europe/London'));
    const posted = await bot.teams.tick(bot.clock.nowMs(), {
      send: () => Promise.resolve({ messageId: '1' }),
      find: () => Promise.resolve(undefined),
      edit: () => Promise.resolve(),
    });
    expect(posted).toHaveLength(1);
    const morning = posted.map(({ answer }): Result => ({ ok: true, reply: answer }));
    const queue: Result[] = [
      ...morning,
      await bot.run('order list'),
      await bot.run('order show', { order: '1' }),
      ...(await partsAndSuppliers(bot)),
      ...(await searches(bot)),
      ...(await jobsAndDays(bot)),
      ...(await stagesAndFluids(bot)),
      ...(await logsRead(bot)),
      ...(await readingReplies(bot)),
      ...(await helpAndImports(bot)),
      await bot.run('fitting adapt', { from: 'ORB -6 female', to: 'JIC -8 female' }),
      await bot.run('fitting port', { name: 'oil feed', end: 'ORB -6 female' }),
      await bot.run('ask', { text: 'v8 displacement' }),
    ];
    const followed = new Set<string>();
    const follow = async (queue: Result[]): Promise<void> => {
      for (let result = queue.shift(); result; result = queue.shift()) {
        expectLeadsSomewhere(result);
        const { reply } = result;
        const fields: Record<string, string> =
          reply.kind === 'form'
            ? {
                quantity: '1',
                condition: 'good',
                due: 'next Friday',
                outcome: 'replaced',
                what: 'adapter',
                supplier: 'Norvale',
                lines: 'gasket 12.00',
                to: 'Brackendale',
                work: 'line bore',
                name: 'transfer box',
                grade: '75W-90',
                capacity: '1 L',
                volume: '1 L',
              }
            : reply.menu
              ? { [reply.menu.arg]: reply.menu.choices[0]?.value ?? '' }
              : {};
        for (const ref of refsIn(result)) {
          const text = writeActionRef(ref);
          const kind = `${ref.command}/${ref.action} ${Object.keys(ref.args).join()}`;
          if (followed.has(kind)) continue;
          followed.add(kind);
          queue.push(await bot.press(text, fields));
        }
      }
    };
    await follow(queue);
    // last, since it takes everything away
    await follow([await bot.run('import record', { file: 'record.json' })]);
    const actions = catalogue.entries.flatMap(({ name, command }) =>
      Object.keys(command.actions).map((action) => `${name}/${action}`),
    );
    const reached = new Set([...followed].map((kind) => kind.split(' ')[0] ?? ''));
    expect(actions.filter((action) => !reached.has(action))).toEqual([]);
    expect(bot.reported).toEqual([]);
    expect(bot.teams.at(TEAM).ledger.audit()).toEqual([]);
  });
});
