import { UserError } from '../../core/user-error.ts';
import type { Minutes } from '../../records/jobs/job.ts';

/** One figure is taken as the likely one: three quarters of it at least, twice it at most. Common practice, no source. */
const [LEAST_SHARE, MOST_SHARE] = [0.75, 2];

/** Nothing on a car is longer than a working month. */
const MOST_MINUTES = 10_000;

const HOURS = /^(?:h|hr|hrs|hour|hours|std)$/;
const MINUTES = /^(?:m|min|mins|minute|minutes|'|)$/;
const NUMBER = String.raw`\d{1,5}(?:[.,]\d{1,2})?`;
const UNIT = "(?:h(?:ou)?rs?|hours?|h|std|minutes?|mins?|m|')";
const SPAN = new RegExp(`^(\\d{1,3}:\\d{2}|${NUMBER})\\s*(${UNIT})?\\s*(?:-|–|to|bis|\\.\\.)\\s*(.+)$`);

/** How long a job takes, and how it was read. */
export interface MinutesRead {
  readonly minutes: Minutes;
  readonly readAs: string;
}

/**
 * Reads how long a job takes as people type it: "90 min", "1-2 h, likely 90 min", "1:30", "half an hour", "2 h".
 *
 * @throws UserError 'bad-input' naming what was typed into `field`, and how to type it.
 */
export function readMinutes(typed: string, field: string): MinutesRead {
  const [range = '', ...rest] = typed
    .trim()
    .toLowerCase()
    .split(/[,;]\s*(?=[a-z])|\s+(?=likely|mostly|usually)/);
  const said = rest.join(' ').replace(/^(?:likely|mostly|usually|most likely)\s*/, '');
  const span = SPAN.exec(range.trim());
  if (span === null) {
    const likely = timeIn(range, 'min');
    if (likely === undefined || said !== '') throw unreadable(typed, field);
    const minutes = { least: likely * LEAST_SHARE, likely, most: likely * MOST_SHARE };
    return checked(
      minutes,
      typed,
      field,
      'one figure: taken as likely, ¾ of it at least and twice it at most',
    );
  }
  const [, from = '', unit, to = ''] = span;
  const most = timeIn(to, 'min');
  // "1-2 h" counts both in hours
  const least = timeIn(from.includes(':') ? from : `${from} ${unit ?? unitOf(to)}`, 'min');
  if (least === undefined || most === undefined) throw unreadable(typed, field);
  const likely = said === '' ? (least + most) / 2 : timeIn(said, unitOf(to));
  if (likely === undefined) throw unreadable(typed, field);
  return checked(
    { least, likely, most },
    typed,
    field,
    said === '' ? 'the middle taken as likely' : 'least, likely and most',
  );
}

/** A time at hand: "90 min", "2 h". @throws UserError 'bad-input' when it is none. */
export function readTimeAtHand(typed: string, field: string): number {
  const minutes = timeIn(typed.trim().toLowerCase(), 'min');
  if (minutes === undefined || minutes <= 0 || minutes > MOST_MINUTES) throw unreadable(typed, field);
  return minutes;
}

function checked(minutes: Minutes, typed: string, field: string, how: string): MinutesRead {
  const { least, likely, most } = minutes;
  if (!(least > 0 && least <= likely && likely <= most)) {
    throw new UserError(
      'out-of-range',
      `${field}: “${typed}” is not in order: the least, the likely and the most must grow. Nothing was changed. Type 1-2 h, likely 90 min.`,
    );
  }
  if (most > MOST_MINUTES) {
    throw new UserError(
      'out-of-range',
      `${field}: “${typed}” is longer than ${MOST_MINUTES / 60} h. Nothing was changed. Split the job.`,
    );
  }
  return { minutes, readAs: `“${typed}” read as ${how}.` };
}

/** One time, in minutes: "1 h 30", "1:30", "90", "1.5 h", "half an hour". */
function timeIn(text: string, bare: string): number | undefined {
  const trimmed = text.trim().replace(/^(?:about|around|ca\.?|~)\s*/, '');
  if (/^(?:half an? hour|1\/2 h(?:our)?)$/.test(trimmed)) return 30;
  if (/^an? hour$/.test(trimmed)) return 60;
  const clock = /^(\d{1,3}):(\d{2})(?:\s*h)?$/.exec(trimmed);
  if (clock !== null) return Number(clock[1]) * 60 + Number(clock[2]);
  const both = /^(\d{1,3})\s*(?:h|hrs?|hours?)\s*(?:and\s*)?(\d{1,2})\s*(?:m|mins?|minutes?)?$/.exec(trimmed);
  if (both !== null) return Number(both[1]) * 60 + Number(both[2]);
  const one = new RegExp(`^(${NUMBER})\\s*(${UNIT})?$`).exec(trimmed);
  if (one === null) return undefined;
  const value = Number((one[1] ?? '').replace(',', '.'));
  const unit = one[2] ?? bare;
  if (HOURS.test(unit)) return value * 60;
  return MINUTES.test(unit) ? value : undefined;
}

const unitOf = (text: string): string => new RegExp(`(${UNIT})\\s*$`).exec(text.trim())?.[1] ?? 'min';

const unreadable = (typed: string, field: string): UserError =>
  new UserError(
    'bad-input',
    `${field}: “${typed}” is no time. Nothing was changed. Type 90 min, 1-2 h, or 1-2 h, likely 90 min.`,
  );
