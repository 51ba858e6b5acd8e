import type { JsonObject } from '../../core/json.ts';
import type { Look } from './look-at.ts';
import type { Conditions, Reading } from './reading.ts';
import { dataKey } from './say.ts';

/** A reading as typed data; the value's key bears its unit. */
export function readingData(reading: Reading): JsonObject {
  const { id, kind, value, unit, note, link, byName, takenAtMs, firstValue } = reading;
  const key = dataKey(unit);
  return {
    reading: id,
    kind,
    [key]: round(value),
    ...(key === 'value' ? { unit } : {}),
    ...conditionData(reading.conditions),
    takenAtMs,
    byName,
    ...(note === null ? {} : { note }),
    ...(link === null ? {} : { link }),
    ...(firstValue === null
      ? {}
      : { [`first${key.charAt(0).toUpperCase()}${key.slice(1)}`]: round(firstValue) }),
  };
}

/** Beside a value of its own key a condition's temperature is that of the oil or coolant it was taken at. */
function conditionData({ speedRpm, temperatureC, boostKPa, place, fuel, states }: Conditions): JsonObject {
  return {
    conditions: {
      ...(speedRpm === undefined ? {} : { speedRpm }),
      ...(temperatureC === undefined ? {} : { temperatureC: round(temperatureC) }),
      ...(boostKPa === undefined ? {} : { boostKPa: round(boostKPa) }),
      ...(place === undefined ? {} : { place }),
      ...(fuel === undefined ? {} : { fuel }),
      states: [...states],
    },
  };
}

/** The verdict and trend of a reading as typed data. */
export function lookData({ reading, verdict, trend }: Look): JsonObject {
  const { grade, side, limit } = verdict;
  const key = dataKey(reading.unit);
  const ending = key.charAt(0).toUpperCase() + key.slice(1);
  return {
    ...readingData(reading),
    grade,
    side,
    ...(limit?.min === undefined ? {} : { [`least${ending}`]: round(limit.min) }),
    ...(limit?.max === undefined ? {} : { [`most${ending}`]: round(limit.max) }),
    ...(limit === undefined ? {} : { limitOrigin: limit.origin }),
    ...(trend === undefined
      ? {}
      : { [`perWeek${ending}`]: round(trend.perWeek), trendReadings: trend.count }),
  };
}

/** Sums of binary fractions leave dust in the fifteenth place. */
const round = (value: number): number => Number(value.toPrecision(12));
