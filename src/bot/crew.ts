import { workingDays } from '../calendar/working-days.ts';
import { type Day, dayAt, sayDay, wallTime } from '../core/time.ts';
import { type Choice, UserError } from '../core/user-error.ts';
import type { WorkingDays } from '../core/working-days.ts';
import { readDate } from '../phrases/dates/dates.ts';
import type { DateReading } from '../phrases/dates/reading.ts';
import type { Build } from '../records/builds/build.ts';
import { dateLocale, type TeamSettings } from '../records/team/team.ts';
import type { TeamRecord } from '../records/team-record.ts';
import type { Hand, Place } from './hand.ts';

/** Where and when the crew is: what a handler needs to read and to say a day. */
export interface Crew {
  readonly settings: TeamSettings;
  readonly today: Day;
  readonly days: WorkingDays;
}

export function crewOf({ record, clock }: Hand): Crew {
  const settings = record.settings.read();
  return { settings, today: dayAt(clock.nowMs(), settings.zone), days: workingDays(settings.country) };
}

/** The build this channel is about, or the one a thread hangs on; undefined until something is recorded in it. */
export function buildHere({ record, place }: Hand): Build | undefined {
  return buildAt(record, place);
}

function buildAt({ builds }: TeamRecord, { channelId, threadOf }: Place): Build | undefined {
  return builds.inChannel(channelId) ?? (threadOf === undefined ? undefined : builds.inChannel(threadOf));
}

/** Opens the channel's build with its first record, under the channel's own name. */
export function openBuildHere(record: TeamRecord, { place }: Hand): Build {
  return (
    buildAt(record, place) ??
    record.builds.open(place.threadOf ?? place.channelId, place.channelName || 'The build')
  );
}

/** What a picked answer to a question stands as: this day and no other, even where the day itself was the question. */
const EXACTLY = /^=(\d{4}-\d{2}-\d{2})$/;

/** A day as read, and how it was read, to be said back. */
export interface DayRead {
  readonly day: Day;
  readonly readAs: string;
}

/**
 * Reads a day still to come from what was typed into `field`.
 *
 * @param days whose working days "in 5 working days" counts; the crew's unless said
 * @throws UserError 'which-one' when it could be meant in several ways, 'bad-input' when it is no day.
 */
export function readDay(hand: Hand, field: string, typed: string, days?: WorkingDays): DayRead {
  const crew = days === undefined ? crewOf(hand) : { ...crewOf(hand), days };
  const picked = EXACTLY.exec(typed)?.[1];
  if (picked !== undefined) return { day: picked, readAs: `${sayDay(picked, crew.today)}, as picked.` };
  const reading = interpret(hand, crew, typed);
  switch (reading.verdict) {
    case 'read':
      return { day: reading.day, readAs: sayReading(typed, reading, crew.today) };
    case 'ask':
      throw new UserError('which-one', reading.question, {
        field,
        choices: reading.options.map(({ day }) => ({ label: sayDay(day, crew.today), value: `=${day}` })),
      });
    case 'refuse':
      throw new UserError('bad-input', `${reading.problem} Nothing was changed.`);
  }
}

/** What is typed so far as a day in words, offered while typing; usual spans for nothing typed. */
export function suggestDays(typed: string, hand: Hand): readonly Choice[] {
  const crew = crewOf(hand);
  if (typed.trim() === '') {
    return ['tomorrow', 'in 3 working days', 'in 5 working days', 'in 2 weeks'].flatMap((span) =>
      suggestDays(span, hand),
    );
  }
  const reading = interpret(hand, crew, typed);
  const label = (day: Day): string => `${sayDay(day, crew.today)} (${typed})`.slice(0, 100);
  switch (reading.verdict) {
    case 'read':
      return [{ label: label(reading.day), value: reading.day }];
    case 'ask':
      return reading.options.map(({ day }) => ({ label: label(day), value: `=${day}` }));
    case 'refuse':
      return [];
  }
}

function interpret(hand: Hand, { settings, days }: Crew, typed: string): DateReading {
  return readDate(typed, {
    now: wallTime(hand.clock.nowMs(), settings.zone),
    zone: settings.zone,
    locale: dateLocale(settings.country),
    direction: 'future',
    workingDays: days,
  });
}

function sayReading(typed: string, { day, assumed }: DateReading & { verdict: 'read' }, today: Day): string {
  const said = `“${typed}” read as ${sayDay(day, today)}`;
  return assumed === undefined ? `${said}.` : `${said}. ${assumed}`;
}
