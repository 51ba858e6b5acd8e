import { schedule } from 'node-cron';

/** Every quarter of a minute. It only wakes us: what is due is read from the records, so a missed tick loses nothing. */
const EVERY = '*/15 * * * * *';

/** Calls `tick` until stopped; never twice at once. `stop` waits for a tick under way. */
export function startTicker(tick: () => Promise<void>): { stop(): Promise<void> } {
  let running: Promise<void> = Promise.resolve();
  const task = schedule(
    EVERY,
    () => {
      running = tick();
      return running;
    },
    { noOverlap: true, timezone: 'Etc/UTC' },
  );
  return {
    async stop() {
      await task.destroy();
      await running;
    },
  };
}
