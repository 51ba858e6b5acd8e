import { createInterface } from 'node:readline';
import { startChargehand } from '../../src/chargehand.ts';
import { clockAt, systemTimer } from '../../src/core/clock.ts';
import { openLog } from '../../src/log.ts';

/**
 * The whole bot as a process of its own, to be killed: it works on somebody else's channel and looks at the reminders
 * when told the time. Each line in is an instant in milliseconds, each line out says that this look is over.
 */
const [api = '', token = '', folder = '', nowMs = '0'] = process.argv.slice(2);
const clock = clockAt(Number(nowMs));
const chargehand = await startChargehand({
  token,
  api,
  shelf: { folder },
  clock,
  timer: systemTimer,
  log: openLog((line) => void process.stderr.write(line), [token]),
  onLost: (why) => {
    throw new Error(why);
  },
});
process.stdout.write('ready\n');
for await (const line of createInterface({ input: process.stdin })) {
  clock.set(Number(line));
  await chargehand.tick();
  process.stdout.write(`looked ${line}\n`);
}
