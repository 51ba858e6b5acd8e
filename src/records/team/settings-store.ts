import type { Database } from 'better-sqlite3';
import { z } from 'zod';
import { BUILT_IN, type OwnUnits } from '../../calc/units/own-units.ts';
import { isUnitId, units } from '../../calc/units/table.ts';
import { FIRST_SETTINGS, type TeamSettings } from './team.ts';
import { CHOSEN, withSigns } from './units.ts';

const SettingsRow = z.object({ zone: z.string(), country: z.string(), morning: z.string() });
const UnitRow = z.object({ what: z.string(), unit: z.string().refine(isUnitId) });

export interface SettingsStore {
  read(): TeamSettings;
  change(settings: TeamSettings): void;
  /** What the crew counts in. */
  units(): OwnUnits;
  changeUnits(own: OwnUnits): void;
}

export function openSettingsStore(db: Database): SettingsStore {
  const read = db.prepare('SELECT zone, country, morning FROM settings WHERE id = 1');
  const write = db.prepare(
    `INSERT INTO settings (id, zone, country, morning) VALUES (1, @zone, @country, @morning)
     ON CONFLICT (id) DO UPDATE SET zone = @zone, country = @country, morning = @morning`,
  );
  const readUnits = db.prepare('SELECT what, unit FROM own_unit');
  const writeUnit = db.prepare(
    `INSERT INTO own_unit (what, unit) VALUES (@what, @unit)
     ON CONFLICT (what) DO UPDATE SET unit = @unit WHERE unit <> @unit`,
  );
  return {
    read: () => SettingsRow.optional().parse(read.get()) ?? FIRST_SETTINGS,
    change: (settings) => void write.run(settings),
    units() {
      const rows = z.array(UnitRow).parse(readUnits.all());
      return withSigns(BUILT_IN, Object.fromEntries(rows.map(({ what, unit }) => [what, units[unit].sign])));
    },
    changeUnits(own) {
      for (const what of CHOSEN) writeUnit.run({ what, unit: own[what] });
    },
  };
}
