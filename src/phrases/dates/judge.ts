import { instantOf, sayDay } from '../../core/time.ts';
import { todayOf } from './days.ts';
import { clockText, type DayFind, type Find } from './find.ts';
import { isFar } from './months.ts';
import type { DateContext, DateReading } from './reading.ts';

/** A year typed out is no slip for two years either way; what lies further off is asked back. */
const SAID_YEAR_LIMIT = 2;

/** Decides whether the day found may stand in the field, and puts the time on the clock. */
export function judge(find: Find, context: DateContext): DateReading {
  switch (find.kind) {
    case 'no':
      return { verdict: 'refuse', problem: find.problem };
    case 'ask':
      return { verdict: 'ask', question: find.question, options: find.options.slice(0, 5) };
    case 'day':
      return judgeDay(find, context);
  }
}

function judgeDay(found: DayFind, context: DateContext): DateReading {
  const today = todayOf(context);
  const day = found.date.toString();
  const option = { day, ...(found.time && { time: clockText(found.time) }) };
  const ask = (question: string): DateReading => ({ verdict: 'ask', question, options: [option] });
  const side = Temporal.PlainDate.compare(found.date, today);
  const said = sayDay(day, today.toString());
  const years = Math.abs(found.date.year - today.year);
  if (years > 150)
    return {
      verdict: 'refuse',
      problem: `The year ${found.date.year} is too far off. Type a date such as 4 Dec.`,
    };
  if (context.direction === 'future' && side < 0) return ask(`${said} has gone. Is it meant all the same?`);
  if (context.direction === 'past' && side > 0)
    return ask(`${said} is still to come. Is it meant all the same?`);
  const far = found.yearSaid === true ? years > SAID_YEAR_LIMIT : isFar(found.date, today);
  if (far) return ask(`${said} is a long way off. Is it meant?`);
  if (found.time === undefined) {
    return { verdict: 'read', day, ...(found.assumed !== undefined && { assumed: found.assumed }) };
  }
  return judgeTime(found, found.time, context);
}

function judgeTime(found: DayFind, time: Temporal.PlainTime, context: DateContext): DateReading {
  const instantMs = found.instantMs ?? instantOf(found.date.toString(), clockText(time), context.zone);
  const wall = Temporal.Instant.fromEpochMilliseconds(instantMs).toZonedDateTimeISO(context.zone);
  const day = wall.toPlainDate().toString();
  const shown = clockText(wall.toPlainTime());
  const nowMs = context.now
    .round({ smallestUnit: 'minute', roundingMode: 'floor' })
    .toZonedDateTime(context.zone).epochMilliseconds;
  const ask = (question: string): DateReading => ({
    verdict: 'ask',
    question,
    options: [{ day, time: shown }],
  });
  if (context.direction === 'future' && instantMs < nowMs)
    return ask('That time has gone. Is it meant all the same?');
  if (context.direction === 'past' && instantMs > nowMs + 60_000) {
    return ask('That time is still to come. Is it meant all the same?');
  }
  const assumed = found.instantMs === undefined ? clockChange(found, time, context) : undefined;
  return { verdict: 'read', day, time: shown, instantMs, ...(assumed !== undefined && { assumed }) };
}

/** A time that the clocks skip or show twice is settled as Temporal's "compatible" has it, and said. */
function clockChange(found: DayFind, time: Temporal.PlainTime, context: DateContext): string | undefined {
  const wall = found.date.toPlainDateTime(time);
  const earlier = wall.toZonedDateTime(context.zone, { disambiguation: 'earlier' });
  const later = wall.toZonedDateTime(context.zone, { disambiguation: 'later' });
  if (earlier.epochMilliseconds === later.epochMilliseconds) return undefined;
  return earlier.toPlainDateTime().equals(wall)
    ? `The clocks go back that night, so ${clockText(time)} comes twice; the first is taken.`
    : `The clocks go forward that night, so ${clockText(time)} does not come; it is moved on by the gap.`;
}
