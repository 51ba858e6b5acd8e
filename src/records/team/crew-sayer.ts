import { type Sayer, sayerFor } from '../../calc/units/sayer.ts';
import type { UnitId } from '../../calc/units/table.ts';
import type { SettingsStore } from './settings-store.ts';

/** Says quantities as a crew counts them. */
export type CrewSayer = Sayer;

/**
 * @param settings null where no crew stands behind the request.
 * @param typed units of the request itself, which outrank the crew's.
 */
export function crewSayer(settings: SettingsStore | null, typed: readonly UnitId[]): CrewSayer {
  return settings === null ? sayerFor(undefined, typed) : sayerFor(settings.units(), typed);
}
