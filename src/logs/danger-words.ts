import type { Danger } from '../calc/fuelling/dangers.ts';
import type { Suspicion } from '../calc/fuelling/suspicion.ts';

export interface Said {
  /** What was seen, where and how bad. */
  readonly seen: string;
  /** What to do about it before anything else. */
  readonly first: string;
}

const clock = (seconds: number): string =>
  `${Math.floor(seconds / 60)}:${String(Math.floor(seconds % 60)).padStart(2, '0')}`;
const at = ({ place: { timeS, speedRpm, loadKPa } }: Danger): string =>
  `at ${Math.round(speedRpm / 10) * 10} rpm${Number.isNaN(loadKPa) ? '' : ` and ${Math.round(loadKPa)} kPa`}, ${clock(timeS)} into the log`;
const bar = (kPa: number): string => `${(kPa / 100).toFixed(1)} bar`;

/** A danger in words, with what to do first. */
export function sayDanger(danger: Danger): Said {
  const { kind, value, expected, times } = danger;
  switch (kind) {
    case 'knock':
      return {
        seen: `Knock: counted ${times} ${times === 1 ? 'time' : 'times'}, most ${at(danger)}`,
        first:
          'Do not load it again before the knock is explained: ignition, fuel, mixture and charge temperature there.',
      };
    case 'lean':
      return {
        seen: `Lean under boost: λ ${value.toFixed(2)}${Number.isNaN(expected) ? '' : ` where ${expected.toFixed(2)} is wanted`}, ${at(danger)}`,
        first: 'Stay out of boost: find out first whether fuel pressure, injectors or table are short there.',
      };
    case 'oil-pressure':
      return {
        seen: `Oil pressure fell to ${bar(value)}, usually ${bar(expected)}, ${at(danger)}`,
        first:
          'Stop the engine when it happens again. Check level, pick-up and the gauge before it is driven.',
      };
    case 'fuel-pressure':
      return {
        seen: `Fuel pressure fell to ${bar(value)} where ${bar(expected)} is expected, ${at(danger)}`,
        first: 'Stay out of boost: look at pump, filter, regulator and the voltage at the pump first.',
      };
    case 'duty':
      return {
        seen: `Injectors open ${Math.round(value * 100)} % of the time, ${at(danger)}`,
        first:
          'Go no further up there: past about 85 % they cannot give more, and more fuel in the table changes nothing.',
      };
  }
}

/** A suspicion in words. */
export function saySuspicion({ kind, loadKPa, speedRpm, leanRatio, cells }: Suspicion): Said {
  const where = `around ${speedRpm} rpm and ${loadKPa} kPa`;
  const left = `${cells.length} ${cells.length === 1 ? 'cell is' : 'cells are'} left alone for it`;
  const lean = `${Math.round(leanRatio * 100)} %`;
  return kind === 'air-leak'
    ? {
        seen: `An air leak is suspected: ${lean} lean ${where} and less the more air flows; ${left}`,
        first:
          'Look for air drawn in uncounted (hoses, gaskets, brake servo) or through the exhaust before the sensor; do not fuel it away.',
      }
    : {
        seen: `A misfire is suspected: λ jumps ${lean} lean again and again ${where}; ${left}`,
        first:
          'A burn that fails reads lean however rich it is: look at plugs, coils, leads and injectors there first.',
      };
}
