import type { Database } from 'better-sqlite3';
import { z } from 'zod';
import type { Build, BuildFact } from './build.ts';

const BuildRow = z
  .object({ id: z.int(), channel_id: z.string(), name: z.string(), last_morning: z.string().nullable() })
  .transform(
    ({ id, channel_id: channelId, name, last_morning: lastMorning }): Build => ({
      id,
      channelId,
      name,
      lastMorning,
    }),
  );

const FactRow = z.object({ id: z.int(), name: z.string(), value: z.string() });

export interface BuildStore {
  open(channelId: string, name: string): Build;
  inChannel(channelId: string): Build | undefined;
  find(id: number): Build | undefined;
  all(): readonly Build[];
  rename(id: number, name: string): void;
  /** Gives a build to another channel. */
  move(id: number, channelId: string): void;
  /** What the crew has said of the car and its engine, in the order it was first said. */
  facts(buildId: number): readonly BuildFact[];
  /** Writes a fact down, or its new value. */
  say(buildId: number, name: string, value: string): void;
  unsay(factId: number): void;
}

export function openBuildStore(db: Database): BuildStore {
  const insert = db.prepare('INSERT INTO build (channel_id, name) VALUES (?, ?)');
  const columns = `SELECT build.*, morning.day AS last_morning
    FROM build LEFT JOIN morning ON morning.build_id = build.id`;
  const byId = db.prepare(`${columns} WHERE build.id = ?`);
  const byChannel = db.prepare(`${columns} WHERE channel_id = ?`);
  const all = db.prepare(`${columns} ORDER BY build.id`);
  const rename = db.prepare('UPDATE build SET name = ? WHERE id = ?');
  const move = db.prepare('UPDATE build SET channel_id = ? WHERE id = ?');
  const facts = db.prepare('SELECT id, name, value FROM build_fact WHERE build_id = ? ORDER BY id');
  const say = db.prepare(
    `INSERT INTO build_fact (build_id, name, value) VALUES (?, ?, ?)
     ON CONFLICT (build_id, name) DO UPDATE SET value = excluded.value`,
  );
  const unsay = db.prepare('DELETE FROM build_fact WHERE id = ?');
  const optional = BuildRow.optional();
  return {
    open: (channelId, name) => BuildRow.parse(byId.get(insert.run(channelId, name).lastInsertRowid)),
    inChannel: (channelId) => optional.parse(byChannel.get(channelId)),
    find: (id) => optional.parse(byId.get(id)),
    all: () => z.array(BuildRow).parse(all.all()),
    rename: (id, name) => void rename.run(name, id),
    move: (id, channelId) => void move.run(channelId, id),
    facts: (buildId) => z.array(FactRow).parse(facts.all(buildId)),
    say: (buildId, name, value) => void say.run(buildId, name, value),
    unsay: (factId) => void unsay.run(factId),
  };
}
