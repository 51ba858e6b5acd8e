import type { Database } from 'better-sqlite3';
import { z } from 'zod';
import type { Away, WorkWeek } from './week.ts';

const WeekRow = z
  .object({ minutes: z.string(), people: z.int() })
  .transform(
    ({ minutes, people }): WorkWeek => ({ minutes: z.array(z.number()).parse(JSON.parse(minutes)), people }),
  );
const AwayRow = z
  .object({ from_on: z.string(), to_on: z.string() })
  .transform(({ from_on: from, to_on: to }): Away => ({ from, to }));

export interface WeekStore {
  /** Undefined until the crew has said when it works. */
  find(buildId: number): WorkWeek | undefined;
  set(buildId: number, week: WorkWeek): void;
  /** Days away, the earliest first. */
  away(buildId: number): readonly Away[];
  goAway(buildId: number, away: Away): void;
  comeBack(buildId: number, away: Away): void;
}

export function openWeekStore(db: Database): WeekStore {
  const find = db.prepare('SELECT minutes, people FROM work_week WHERE build_id = ?');
  const set = db.prepare(
    `INSERT INTO work_week (build_id, minutes, people) VALUES (@buildId, @minutes, @people)
     ON CONFLICT (build_id) DO UPDATE SET minutes = @minutes, people = @people`,
  );
  const away = db.prepare('SELECT from_on, to_on FROM days_away WHERE build_id = ? ORDER BY from_on, to_on');
  const goAway = db.prepare(
    'INSERT INTO days_away (build_id, from_on, to_on) VALUES (@buildId, @from, @to) ON CONFLICT DO NOTHING',
  );
  const comeBack = db.prepare(
    'DELETE FROM days_away WHERE build_id = @buildId AND from_on = @from AND to_on = @to',
  );
  return {
    find: (buildId) => WeekRow.optional().parse(find.get(buildId)),
    set: (buildId, { minutes, people }) =>
      void set.run({ buildId, minutes: JSON.stringify(minutes), people }),
    away: (buildId) => z.array(AwayRow).parse(away.all(buildId)),
    goAway: (buildId, { from, to }) => void goAway.run({ buildId, from, to }),
    comeBack: (buildId, { from, to }) => void comeBack.run({ buildId, from, to }),
  };
}
