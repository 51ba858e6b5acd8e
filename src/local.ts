import type { Result } from './bot/request.ts';
import type { LocalChannel } from './channel/contract.ts';
import { openLocalChannel } from './channel/open.ts';
import { type Chargehand, startChargehand } from './chargehand.ts';
import type { Clock, Timer } from './core/clock.ts';
import type { Heard } from './discord/hear.ts';
import { openLog } from './log.ts';
import { holdWriterLock } from './sqlite/writer-lock.ts';
import { thisProcess } from './this-process.ts';

export interface LocalParts {
  /** The crew's record; the channel keeps its messages in a file beside it. */
  readonly file: string;
  readonly clock: Clock;
  readonly timer: Timer;
  readonly host?: string;
  readonly port?: number;
  readonly guildName: string;
  readonly channels: readonly string[];
  readonly crew: readonly string[];
  readonly starters?: readonly string[];
  readonly writeLog: (line: string) => void;
  readonly onLost: (why: string) => void;
  readonly onResult?: (interactionId: string, result: Result) => void;
  readonly onHeard?: (messageId: string, heard: Heard | null) => void;
}

export interface Local {
  readonly channel: LocalChannel;
  readonly chargehand: Chargehand;
  stop(): Promise<void>;
}

/**
 * Opens the local channel and puts the bot into it; the two meet only on the wire.
 *
 * @throws StoreProblem when another process works with this file, saying which.
 */
export async function openLocal(parts: LocalParts): Promise<Local> {
  const {
    file,
    clock,
    timer,
    host,
    port,
    guildName,
    channels,
    crew,
    starters,
    writeLog,
    onLost,
    onResult,
    onHeard,
  } = parts;
  const lock = holdWriterLock(`${file}.lock`, thisProcess(clock.nowMs()));
  const channel = await openLocalChannel({
    clock: { nowMs: () => clock.nowMs(), after: (ms, task) => timer.after(ms, task) },
    file: channelFileOf(file),
    guildName,
    channels,
    crew,
    privilegedIntents: ['content'],
    ...(starters === undefined ? {} : { starters }),
    ...(host === undefined ? {} : { host }),
    ...(port === undefined ? {} : { port }),
  });
  try {
    const chargehand = await startChargehand({
      token: channel.token,
      api: channel.apiUrl,
      shelf: { file },
      clock,
      timer,
      log: openLog(writeLog, [channel.token]),
      onLost,
      // on this machine nobody else is in the channel: a line without a slash may be a question as it stands
      hears: 'alone',
      ...(onResult === undefined ? {} : { onResult }),
      ...(onHeard === undefined ? {} : { onHeard }),
    });
    await channel.ready();
    return {
      channel,
      chargehand,
      async stop() {
        await chargehand.stop();
        await channel.close();
        lock.release();
      },
    };
  } catch (error) {
    await channel.close();
    lock.release();
    throw error;
  }
}

/** `crew.sqlite` → `crew.channel.sqlite`: so the same channel, and the same build, are found again next time. */
const channelFileOf = (file: string): string => `${file.replace(/\.(sqlite3?|db)$/, '')}.channel.sqlite`;
