import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import lines from '../../data/reference/phrases/quick-record.json' with { type: 'json' };
import { recordRun } from '../../src/bot/quick-record.ts';
import { readRecordQuestion } from '../../src/phrases/quick/read-record.ts';
import { cardIn, openCrewBot } from '../support/bot.ts';

const Line = z.object({
  id: z.string(),
  text: z.string(),
  expect: z.union([
    z.strictObject({
      asks: z.string(),
      options: z.record(z.string(), z.union([z.string(), z.number()])).default({}),
    }),
    z.strictObject({ symptom: z.string() }),
    z.strictObject({ reading: z.string(), sum: z.string().optional() }),
    z.strictObject({ talk: z.literal(true) }),
  ]),
  overheard: z.enum(['answer', 'silence']),
  why: z.string(),
});
const all = z.array(Line).parse(lines);

/** Our own collection and conventions (data/reference/phrases/quick.md). */
describe('quick-record.json', async () => {
  const bot = await openCrewBot();
  let heard = 0;
  const hear = (text: string, toBot: boolean, alone?: true) => {
    heard += 1;
    return bot.hear({
      id: `message-${heard}`,
      who: { id: 'ada', name: 'Ada' },
      place: { teamId: '500', channelId: '600', channelName: 'hill-climb' },
      text,
      toBot,
      files: [],
      ...(alone === undefined ? {} : { alone }),
    });
  };
  const logs = (text: string) => ({
    label: 'Log this reading',
    does: { command: 'again', action: 'run', args: { _run: 'reading log', reading: text } },
  });

  it('has its lines, each once, and half of them are talk', () => {
    expect(all.length).toBeGreaterThanOrEqual(80);
    expect(new Set(all.map(({ text }) => text)).size).toBe(all.length);
    expect(all.filter(({ expect: meant }) => 'talk' in meant).length).toBeGreaterThanOrEqual(
      Math.floor(all.length / 2),
    );
  });

  it.each(all)(
    '$id "$text" is taken as meant by whom it was said to: $why',
    async ({ text, expect: meant }) => {
      const result = await hear(text, true);
      if (result === null) throw new Error('nothing was said');
      const { data, buttons = [] } = cardIn(result);
      if ('asks' in meant) {
        const question = readRecordQuestion(text);
        if (question === undefined) throw new Error('it is not read as a question to the record');
        const { command, subcommand, options } = recordRun(question);
        expect(subcommand === null ? command : `${command} ${subcommand}`).toBe(meant.asks);
        expect(options).toEqual(meant.options);
        // a record with nothing in it may say so, but never that there was nothing to be asked
        expect(data['kind']).not.toBe('none');
      } else if ('symptom' in meant) {
        expect(result.ok).toBe(false);
        expect(data['kind']).toBe('symptom');
        expect(buttons.map(({ does }) => does)).toContainEqual({
          command: 'fault',
          action: 'start',
          args: { symptom: meant.symptom },
        });
      } else if ('reading' in meant) {
        expect(data['kind']).toBe(meant.sum ?? 'reading-said');
        expect(buttons).toContainEqual(logs(text));
      } else {
        expect(data['kind']).toBe('none');
      }
    },
  );

  it.each(all)('$id "$text", overheard: $overheard', async ({ text, overheard }) => {
    expect((await hear(text, false)) === null ? 'silence' : 'answer').toBe(overheard);
  });

  it.each(all)('$id "$text", where nobody else is in the channel', async ({ text, expect: meant }) => {
    expect((await hear(text, false, true)) === null).toBe('talk' in meant);
  });

  it('breaks nothing on the way', () => {
    expect(bot.reported).toEqual([]);
  });
});
