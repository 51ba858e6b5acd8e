import type { LocalChannel } from '../../src/channel/contract.ts';
import { type Chargehand, startChargehand } from '../../src/chargehand.ts';
import { openLog } from '../../src/log.ts';
import type { HandClock } from './channel.ts';

/** Starts a bot on a channel and a folder of records that may have had one before; any fault it logs is thrown. */
export async function botOn(channel: LocalChannel, clock: HandClock, folder: string): Promise<Chargehand> {
  const chargehand = await startChargehand({
    token: channel.token,
    api: channel.apiUrl,
    shelf: { folder },
    clock,
    timer: clock,
    log: openLog(
      (line) => {
        throw new Error(line);
      },
      [channel.token],
    ),
    onLost: (why) => {
      throw new Error(why);
    },
  });
  await channel.ready();
  return chargehand;
}
