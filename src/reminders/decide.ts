import type { Database } from 'better-sqlite3';
import type { WorkingDays } from '../core/working-days.ts';
import type { TeamRecord } from '../records/team-record.ts';
import { dueAlerts } from './alert.ts';
import { dueMorning } from './morning.ts';
import type { OutboxStore } from './outbox-store.ts';
import { remarksDue } from './remarks.ts';
import { dueRunIn } from './run-in-due.ts';

export interface Decider {
  /** Writes down everything that is due at `nowMs`, all of it or nothing; a second call at the same time adds nothing. */
  decide(nowMs: number): void;
}

export function openDecider(
  db: Database,
  record: TeamRecord,
  outbox: OutboxStore,
  calendarOf: (country: string) => WorkingDays,
): Decider {
  const markMorning = db.prepare(
    `INSERT INTO morning (build_id, day) VALUES (@buildId, @day)
     ON CONFLICT (build_id) DO UPDATE SET day = excluded.day`,
  );
  const decide = db.transaction((nowMs: number) => {
    const settings = record.settings.read();
    const calendar = calendarOf(settings.country);
    for (const build of record.builds.all()) {
      const orders = record.orders.ofBuild(build.id);
      const due = dueMorning(build, orders, settings, calendar, nowMs, (day) =>
        remarksDue(record, build, day),
      );
      for (const alert of dueAlerts(record, build, nowMs)) outbox.put(alert, nowMs);
      for (const step of dueRunIn(record, build, settings, calendar, nowMs)) outbox.put(step, nowMs);
      if (due === null) continue;
      outbox.put(due, nowMs);
      markMorning.run({ buildId: build.id, day: due.notice.day });
    }
  });
  return { decide: (nowMs) => decide.immediate(nowMs) };
}
