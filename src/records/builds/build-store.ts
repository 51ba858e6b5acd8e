import type { Database } from 'better-sqlite3';
import { z } from 'zod';
import type { Build } from './build.ts';

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

export interface BuildStore {
  open(channelId: string, name: string): Build;
  inChannel(channelId: string): Build | undefined;
  find(id: number): Build | undefined;
  all(): readonly Build[];
  rename(id: number, name: string): void;
}

export function openBuildStore(db: Database): BuildStore {
  const insert = db.prepare('INSERT INTO build (channel_id, name) VALUES (?, ?)');
  const columns = `SELECT build.*, morning.day AS last_morning
    FROM build LEFT JOIN morning ON morning.build_id = build.id`;
  const byId = db.prepare(`${columns} WHERE build.id = ?`);
  const byChannel = db.prepare(`${columns} WHERE channel_id = ?`);
  const all = db.prepare(`${columns} ORDER BY build.id`);
  const rename = db.prepare('UPDATE build SET name = ? WHERE id = ?');
  const optional = BuildRow.optional();
  return {
    open: (channelId, name) => BuildRow.parse(byId.get(insert.run(channelId, name).lastInsertRowid)),
    inChannel: (channelId) => optional.parse(byChannel.get(channelId)),
    find: (id) => optional.parse(byId.get(id)),
    all: () => z.array(BuildRow).parse(all.all()),
    rename: (id, name) => void rename.run(name, id),
  };
}
