import { buildHere, openBuildHere } from '../../bot/crew.ts';
import type { Changed, Hand } from '../../bot/hand.ts';
import type { FuelTable } from '../../records/fuelling/fuel-table.ts';
import type { TeamRecord } from '../../records/team-record.ts';

/** What somebody says of the table; what is left out stays as it was. */
export type FuelTableSaid = { readonly [Key in keyof Omit<FuelTable, 'buildId'>]?: FuelTable[Key] };

const UNKNOWN: Omit<FuelTable, 'buildId'> = {
  loadAxisKPa: null,
  speedAxisRpm: null,
  target: null,
  capRatio: null,
  fuel: null,
  scale: null,
};

/** What is known of the fuel table of this channel's build; all of it unknown where there is no channel or build yet. */
export function fuelTableHere(hand: Hand): Omit<FuelTable, 'buildId'> {
  const build = buildHere(hand);
  return (build && hand.record.fuelTables.ofBuild(build.id)) ?? UNKNOWN;
}

/** Keeps what was said of the table, in one change. */
export function keepFuelTable(hand: Hand, said: FuelTableSaid): Changed<FuelTable> {
  return hand.change((record) => ({ value: writeFuelTable(record, hand, said), said: sayTable(said) }));
}

export function writeFuelTable(record: TeamRecord, hand: Hand, said: FuelTableSaid): FuelTable {
  const { id: buildId } = openBuildHere(record, hand);
  const table = { ...UNKNOWN, ...record.fuelTables.ofBuild(buildId), ...said, buildId };
  record.fuelTables.keep(table);
  return table;
}

function sayTable({ loadAxisKPa, speedAxisRpm, target, capRatio, fuel, scale }: FuelTableSaid): string {
  const parts = [
    loadAxisKPa && `loads ${loadAxisKPa.join(' ')} kPa`,
    speedAxisRpm && `speeds ${speedAxisRpm.join(' ')} rpm`,
    target && `target ${target}`,
    capRatio && `cap ${Math.round(capRatio * 100)} %`,
    fuel && `fuel ${fuel}`,
    scale && `AFR counted in ${scale === 'petrol' ? 'petrol' : 'the fuel'}`,
  ];
  return `fuel table: ${parts.filter(Boolean).join(', ')}`;
}
