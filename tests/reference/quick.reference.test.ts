import { describe, expect, it } from 'vitest';
import lines from '../../data/reference/phrases/quick.json' with { type: 'json' };
import more from '../../data/reference/phrases/quick-more.json' with { type: 'json' };
import third from '../../data/reference/phrases/quick-third.json' with { type: 'json' };
import { instantOf } from '../../src/core/time.ts';
import { openCrewBot } from '../support/bot.ts';
import { type QuickLine, quickLines, scoreQuick } from '../support/score-quick.ts';

/** What may be missed, as a share: such a line is asked about or left alone, never answered wrongly. */
const MAY_MISS = 0.02;

/** Our own collections and conventions (data/reference/phrases/quick.md); values from the exact definitions. */
describe.each([
  { collection: 'quick.json', all: quickLines(lines), count: 160 },
  { collection: 'quick-more.json', all: quickLines(more), count: 284 },
  { collection: 'quick-third.json', all: quickLines(third), count: 330 },
])('$collection', async ({ all, count }) => {
  const bot = await openCrewBot();
  const scoreOf = async (line: QuickLine) => {
    const [day = '', time = ''] = line.now.split('T');
    bot.clock.set(instantOf(day, time, 'Europe/London'));
    const result = await bot.run('ask', { text: line.text === '' ? ' ' : line.text });
    return { ...line, shown: line.text.slice(0, 40), ...scoreQuick(line, result) };
  };
  const scored: Awaited<ReturnType<typeof scoreOf>>[] = [];
  for (const line of all) scored.push(await scoreOf(line));

  it(`has the ${count} lines, each once`, () => {
    expect(all).toHaveLength(count);
    expect(new Set(all.map(({ text }) => text)).size).toBe(count);
  });

  it.each(scored)('$id "$shown" is not answered wrongly: $why', ({ score, why }) => {
    expect(score, why).not.toBe('silently wrong');
  });

  it.each(scored.filter(({ verdict }) => verdict === 'none'))(
    '$id "$shown" is left alone',
    ({ score, why }) => {
      expect(score, why).toBe('as meant');
    },
  );

  it('is taken as meant, but for one in fifty', () => {
    const missed = scored
      .filter(({ score }) => score === 'missed')
      .map(({ id, text, why }) => `${id} ${text}: ${why}`);
    expect(missed.length, missed.join('\n')).toBeLessThanOrEqual(count * MAY_MISS);
  });

  it('breaks nothing on the way', () => {
    expect(bot.reported).toEqual([]);
  });
});
