import { type Day, sayDay } from '../../core/time.ts';
import type { Blocker } from './blockers.ts';
import type { Minutes } from './job.ts';

/** "90 min", "2.5 h": hours from two on. */
export function sayTime(minutes: number): string {
  if (minutes < 120) return `${Math.round(minutes)} min`;
  return `${inHours(minutes)} h`;
}

const inHours = (minutes: number): number => Math.round(minutes / 6) / 10;

/** "1 to 3 h, likely 1.5 h"; one figure when there is no range. Minutes where an hour would be too coarse. */
export function sayMinutes({ least, likely, most }: Minutes): string {
  if (least === most) return sayTime(likely);
  if (least < 60) return `${sayTime(least)} to ${sayTime(most)}, likely ${sayTime(likely)}`;
  return `${inHours(least)} to ${inHours(most)} h, likely ${inHours(likely)} h`;
}

/** What a job waits for, in words: "sump gasket (1, expected Thu 3 Dec)". */
export function sayBlocker(blocker: Blocker, today: Day): string {
  switch (blocker.kind) {
    case 'part': {
      const { name, short, whereabouts, expectedOn } = blocker;
      const count = short === 1 ? name : `${short} × ${name}`;
      if (expectedOn !== null) return `${count} (expected ${sayDay(expectedOn, today)})`;
      return `${count} (${whereabouts === 'to sort out' ? whereabouts : 'not ordered'})`;
    }
    case 'job':
      return `#${blocker.jobId} ${blocker.name}`;
    case 'fluid':
      return `${blocker.name} (${Number(blocker.shortL.toFixed(2))} L short)`;
    case 'stage':
      return `the stage ${blocker.name}`;
    case 'unknown':
      return `${blocker.what} (not on record any more: /job needs with remove:"${blocker.what}")`;
  }
}

/** The first few in words, and how many more there are. */
export function sayFew(words: readonly string[], most = 4): string {
  const shown = words.slice(0, most).join(', ');
  return words.length > most ? `${shown} and ${words.length - most} more` : shown;
}
