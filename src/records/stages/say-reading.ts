import type { Saying } from '../../calc/units/own-units.ts';
import { readingKinds } from '../../tables/reading-kinds.ts';
import { sayValue } from '../readings/say.ts';
import { crewSayer } from '../team/crew-sayer.ts';
import type { TeamRecord } from '../team-record.ts';

/** Says a value of a kind of reading, handed over in the kind's base unit. */
export type SayReading = (kind: string, value: number) => string;

/** Base units of readings that a crew may count otherwise. */
const SAYINGS: Readonly<Record<string, Saying>> = {
  kPa: 'pressure',
  degC: 'temperature',
  km: 'distance',
};

/** As this crew counts; the bare figure of a kind of its own. */
export function readingsOf({ settings }: Pick<TeamRecord, 'settings'>): SayReading {
  const sayer = crewSayer(settings, []);
  return (kind, value) => {
    const known = readingKinds.find(({ name }) => name === kind);
    if (known === undefined) return String(value);
    const saying = SAYINGS[known.unit];
    return saying === undefined ? sayValue(value, known.unit, known.shown, 3) : sayer.one(saying, value, 3);
  };
}
