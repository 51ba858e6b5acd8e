import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { catalogueOf } from '../../../src/bot/catalogue.ts';
import { defineCommand } from '../../../src/bot/command.ts';
import { painted } from '../../../src/bot/paint.ts';
import type { Answer, Drawing } from '../../../src/core/reply.ts';
import { threadPicture } from '../../../src/pictures/thread-picture.ts';
import { cardIn, openCrewBot } from '../../support/bot.ts';
import { READ } from '../../support/thread-bands.ts';

const good: Drawing = threadPicture(READ);
const broken: Drawing = { ...good, name: 'broken.png', svg: '<svg' };
const answer = (drawings?: readonly Drawing[]): Answer => ({
  kind: 'answer',
  subject: 'Thread',
  result: 'M22 × 1.5',
  smallPrint: ['Read as 21.90 mm'],
  audience: 'crew',
  data: {},
  ...(drawings === undefined ? {} : { drawings }),
});
const unexpected = (fault: unknown): never => {
  throw new Error('reported', { cause: fault });
};

describe('painting an answer', () => {
  it('leaves one without drawings as it is', async () => {
    const plain = answer();
    expect(await painted(plain, unexpected)).toBe(plain);
  });

  it('turns each drawing into a picture with its description', async () => {
    const reply = await painted(answer([good]), unexpected);
    expect(reply).not.toHaveProperty('drawings');
    expect(reply).toMatchObject({
      pictures: [{ name: 'thread.png', alt: good.alt }],
      smallPrint: ['Read as 21.90 mm'],
    });
  });

  it('lets the answer out without a picture that cannot be painted, says so, and reports the fault once', async () => {
    const faults: unknown[] = [];
    const reply = await painted(answer([broken, good]), (fault) => void faults.push(fault));
    expect(reply).toMatchObject({
      result: 'M22 × 1.5',
      pictures: [{ name: 'thread.png' }],
      smallPrint: ['Read as 21.90 mm', 'The picture could not be painted; the words hold all that it shows.'],
    });
    expect(faults).toHaveLength(1);
    expect(faults[0]).toMatchObject({ message: 'Unsupported image type' });
  });
});

describe('a command that draws', () => {
  const draws = (drawing: Drawing) =>
    openCrewBot(
      catalogueOf(
        new Map([
          [
            'draw',
            defineCommand({ description: 'Draws', input: z.object({}), run: () => answer([drawing]) }),
          ],
        ]),
      ),
    );

  it('is answered with its picture', async () => {
    const bot = await draws(good);
    expect(cardIn(await bot.run('draw')).pictures?.[0]?.png.length).toBeGreaterThan(1_000);
    expect(bot.reported).toEqual([]);
  });

  it('is answered in words when its picture fails, and the keeper is told why', async () => {
    const bot = await draws(broken);
    const result = await bot.run('draw');
    expect(result.ok).toBe(true);
    expect(cardIn(result).result).toBe('M22 × 1.5');
    expect(bot.reported).toMatchObject([{ fault: { message: 'Unsupported image type' }, reference: 'K7Q2' }]);
  });

  it('is answered with the picture of /thread among the rest', async () => {
    const bot = await openCrewBot();
    const { pictures } = cardIn(await bot.run('thread', { size: '21.9 x 1.5', side: 'male' }));
    expect(pictures?.map(({ name, alt }) => [name, alt.slice(0, 9)])).toEqual([['thread.png', 'M22 × 1.5']]);
    const named = cardIn(await bot.run('thread', { size: 'G 1/4' }));
    expect(named.pictures).toBeUndefined();
  });
});
