import type { Result } from '../../src/bot/request.ts';
import { instantOf } from '../../src/core/time.ts';
import type { CrewBot } from './bot.ts';

/** Replies of /reading and /runin that between them bear every button and form the two have. */
export async function readingReplies(bot: CrewBot): Promise<readonly Result[]> {
  const log = (reading: string): Promise<Result> => bot.run('reading log', { reading });
  for (let at = 0; at < 10; at += 1) {
    await log(`coolant ${80 + at}C idle`);
    await bot.run('reading limits', {
      kind: 'oil pressure',
      limit: `at least ${at + 1} bar at ${at + 1}000 rpm`,
    });
  }
  await log('odo 1000 km');
  const begun = await bot.run('runin plan', { choose: 'road by distance' });
  bot.clock.set(
    bot.clock.nowMs() + (instantOf('2026-12-02', '00:00', 'UTC') - instantOf('2026-12-01', '00:00', 'UTC')),
  );
  await log('odo 1040 km');
  return [
    begun,
    await bot.run('reading form'),
    await log('oil 4.2 bar at 2500 rpm 92C'),
    await bot.run('reading list'),
    await bot.run('reading limits'),
    await bot.run('runin plan'),
    await bot.run('runin today'),
  ];
}
