import type { Database } from 'better-sqlite3';
import { z } from 'zod';
import type { Day } from '../../core/time.ts';

/** What one unit of a currency is worth in another, as somebody said on a day. ISO 4217 codes. */
export interface Rate {
  readonly from: string;
  readonly to: string;
  readonly rate: number;
  readonly saidOn: Day;
  readonly byName: string;
}

const RateRow = z
  .object({
    from_currency: z.string(),
    to_currency: z.string(),
    rate: z.number(),
    said_on: z.string(),
    by_name: z.string(),
  })
  .transform(
    ({ from_currency: from, to_currency: to, rate, said_on: saidOn, by_name: byName }): Rate => ({
      from,
      to,
      rate,
      saidOn,
      byName,
    }),
  );

export interface RateStore {
  /** Gives a rate, or a new one for the same two currencies. */
  give(rate: Rate): void;
  forget(from: string, to: string): void;
  all(): readonly Rate[];
}

export function openRateStore(db: Database): RateStore {
  const give = db.prepare(
    `INSERT INTO rate (from_currency, to_currency, rate, said_on, by_name)
     VALUES (@from, @to, @rate, @saidOn, @byName)
     ON CONFLICT (from_currency, to_currency)
       DO UPDATE SET rate = excluded.rate, said_on = excluded.said_on, by_name = excluded.by_name`,
  );
  const forget = db.prepare('DELETE FROM rate WHERE from_currency = ? AND to_currency = ?');
  const all = db.prepare('SELECT * FROM rate ORDER BY to_currency, from_currency');
  return {
    give: (rate) => void give.run(rate),
    forget: (from, to) => void forget.run(from, to),
    all: () => z.array(RateRow).parse(all.all()),
  };
}
