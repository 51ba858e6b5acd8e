import type { Database } from 'better-sqlite3';
import { z } from 'zod';
import { FIRST_SETTINGS, type TeamSettings } from './team.ts';

const SettingsRow = z.object({ zone: z.string(), country: z.string(), morning: z.string() });

export interface SettingsStore {
  read(): TeamSettings;
  change(settings: TeamSettings): void;
}

export function openSettingsStore(db: Database): SettingsStore {
  const read = db.prepare('SELECT zone, country, morning FROM settings WHERE id = 1');
  const write = db.prepare(
    `INSERT INTO settings (id, zone, country, morning) VALUES (1, @zone, @country, @morning)
     ON CONFLICT (id) DO UPDATE SET zone = @zone, country = @country, morning = @morning`,
  );
  return {
    read: () => SettingsRow.optional().parse(read.get()) ?? FIRST_SETTINGS,
    change: (settings) => void write.run(settings),
  };
}
