import type { TeamRecord } from '../team-record.ts';
import type { Kind } from './kinds.ts';
import type { Conditions, Reading } from './reading.ts';
import { capital, sayConditions, sayValue } from './say.ts';

/** What somebody measured: one value, or one for each cylinder. */
export interface Measured {
  readonly buildId: number;
  readonly kind: Kind;
  readonly values: readonly {
    readonly value: number;
    readonly shownIn: string;
    readonly conditions: Conditions;
  }[];
  readonly typed: string;
  readonly note: string | null;
  readonly link: string | null;
  readonly atMs: number;
  readonly byName: string;
}

/** Writes readings down; several of one line are kept as a set. */
export function logReadings(
  record: TeamRecord,
  { values, kind, atMs, ...shared }: Measured,
): { readonly value: readonly Reading[]; readonly said: string } {
  const logged: Reading[] = [];
  for (const { value, shownIn, conditions } of values) {
    logged.push(
      record.readings.log({
        buildId: shared.buildId,
        kind: kind.name,
        value,
        unit: kind.unit,
        shownIn,
        typed: shared.typed,
        conditions,
        takenAtMs: atMs,
        byName: shared.byName,
        note: shared.note,
        link: shared.link,
        firstValue: null,
        setId: values.length > 1 ? (logged[0]?.id ?? null) : null,
      }),
    );
  }
  const [first, ...others] = logged;
  if (first === undefined || others.length === 0)
    return { value: logged, said: `${sayReadings(logged)} logged` };
  const set = logged.map((reading) => ({ ...reading, setId: first.id }));
  record.readings.rewrite({ ...first, setId: first.id });
  return { value: set, said: `${sayReadings(set)} logged` };
}

/** A reading corrected: the value it was first given as stays beside it. */
export function correctReading(
  record: TeamRecord,
  reading: Reading,
  now: {
    readonly value: number;
    readonly shownIn: string;
    readonly typed: string;
    readonly conditions: Conditions;
  },
): { readonly value: Reading; readonly said: string } {
  const corrected: Reading = { ...reading, ...now, firstValue: reading.firstValue ?? reading.value };
  record.readings.rewrite(corrected);
  return { value: corrected, said: `${sayReading(corrected)} corrected, was ${sayOwn(reading)}` };
}

export function removeReading(
  record: TeamRecord,
  reading: Reading,
): { readonly value: Reading; readonly said: string } {
  record.readings.remove(reading.id);
  return { value: reading, said: `${sayReading(reading)} removed` };
}

/** "4.2 bar". */
export const sayOwn = ({ value, unit, shownIn, kind }: Reading): string =>
  sayValue(value, unit, shownIn, kind === 'distance' ? 7 : 4);

/** "Oil pressure 4.2 bar at 2500 rpm, 92 °C". */
export function sayReading(reading: Reading): string {
  const { place: _named, ...others } = reading.conditions;
  const at = sayConditions(others, reading.typed);
  const place = reading.conditions.place === undefined ? '' : `, ${reading.conditions.place}`;
  return `${capital(reading.kind)}${place} ${sayOwn(reading)}${at === '' ? '' : ` (${at})`}`;
}

/** A whole line: "Compression 12.1, 12, 11.8, 11.9 bar". */
export function sayReadings(readings: readonly Reading[]): string {
  const [first, ...others] = readings;
  if (first === undefined) return 'nothing';
  if (others.length === 0) return sayReading(first);
  const own = readings.map(sayOwn);
  const sign = /[^\d.,\s\u202f−]+.*$/u.exec(own[0] ?? '')?.[0] ?? '';
  const shared = own.every((each) => each.endsWith(sign));
  const figures = shared
    ? `${own.map((each) => each.slice(0, each.length - sign.length).trim()).join(', ')} ${sign}`.trim()
    : own.join(', ');
  const states = first.conditions.states.filter((state) =>
    readings.every(({ conditions }) => conditions.states.includes(state)),
  );
  const each = readings.map(({ conditions }) =>
    conditions.states.filter((state) => !states.includes(state)).join(' '),
  );
  const named = each.some((words) => words !== '')
    ? own.map((value, index) => `${value} ${each[index] ?? ''}`.trim()).join(', ')
    : figures;
  return `${capital(first.kind)} ${named}${states.length === 0 ? '' : ` (${states.join(', ')})`}`;
}
