import { readdirSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import type { Database } from 'better-sqlite3';
import { workingDays } from './calendar/working-days.ts';
import type { Clock } from './core/clock.ts';
import type { Json } from './core/json.ts';
import type { Post } from './core/post.ts';
import type { Desk, Desks } from './records/desks.ts';
import { openDraftStore } from './records/drafts/draft-store.ts';
import { openProposalStore } from './records/proposals/proposal-store.ts';
import { BOOKKEEPING, openTeamRecord, STANDING, type TeamRecord } from './records/team-record.ts';
import { type Decider, openDecider } from './reminders/decide.ts';
import { type Delivered, type DeliveryParts, deliver } from './reminders/deliver.ts';
import { type OutboxStore, openOutboxStore } from './reminders/outbox-store.ts';
import { refresh } from './reminders/refresh.ts';
import { isNeeded, wordNotice } from './reminders/word-notice.ts';
import { makeBackup, removeExpired } from './sqlite/backup.ts';
import { type Ledger, openLedger } from './sqlite/ledger.ts';
import { migrations } from './sqlite/migrations/list.ts';
import { openDatabase } from './sqlite/open.ts';
import { openWholeRecord } from './sqlite/whole-record.ts';

/** Where teams' files live: a folder of one file each, or one named file for the only team there is. */
export type Shelf = { readonly folder: string } | { readonly file: string };

interface Team extends Desk {
  readonly decider: Decider;
  readonly outbox: OutboxStore;
  /** Copies the file if anything has been entered since the last copy, an hour apart at the least. */
  backUp(nowMs: number): Promise<void>;
  close(): void;
}

export interface Teams extends Desks {
  /** Decides what is due now for every team and sends what waits, one team's trouble not keeping another's back. */
  tick(nowMs: number, post: Post): Promise<readonly Delivered[]>;
  /** Copies every team's file, checked, into `backups/` beside it; at most hourly, and only when something changed. */
  backUp(nowMs: number): Promise<void>;
  close(): void;
}

export interface TeamsParts {
  readonly shelf: Shelf;
  readonly clock: Clock;
  readonly report: (fault: unknown, during: string) => void;
}

/** Opens the files of every team already known; others are opened, and made, when they first ask for something. */
export function openTeams({ shelf, clock, report }: TeamsParts): Teams {
  const open = new Map<string, Team>();
  const at = (teamId: string): Team => {
    const known = open.get(teamId);
    if (known) return known;
    const team = openTeam(pathOf(shelf, teamId), teamId, clock.nowMs());
    open.set(teamId, team);
    return team;
  };
  for (const teamId of onShelf(shelf)) at(teamId);
  return {
    at,
    async tick(nowMs, post) {
      const sent: Delivered[] = [];
      for (const [teamId, { decider, outbox, record }] of open) {
        try {
          decider.decide(nowMs);
          const parts = { outbox, post, report, ...wordingFrom(record, nowMs) };
          sent.push(...(await deliver(parts, nowMs)));
          await refresh(parts, nowMs);
        } catch (fault) {
          report(fault, `the reminders of team ${teamId}`);
        }
      }
      return sent;
    },
    async backUp(nowMs) {
      for (const [teamId, team] of open) {
        try {
          await team.backUp(nowMs);
        } catch (fault) {
          report(fault, `the backup of team ${teamId}`);
        }
      }
    },
    close() {
      for (const team of open.values()) team.close();
      open.clear();
    },
  };
}

function openTeam(path: string, teamId: string, nowMs: number): Team {
  const db = openDatabase(path, { migrations, nowMs });
  const ledger = openLedger(db, { unrecorded: BOOKKEEPING, standing: STANDING });
  const record = openTeamRecord(db);
  const outbox = openOutboxStore(db, teamId);
  return {
    record,
    ledger,
    outbox,
    drafts: openDraftStore(db),
    proposals: openProposalStore(db),
    whole: openWholeRecord(
      db,
      ledger.tables,
      migrations.map(({ name }) => name),
    ),
    notices: {
      undelivered: () => outbox.dead(),
      find(id) {
        const letter = outbox.find(id);
        // written by ourselves from a notice, so it is JSON
        return letter && (JSON.parse(letter.noticeJson) as Json);
      },
    },
    decider: openDecider(db, record, outbox, workingDays),
    backUp: backUpOf(db, ledger, join(dirname(path), 'backups', basename(path, '.sqlite'))),
    close() {
      db.pragma('wal_checkpoint(TRUNCATE)');
      db.close();
    },
  };
}

const HOUR_MS = 3_600_000;

function backUpOf(db: Database, ledger: Ledger, folder: string): (nowMs: number) => Promise<void> {
  let last = { atMs: Number.NEGATIVE_INFINITY, change: 0 };
  return async (nowMs) => {
    const change = ledger.recent(1)[0]?.id ?? 0;
    if (change === last.change || nowMs - last.atMs < HOUR_MS) return;
    last = { atMs: nowMs, change };
    await makeBackup(db, folder, nowMs);
    removeExpired(folder);
  };
}

/** Words notices from the record as it stands when they are shown. */
function wordingFrom(record: TeamRecord, nowMs: number): Pick<DeliveryParts, 'word' | 'needed'> {
  return {
    needed: (notice) => isNeeded(record, notice, nowMs),
    word: (notice, noticeId) => wordNotice(record, notice, noticeId, nowMs),
  };
}

const ENDING = '.team.sqlite';

const pathOf = (shelf: Shelf, teamId: string): string =>
  'file' in shelf ? shelf.file : join(shelf.folder, `${teamId}${ENDING}`);

function onShelf(shelf: Shelf): readonly string[] {
  if ('file' in shelf) return [];
  return readdirSync(shelf.folder, { withFileTypes: true }).flatMap(({ name }) =>
    name.endsWith(ENDING) ? [name.slice(0, -ENDING.length)] : [],
  );
}
