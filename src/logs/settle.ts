import type { Drive } from '../calc/fuelling/drive.ts';
import { quantiles } from '../calc/fuelling/quantiles.ts';
import { UNSETTLED } from './readers.ts';

/** No coolant is this hot in °C for long: it is counted in °F. */
const HOTTER_THAN_C = 135;

/** Settles what only the whole log can tell, in place; says what it took for granted. */
export function settle({ at }: Drive): readonly string[] {
  settleThrottle(at.throttleRatio);
  return [...settleStatus(at.sensorFault), ...settleCoolant(at.coolantC)];
}

/** A sensor's status given as a number: the one it has most of the time is taken to mean that all is well. */
function settleStatus(status: Float32Array | undefined): readonly string[] {
  if (status === undefined || !status.some((value) => value >= UNSETTLED)) return [];
  const times = new Map<number, number>();
  for (const value of status) if (value >= UNSETTLED) times.set(value, (times.get(value) ?? 0) + 1);
  const [usual = UNSETTLED] = [...times].sort((a, b) => b[1] - a[1])[0] ?? [];
  for (let index = 0; index < status.length; index++) {
    const value = status[index] ?? Number.NaN;
    if (value >= UNSETTLED) status[index] = value === usual ? 0 : 1;
  }
  return [`The sensor's status ${usual - UNSETTLED}, the most common, is taken to mean that it works.`];
}

/** A throttle that ever reads more than fully open is counted in per cent. */
function settleThrottle(throttleRatio: Float32Array | undefined): void {
  const [most = 0] = quantiles(throttleRatio ?? [], [0.999]);
  if (throttleRatio === undefined || most < 1.5) return;
  for (let index = 0; index < throttleRatio.length; index++) {
    throttleRatio[index] = (throttleRatio[index] ?? Number.NaN) / 100;
  }
}

function settleCoolant(coolantC: Float32Array | undefined): readonly string[] {
  const [usual = 0] = quantiles(coolantC ?? [], [0.6]);
  if (coolantC === undefined || usual < HOTTER_THAN_C) return [];
  for (let index = 0; index < coolantC.length; index++)
    coolantC[index] = ((coolantC[index] ?? Number.NaN) - 32) / 1.8;
  return ['The coolant temperature says no unit and is too hot for °C: it is taken as °F.'];
}
