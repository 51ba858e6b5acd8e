/** Dates and times in words, in the reader's own zone. */

const LANGUAGE = 'en-GB';
const format = (options: Intl.DateTimeFormatOptions) => new Intl.DateTimeFormat(LANGUAGE, options);

const clock = format({ hour: '2-digit', minute: '2-digit' });
const day = format({ weekday: 'long', day: 'numeric', month: 'long' });
const dayOfYear = format({ weekday: 'long', day: 'numeric', month: 'long', year: 'numeric' });

/** Formats of `<t:SECONDS:style>` by the letter of their style, as the bot API documents them. */
const STYLES: Readonly<Record<string, Intl.DateTimeFormat>> = {
  t: clock,
  T: format({ hour: '2-digit', minute: '2-digit', second: '2-digit' }),
  d: format({ day: '2-digit', month: '2-digit', year: 'numeric' }),
  D: format({ day: 'numeric', month: 'long', year: 'numeric' }),
  f: format({ day: 'numeric', month: 'long', year: 'numeric', hour: '2-digit', minute: '2-digit' }),
  F: format({ dateStyle: 'full', timeStyle: 'short' }),
  s: format({ day: '2-digit', month: '2-digit', year: 'numeric', hour: '2-digit', minute: '2-digit' }),
  S: format({ dateStyle: 'short', timeStyle: 'medium' }),
};

/** Largest instant a Date can hold, in seconds (ECMA-262, 21.4.1.1). */
const LAST_SECOND = 8.64e12;

/** Units of the relative style with their length in seconds, longest first. */
const SPANS = [
  ['year', 31_557_600],
  ['month', 2_629_800],
  ['day', 86_400],
  ['hour', 3_600],
  ['minute', 60],
] as const;

/** `07:42` */
export function clockTime(timestamp: string): string {
  return clock.format(new Date(timestamp));
}

/** `Monday 21 December`, with the year when it is not this one. */
export function dayName(timestamp: string, nowMs: number): string {
  const date = new Date(timestamp);
  const sameYear = date.getFullYear() === new Date(nowMs).getFullYear();
  return (sameYear ? day : dayOfYear).format(date).replaceAll(',', '');
}

/** Seconds since 1970 in the style of this letter; `undefined` outside the calendar. `R` is counted from `nowMs`. */
export function stamp(seconds: number, style: string, nowMs: number): string | undefined {
  if (!Number.isFinite(seconds) || Math.abs(seconds) > LAST_SECOND) return undefined;
  if (style === 'R') return fromNow(seconds - nowMs / 1000);
  return (STYLES[style] ?? STYLES['f'])?.format(new Date(seconds * 1000));
}

/** `in 3 days`, `2 hours ago` */
function fromNow(seconds: number): string {
  const words = new Intl.RelativeTimeFormat(LANGUAGE, { numeric: 'auto' });
  const size = Math.abs(seconds);
  const [unit, length] = SPANS.find((span) => size >= span[1]) ?? (['second', 1] as const);
  return words.format(Math.trunc(seconds / length), unit);
}
