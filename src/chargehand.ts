import { randomInt } from 'node:crypto';
import { catalogueOf } from './bot/catalogue.ts';
import { makeDispatcher } from './bot/dispatch.ts';
import { loadCommands } from './bot/load-commands.ts';
import type { Result } from './bot/request.ts';
import type { Clock, Timer } from './core/clock.ts';
import { connect } from './discord/connect.ts';
import { openFileShelf } from './discord/file-shelf.ts';
import type { Heard, Hears } from './discord/hear.ts';
import type { Log } from './log.ts';
import type { Delivered } from './reminders/deliver.ts';
import { openTeams, type Shelf, type Teams } from './teams.ts';

/** Everything the bot is made of that comes from outside it. */
export interface ChargehandParts {
  readonly token: string;
  /** Base address of the bot API; absent for the platform itself. */
  readonly api?: string;
  readonly shelf: Shelf;
  readonly clock: Clock;
  readonly timer: Timer;
  readonly log: Log;
  /** The connection is lost for good; the process should end and be started again by whoever looks after it. */
  readonly onLost: (why: string) => void;
  readonly onResult?: (interactionId: string, result: Result) => void;
  /** Whose lines are listened to; those to the bot alone unless said otherwise. */
  readonly hears?: Hears;
  readonly onHeard?: (messageId: string, heard: Heard | null) => void;
}

/** The running bot. */
export interface Chargehand {
  readonly teams: Teams;
  /** Lets the reminders look at the records once, as of now or of `asOfMs`; resolves to what was posted. */
  tick(asOfMs?: number): Promise<readonly Delivered[]>;
  stop(): Promise<void>;
}

const COMMANDS = new URL('../commands/', import.meta.url);

/** @throws StoreProblem when records cannot be opened; Error when the platform refuses the token. */
export async function startChargehand(parts: ChargehandParts): Promise<Chargehand> {
  const { token, api, shelf, clock, timer, log, onLost, onResult, onHeard, hears = 'mentions' } = parts;
  const report = (fault: unknown, during: string): void => log.error(fault, during);
  const files = openFileShelf({ timer, ...(api === undefined ? {} : { api }) });
  const catalogue = catalogueOf(await loadCommands(COMMANDS));
  const teams = openTeams({ shelf, clock, report });
  try {
    const dispatcher = makeDispatcher({
      catalogue,
      desks: teams,
      clock,
      files,
      newReference,
      report: (fault, reference, request) => log.error(fault, 'a request failed', { reference, request }),
    });
    const connection = await connect({
      token,
      catalogue,
      dispatcher,
      files,
      hears,
      timer,
      report,
      onLost,
      ...(api === undefined ? {} : { api }),
      ...(onResult === undefined ? {} : { onResult }),
      ...(onHeard === undefined ? {} : { onHeard }),
    });
    try {
      for (const teamId of connection.teams()) teams.at(teamId);
    } catch (error) {
      await connection.close();
      throw error;
    }
    return {
      teams,
      tick: (asOfMs = clock.nowMs()) => teams.tick(asOfMs, connection.post),
      async stop() {
        await connection.close();
        teams.close();
      },
    };
  } catch (error) {
    teams.close();
    throw error;
  }
}

/** Letters and digits that cannot be taken for one another when read out (Crockford's base 32). */
const READABLE = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';

const newReference = (): string =>
  Array.from({ length: 4 }, () => READABLE[randomInt(READABLE.length)]).join('');
