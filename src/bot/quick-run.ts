import type { JsonObject } from '../core/json.ts';
import type { QuickAnswer, QuickForm } from '../phrases/quick/reading.ts';
import type { RunCommand } from './request.ts';

/** Which command answers a form of question; what was typed goes into the options of the same names. */
const RUNS: Partial<Readonly<Record<QuickForm, readonly [command: string, subcommand: string | null]>>> = {
  thread: ['thread', null],
  mixture: ['lambda', 'read'],
  'mixture-change': ['lambda', 'correct'],
  stoichiometric: ['lambda', 'fuel'],
  convert: ['convert', null],
  bolt: ['torque', 'bolt'],
  'flow-units': ['injector', 'flow'],
  'flow-at-pressure': ['injector', 'flow'],
  'injector-size': ['injector', 'size'],
  'injector-power': ['injector', 'power'],
  'longest-pulse': ['injector', 'duty'],
  duty: ['injector', 'duty'],
  'oil-pressure': ['oil', 'pressure'],
  freezing: ['coolant', 'freeze'],
  'coolant-fill': ['coolant', 'fill'],
  'coolant-change': ['coolant', 'change'],
  displacement: ['engine', 'size'],
  'compression-ratio': ['engine', 'volumes'],
  'compression-test': ['check', 'compression'],
  dash: ['fitting', 'dash'],
  'nearest-dash': ['fitting', 'dash'],
};

/** Options that are whole numbers on the platform. */
const COUNTED = new Set(['cylinders', 'count']);

/** Pieces that only say how an answer is to be shown. */
const NOT_OPTIONS: Partial<Readonly<Record<QuickForm, ReadonlySet<string>>>> = {
  'flow-units': new Set(['to']),
};

/** The request of an existing command that a reading comes to; undefined where none has the answer. */
export function quickRun({ form, said }: QuickAnswer): RunCommand | undefined {
  const [command, subcommand] = RUNS[form] ?? [];
  if (command === undefined || subcommand === undefined) return undefined;
  const options: JsonObject = Object.fromEntries(
    Object.entries(said)
      .filter(([name]) => NOT_OPTIONS[form]?.has(name) !== true)
      .map(([name, typed]) => [name, COUNTED.has(name) ? Number(typed) : typed]),
  );
  return { kind: 'run', command, subcommand, options };
}
