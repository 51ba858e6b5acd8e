import { readDate } from './dates/dates.ts';
import type { DateContext, DateReading } from './dates/reading.ts';

/** When and where days are asked about. */
export type DayContext = DateContext;

/** A day of the calendar that is asked for, or asked about. */
export type DayAsked =
  /** Which day it is, as it was typed and as it was read. */
  | { readonly asks: 'date' | 'days-until' | 'holiday'; readonly typed: string; readonly found: DateReading }
  | { readonly asks: 'next-holiday' };

const ASKED =
  /^(?:when(?:'s| is|s| was| will)?|what(?:'s| is)? (?:the )?(?:date|day|week)(?: of the week)?(?: is| was| will| would)?|date (?:of|in|for)|which (?:date|day|week) is|wann (?:ist|war)|welche[rs]? (?:datum|tag) (?:ist|hat|war)|was f(?:ü|ue)r ein (?:datum|tag) ist) (?<day>.+?)(?: be| fall)?[ ?]*$/u;
const HOLIDAY =
  /^is (?<day>.+?) (?:a |an )?(?:bank|public|national)? ?(?:holiday|feiertag)[ ?]*$|^ist (?<tag>.+?) (?:ein )?feiertag[ ?]*$/u;
const NEXT_HOLIDAY =
  /^(?:when(?:'s| is|s) (?:the )?)?(?:next|n(?:ä|ae)chster) (?:bank holiday|public holiday|holiday|feiertag)[ ?]*$|^wann ist der n(?:ä|ae)chste feiertag[ ?]*$/u;
/** How long it is to a day. */
const UNTIL =
  /^(?:how (?:many|long)(?: (?:working |work )?days| weeks)?(?: is it| are there)? (?:un)?till?|how (?:many|long)(?: (?:working |work )?days)? (?:to|before)|wie ?viele? (?:arbeits|werk)?tage (?:noch )?bis(?: zum)?) (?<day>.+?)[ ?]*$/u;
/** A feast and its year. */
const OF_A_YEAR = /^\p{L}[\p{L} ']+ 20\d\d[ ?]*$/u;

/** A count from a day, or a day of a week by its number: nobody says that of an appointment. */
const COUNTED =
  /^(?:\d+|an?|one|two|three|four|five|six|eight|ten|ein(?:en?)?|zwei|drei|vier|f(?:ü|ue)nf|zehn) .*\p{L} (?:from|after|before|ab|nach|vor|since) \S.*$|^\p{L}+ (?:of|in|der) (?:week|kw|woche) ?\d+[ ?]*$/u;

/** A day that has been is asked for as well as one to come. */
const PAST = /\b(?:was|war|last|letzte[rnm]?)\b/u;

/**
 * The day that a tidied line in small letters asks for: "when is good friday 2027", "5 working days from 22 dec", "is 28 dec a
 * bank holiday". Undefined for any other line: a day by itself is an appointment.
 */
export function readDayAsked(text: string, context: DayContext): DayAsked | undefined {
  if (NEXT_HOLIDAY.test(text)) return { asks: 'next-holiday' };
  const holiday = HOLIDAY.exec(text)?.groups;
  const about = holiday?.['day'] ?? holiday?.['tag'];
  if (about !== undefined) return dayOf(about, 'holiday', context);
  const asked = ASKED.exec(text)?.groups?.['day'];
  if (asked !== undefined) return dayOf(asked, 'date', context, PAST.test(text) ? 'any' : 'future');
  const until = UNTIL.exec(text)?.groups?.['day'];
  if (until !== undefined) return dayOf(until, 'days-until', context);
  if (OF_A_YEAR.test(text)) {
    const feast = dayOf(text.replace(/[ ?]+$/u, ''), 'date', context);
    return feast.found.verdict === 'read' ? feast : undefined;
  }
  return COUNTED.test(text) ? dayOf(text.replace(/[ ?]+$/u, ''), 'date', context) : undefined;
}

function dayOf(
  typed: string,
  asks: 'date' | 'days-until' | 'holiday',
  context: DayContext,
  direction: DayContext['direction'] = 'future',
): Extract<DayAsked, { readonly found: DateReading }> {
  return { asks, typed, found: readDate(typed, { ...context, direction }) };
}
