import { z } from 'zod';
import type { Conditions } from './reading.ts';

/** How conditions stand in a row; states are parted by bars, which no state holds. */
export const ConditionRow = {
  place: z.string().nullable(),
  speed_rpm: z.number().nullable(),
  temperature_c: z.number().nullable(),
  boost_kpa: z.number().nullable(),
  fuel: z.string().nullable(),
  states: z.string(),
};

export const CONDITION_COLUMNS = 'place, speed_rpm, temperature_c, boost_kpa, fuel, states';
export const GIVEN_CONDITIONS = '@place, @speedRpm, @temperatureC, @boostKPa, @fuel, @states';

interface Columns {
  readonly place: string | null;
  readonly speed_rpm: number | null;
  readonly temperature_c: number | null;
  readonly boost_kpa: number | null;
  readonly fuel: string | null;
  readonly states: string;
}

export function conditionsIn(row: Columns): Conditions {
  return {
    ...(row.speed_rpm === null ? {} : { speedRpm: row.speed_rpm }),
    ...(row.temperature_c === null ? {} : { temperatureC: row.temperature_c }),
    ...(row.boost_kpa === null ? {} : { boostKPa: row.boost_kpa }),
    ...(row.place === null ? {} : { place: row.place }),
    ...(row.fuel === null ? {} : { fuel: row.fuel }),
    states: row.states === '' ? [] : row.states.split('|'),
  };
}

export function columnsOf({ place, speedRpm, temperatureC, boostKPa, fuel, states }: Conditions) {
  return {
    place: place ?? null,
    speedRpm: speedRpm ?? null,
    temperatureC: temperatureC ?? null,
    boostKPa: boostKPa ?? null,
    fuel: fuel ?? null,
    states: states.toSorted().join('|'),
  };
}
