import type { Conditions } from './reading.ts';

/** Speeds this near are one condition: a hand on a throttle holds no closer. Common practice. */
const SPEED_RATIO = 0.1;
const LEAST_SPEED_RPM = 200;
/** Temperatures this near are one condition: oil thins by a fifth over it. */
const TEMPERATURE_C = 10;
const BOOST_KPA = 15;
/** States that a figure of speed or temperature says better. */
const SPEED_STATES: readonly string[] = ['idle', 'cruise', 'cranking'];
const TEMPERATURE_STATES: readonly string[] = ['hot', 'cold'];

/**
 * Whether two readings were taken under like conditions, so that one may be held against the other. What only one of them
 * says is a difference: nobody knows what the other one was taken at.
 */
export function alike(one: Conditions, other: Conditions): boolean {
  const speeds = both(one.speedRpm, other.speedRpm);
  const temperatures = both(one.temperatureC, other.temperatureC);
  const boosts = both(one.boostKPa, other.boostKPa);
  if (one.place !== other.place || one.fuel !== other.fuel) return false;
  if (speeds === 'differ' || temperatures === 'differ' || boosts === 'differ') return false;
  if (speeds !== 'neither' && !near(speeds, Math.max(LEAST_SPEED_RPM, SPEED_RATIO * Math.max(...speeds))))
    return false;
  if (temperatures !== 'neither' && !near(temperatures, TEMPERATURE_C)) return false;
  if (boosts !== 'neither' && !near(boosts, BOOST_KPA)) return false;
  const told = [
    ...(speeds === 'neither' ? [] : SPEED_STATES),
    ...(temperatures === 'neither' ? [] : TEMPERATURE_STATES),
  ];
  const rest = ({ states }: Conditions): string =>
    states
      .filter((state) => !told.includes(state))
      .toSorted()
      .join();
  return rest(one) === rest(other);
}

function both(
  a: number | undefined,
  b: number | undefined,
): readonly [number, number] | 'neither' | 'differ' {
  if (a === undefined && b === undefined) return 'neither';
  return a === undefined || b === undefined ? 'differ' : [a, b];
}

const near = ([a, b]: readonly [number, number], within: number): boolean => Math.abs(a - b) <= within + 1e-9;

/** Whether a reading was taken as a limit asks: everything the limit names holds, and nothing else matters. */
export function meets(reading: Conditions, asked: Conditions): boolean {
  const { speedRpm, temperatureC, boostKPa, place, fuel, states } = asked;
  const states_ = impliedStates(reading);
  return (
    (place === undefined || place === reading.place) &&
    (fuel === undefined || fuel === reading.fuel) &&
    states.every((state) => states_.includes(state)) &&
    holds(reading.speedRpm, speedRpm, Math.max(LEAST_SPEED_RPM, SPEED_RATIO * (speedRpm ?? 0))) &&
    holds(reading.temperatureC, temperatureC, TEMPERATURE_C) &&
    holds(reading.boostKPa, boostKPa, BOOST_KPA)
  );
}

function holds(said: number | undefined, asked: number | undefined, within: number): boolean {
  return asked === undefined || (said !== undefined && Math.abs(said - asked) <= within + 1e-9);
}

/** From here on oil and coolant are hot, and up to there an engine idles. Common practice. */
const HOT_FROM_C = 75;
const COLD_TO_C = 45;
export const IDLE_TO_RPM = 1200;

/** States that were said, and those that follow from the figures. */
export function impliedStates({ states, speedRpm, temperatureC }: Conditions): readonly string[] {
  const more = [
    ...(temperatureC !== undefined && temperatureC >= HOT_FROM_C ? ['hot'] : []),
    ...(temperatureC !== undefined && temperatureC <= COLD_TO_C ? ['cold'] : []),
    ...(speedRpm !== undefined && speedRpm >= 400 && speedRpm <= IDLE_TO_RPM ? ['idle'] : []),
  ];
  return [...new Set([...states, ...more])];
}
