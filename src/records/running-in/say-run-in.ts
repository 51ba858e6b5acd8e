import { sayFigure, sayNumber } from '../../calc/units/say.ts';
import { type Day, sayDay } from '../../core/time.ts';
import type { StepStanding } from './progress.ts';
import type { Mark, Measure } from './run-in.ts';

/** "210 km", "3.5 h", "12 days". */
export function sayRun(value: number, measure: Measure): string {
  if (measure === 'km') return sayFigure(Math.round(value), 'km');
  if (measure === 'h') return `${sayNumber(value, 3)} h`;
  return `${Math.round(value)} ${Math.round(value) === 1 ? 'day' : 'days'}`;
}

/** "at 80 km or 1.5 h". */
export function sayMark({ km, h, days }: Mark): string {
  const parts = [
    km === null ? undefined : sayRun(km, 'km'),
    h === null ? undefined : sayRun(h, 'h'),
    days === null ? undefined : sayRun(days, 'days'),
  ].filter((part) => part !== undefined);
  return parts.length === 0 ? 'never' : parts.join(' or ');
}

/** What is still to go by the counters that are known: "30 km to go". Empty when none is. */
export function sayLeft({ km, h, days }: Mark): string {
  const said = sayMark({ km, h, days });
  return said === 'never' ? '' : `${said} to go`;
}

/** How a step stands, as a sentence goes on. */
export function sayStanding({ step, state, due, left, expectedOn }: StepStanding, today: Day): string {
  const snooze = step.snoozes.at(-1);
  const put = snooze === undefined ? '' : ` Put off by ${snooze.byName}: ${snooze.reason}.`;
  switch (state) {
    case 'done':
      return `Done ${sayDay(step.doneOn ?? today, today)}${doneAt(step)}, noted by ${step.doneByName ?? ''}.${step.found === null ? '' : ` Found: ${step.found}.`}`;
    case 'left out':
      return 'Left out.';
    case 'due':
      return `Due since ${sayMark(due)}.${put}`;
    case 'soon':
    case 'later': {
      const day = expectedOn === null ? '' : `, about ${sayDay(expectedOn, today)} at the present pace`;
      const togo = sayLeft(left);
      return `Due at ${sayMark(due)}${togo === '' ? '' : `: ${togo}`}${day}.${put}`;
    }
  }
}

function doneAt({ doneKm, doneH }: StepStanding['step']): string {
  const at = sayMark({ km: doneKm, h: doneH, days: null });
  return at === 'never' ? '' : ` at ${at}`;
}
