import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { catalogueOf } from '../../../src/bot/catalogue.ts';
import { action, type Command, defineCommand, subcommand } from '../../../src/bot/command.ts';
import type { Answer } from '../../../src/core/reply.ts';
import { StoreProblem } from '../../../src/core/store-problem.ts';
import { UserError } from '../../../src/core/user-error.ts';
import { type CrewBot, cardIn, openCrewBot, refusalIn, TEAM } from '../../support/bot.ts';

const done = (result: string): Answer => ({
  kind: 'answer',
  subject: 'Test',
  result,
  audience: 'crew',
  data: {},
});

/** Commands that go wrong in every way there is. */
const FAULTY: ReadonlyMap<string, Command> = new Map([
  [
    'faulty',
    defineCommand({
      description: 'Goes wrong on demand',
      subcommands: {
        refuse: subcommand({
          description: 'Says no',
          input: z.object({}),
          run: () => {
            throw new UserError('out-of-range', 'Too far. Try less.');
          },
        }),
        options: subcommand({
          description: 'Wants options',
          input: z.object({
            pitch_mm: z.number().min(0.2).max(8).describe('Pitch'),
            side: z.enum(['male', 'female']).optional().describe('Side'),
            name: z.string().min(1).max(5).optional().describe('Name'),
            count: z.int().optional().describe('Count'),
          }),
          run: ({ pitch_mm }) => done(String(pitch_mm)),
        }),
        bug: subcommand({
          description: 'Has a fault',
          input: z.object({}),
          run: () => {
            throw new TypeError('secret internals', { cause: new Error('the deeper cause') });
          },
        }),
        'bad-row': subcommand({
          description: 'Reads a row that is not as it should be',
          input: z.object({}),
          run: () => done(z.object({ id: z.int() }).parse({ id: 'x' }).id.toFixed()),
        }),
        'bug-after': subcommand({
          description: 'Has a fault after saving',
          input: z.object({}),
          run: (_input, hand) => {
            hand.change((record) => ({ value: record.suppliers.add('Norvale'), said: 'a supplier added' }));
            throw new TypeError('too late');
          },
        }),
        'bug-inside': subcommand({
          description: 'Has a fault while saving',
          input: z.object({}),
          run: (_input, hand) => {
            hand.change((record) => {
              record.suppliers.add('Norvale');
              throw new TypeError('half way');
            });
            return done('saved');
          },
        }),
        disk: subcommand({
          description: 'Finds the disk full',
          input: z.object({}),
          run: () => {
            throw new StoreProblem('full', 'Not saved: the disk is full. Free some space.');
          },
        }),
        where: subcommand({
          description: 'Says where it is',
          input: z.object({}),
          run: (_input, { place }) => done(place.channelName),
        }),
        twice: subcommand({
          description: 'Saves',
          input: z.object({}),
          run: (_input, hand) => {
            const { said } = hand.change((record) => ({
              value: record.suppliers.add('Norvale'),
              said: 'a supplier added',
            }));
            return done(said);
          },
        }),
        slow: subcommand({
          description: 'Answers later',
          input: z.object({}),
          run: async () => {
            await Promise.resolve();
            throw new UserError('not-now', 'Later. Try again.');
          },
        }),
      },
      actions: {
        press: action({
          input: z.object({ order: z.coerce.number().int() }),
          run: ({ order }) => done(`pressed ${order}`),
        }),
      },
    }),
  ],
]);

const openFaulty = (): Promise<CrewBot> => openCrewBot(catalogueOf(FAULTY));

describe('a request that is turned down', () => {
  it('is answered with the words of the refusal, to the asker alone', async () => {
    const bot = await openFaulty();
    const result = await bot.run('faulty refuse');
    expect(refusalIn(result)).toEqual({ code: 'out-of-range', message: 'Too far. Try less.' });
    expect(cardIn(result)).toMatchObject({ result: 'Too far. Try less.', audience: 'asker' });
    expect(bot.reported).toEqual([]);
  });

  it('is answered the same way when the handler takes its time', async () => {
    const bot = await openFaulty();
    expect(refusalIn(await bot.run('faulty slow')).message).toBe('Later. Try again.');
  });

  it.each([
    [{}, 'pitch_mm: is missing'],
    [{ pitch_mm: 'x' }, 'pitch_mm: must be a number'],
    [{ pitch_mm: 0.1 }, 'pitch_mm: must be at least 0.2'],
    [{ pitch_mm: 9 }, 'pitch_mm: must be at most 8'],
    [{ pitch_mm: 1, side: 'left' }, 'side: must be one of male, female'],
    [{ pitch_mm: 1, name: '' }, 'name: nothing was typed'],
    [{ pitch_mm: 1, name: 'too long' }, 'name: must be at most 5 characters'],
    [{ pitch_mm: 1, count: 1.5 }, 'count: must be a whole number'],
    [{ pitch_mm: 0, side: 'left' }, 'pitch_mm: must be at least 0.2. side: must be one of male, female'],
  ])('names the option that does not fit: %j', async (options, said) => {
    const bot = await openFaulty();
    expect(refusalIn(await bot.run('faulty options', options))).toEqual({
      code: 'bad-input',
      message: `${said}. Nothing was changed.`,
    });
    expect(bot.reported).toEqual([]);
  });

  it.each(['faulty nothing', 'faulty', 'gone'])('says so when there is no /%s any more', async (line) => {
    const bot = await openFaulty();
    const { code, message } = refusalIn(await bot.run(line));
    expect(code).toBe('stale-message');
    expect(message).toContain('/help lists them');
  });

  it.each([
    '',
    'nonsense',
    'faulty/gone?order=1',
    'gone/press',
    'faulty/press/../x',
    'draft/choose',
    'draft/choose?id=x&choice=0',
    'draft/choose?id=99&choice=0',
  ])('survives the forged reference %j', async (ref) => {
    const bot = await openFaulty();
    expect(refusalIn(await bot.press(ref)).code).toBe('stale-message');
    expect(bot.reported).toEqual([]);
  });

  it('reads what a button carries like anything typed', async () => {
    const bot = await openFaulty();
    expect(cardIn(await bot.press('faulty/press?order=12')).result).toBe('pressed 12');
    expect(refusalIn(await bot.press('faulty/press?order=x')).message).toContain('order: ');
    expect(cardIn(await bot.press('faulty/press?order=12', { order: '13' })).result).toBe('pressed 13');
  });

  it('outside a server says where the record is', async () => {
    const bot = await openFaulty();
    const { code, message } = refusalIn(await bot.run('faulty where', {}, { outside: true }));
    expect(code).toBe('not-now');
    expect(message).toContain('ask in a channel of its server');
    expect(cardIn(await bot.run('faulty where')).result).toBe('hill-climb');
  });
});

describe('a fault of ours', () => {
  it('is logged with its cause under the reference that people are shown, and its words stay inside', async () => {
    const bot = await openFaulty();
    const result = await bot.run('faulty bug');
    const { code, message } = refusalIn(result);
    expect(code).toBe('outage');
    expect(message).toContain('reference K7Q2');
    expect(message).toContain('Nothing was saved');
    expect(JSON.stringify(result)).not.toContain('secret internals');
    expect(bot.reported).toMatchObject([
      { reference: 'K7Q2', fault: { cause: { message: 'the deeper cause' } } },
    ]);
  });

  it('is not put down to the person when a record is not as it should be', async () => {
    const bot = await openFaulty();
    expect(refusalIn(await bot.run('faulty bad-row')).code).toBe('outage');
    expect(bot.reported).toHaveLength(1);
  });

  it('after saving says that it was saved, and it was', async () => {
    const bot = await openFaulty();
    const { message } = refusalIn(await bot.run('faulty bug-after'));
    expect(message).toContain('What you entered was saved');
    expect(message).not.toContain('Nothing was saved');
    expect(bot.teams.at(TEAM).record.suppliers.all()).toHaveLength(1);
  });

  it('while saving says that nothing was saved, and nothing was', async () => {
    const bot = await openFaulty();
    expect(refusalIn(await bot.run('faulty bug-inside')).message).toContain('Nothing was saved');
    expect(bot.teams.at(TEAM).record.suppliers.all()).toEqual([]);
    expect(bot.teams.at(TEAM).ledger.recent(5)).toEqual([]);
  });

  it('of the disk speaks its own words, with a reference', async () => {
    const bot = await openFaulty();
    expect(refusalIn(await bot.run('faulty disk'))).toEqual({
      code: 'outage',
      message: 'Not saved: the disk is full. Free some space.',
      reference: 'K7Q2',
    });
    expect(bot.reported).toHaveLength(1);
  });

  it('fits what a person reads at the car: 300 characters at most, no stack', async () => {
    const bot = await openFaulty();
    for (const line of ['faulty bug', 'faulty bug-after', 'faulty disk', 'faulty nothing']) {
      const { message } = refusalIn(await bot.run(line));
      expect(message.length).toBeLessThanOrEqual(300);
      expect(message).not.toMatch(/\bat .*:\d+/);
    }
  });
});

describe('the same interaction delivered twice', () => {
  it('takes effect once and says what it did', async () => {
    const bot = await openFaulty();
    const first = cardIn(await bot.run('faulty twice', {}, { id: 'one' }));
    const second = await bot.run('faulty twice', {}, { id: 'one' });
    expect(first.result).toBe('a supplier added');
    expect(second.ok).toBe(true);
    expect(cardIn(second)).toMatchObject({
      result: 'That was saved the first time: a supplier added.',
      audience: 'asker',
      data: { alreadySaved: true },
    });
    expect(bot.teams.at(TEAM).record.suppliers.all()).toHaveLength(1);
  });
});
