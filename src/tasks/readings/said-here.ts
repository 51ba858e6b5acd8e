import type { Outcome } from '../../bot/command.ts';
import type { Hand } from '../../bot/hand.ts';
import { AskedBack, type Handover } from '../../bot/handover.ts';
import { nothingAsked } from '../../bot/quick-card.ts';
import { logButton, readingCard, symptomCard } from '../../bot/quick-record.ts';
import type { RunCommand } from '../../bot/request.ts';
import type { Answer } from '../../core/reply.ts';
import type { QuickForm } from '../../phrases/quick/reading.ts';
import type { LineValue } from '../../phrases/readings/line-reading.ts';
import { saidReading } from '../../phrases/readings/said-reading.ts';
import { kindsWith } from '../../records/readings/kinds.ts';
import { symptomsSaid } from '../../records/walks/symptom-said.ts';
import { kindsHere } from './readings.ts';

/**
 * What is said of the engine itself: what its battery shows, a reading to be logged, something that it does not do.
 *
 * @param crew null outside a crew's channel, where nothing can be logged or begun.
 * @throws AskedBack with the one button that logs the reading or begins the search.
 */
export function saidOfEngine(text: string, crew: Hand | null): Outcome {
  const said = saidReading(text, crew === null ? kindsWith([]) : kindsHere(crew));
  const volts = said?.kind === 'battery voltage' ? batteryRun(said.values) : undefined;
  if (volts !== undefined) {
    return { kind: 'handover', asks: volts, finish: (answer) => withLogButton(answer, text, crew) };
  }
  if (crew === null) return nothingAsked();
  const button = said === undefined ? undefined : logButton(text);
  if (said !== undefined && button !== undefined) throw new AskedBack(readingCard(text, said.kind, button));
  const guides = symptomsSaid(text);
  if (guides.length > 0) throw new AskedBack(symptomCard(text, guides));
  return nothingAsked();
}

/** Sums whose question is as often a reading that somebody has just taken. */
const TAKEN: ReadonlySet<QuickForm> = new Set(['oil-pressure', 'compression-test', 'convert']);

/** The answer of a sum with a button that logs what was typed, where that is a reading and there is a record. */
export function loggable(handover: Handover, form: QuickForm, text: string, crew: Hand | null): Handover {
  if (crew === null || !TAKEN.has(form) || saidReading(text, kindsHere(crew)) === undefined) return handover;
  return { ...handover, finish: (answer) => withLogButton(handover.finish(answer), text, crew) };
}

function withLogButton(answer: Answer, text: string, crew: Hand | null): Answer {
  const button = crew === null ? undefined : logButton(text);
  return button === undefined ? answer : { ...answer, buttons: [button, ...(answer.buttons ?? [])] };
}

const BATTERY_OPTIONS: ReadonlyMap<string, string> = new Map([
  ['at rest', 'rest'],
  ['cranking', 'cranking'],
  ['charging', 'charging'],
]);

/** The sum that voltages with their states come to; undefined where one has no state of its own. */
function batteryRun(values: readonly LineValue[]): RunCommand | undefined {
  const options = values.flatMap(({ value, conditions }) =>
    conditions.states.flatMap((state): readonly [string, string][] => {
      const option = BATTERY_OPTIONS.get(state);
      return option === undefined ? [] : [[option, `${value} V`]];
    }),
  );
  if (options.length !== values.length) return undefined;
  return { kind: 'run', command: 'battery', subcommand: null, options: Object.fromEntries(options) };
}
