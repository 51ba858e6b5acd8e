import type { DateOption } from './reading.ts';

export type Season = 'christmas' | 'several days';

/** What a rule of the grammar made of a phrase, before it is judged whether such a day may stand in the field. */
export type Find =
  | {
      readonly kind: 'day';
      readonly date: Temporal.PlainDate;
      /** The year was typed, so a far-off day is no slip. */
      readonly yearSaid?: boolean;
      /** Wall time, where one was given. */
      readonly time?: Temporal.PlainTime;
      /** An elapsed span ("in 36 hours") ends at an instant, which wall time alone cannot name when clocks change. */
      readonly instantMs?: number;
      readonly assumed?: string;
      /** The name also stands for the days around it: of Christmas one day is meant most, of Easter none. */
      readonly season?: Season;
    }
  | {
      readonly kind: 'ask';
      readonly question: string;
      readonly options: readonly DateOption[];
      /** Asked because the day is far off, which a weekday beside it does not settle. */
      readonly far?: boolean;
    }
  | { readonly kind: 'no'; readonly problem: string };

export type DayFind = Extract<Find, { kind: 'day' }>;

export function dayOf(date: Temporal.PlainDate, more: Omit<Partial<DayFind>, 'kind' | 'date'> = {}): DayFind {
  return { kind: 'day', date, ...more };
}

export function askOf(
  question: string,
  ...dates: readonly Temporal.PlainDate[]
): Extract<Find, { kind: 'ask' }> {
  return { kind: 'ask', question, options: dates.map((date) => ({ day: date.toString() })) };
}

export function noDay(problem: string): Find {
  return { kind: 'no', problem };
}

/** The fair readings behind any find, for a question that is about several of them. */
export function optionsOf(find: Find): readonly DateOption[] {
  switch (find.kind) {
    case 'day':
      return [{ day: find.date.toString(), ...(find.time && { time: clockText(find.time) }) }];
    case 'ask':
      return find.options;
    case 'no':
      return [];
  }
}

/** Turns a find into a question about it: an approximate, earliest or conditional day is not a day. */
export function doubt(find: Find, question: string): Find {
  return find.kind === 'no' ? find : { kind: 'ask', question, options: optionsOf(find) };
}

/** Goes on from a day. From a question it goes on with each answer, so that the buttons lead where the words do. */
export function andThen(find: Find, next: (day: DayFind) => Find): Find {
  if (find.kind === 'day') return next(find);
  if (find.kind === 'no') return find;
  const options = find.options.flatMap(({ day }) => optionsOf(next(dayOf(Temporal.PlainDate.from(day)))));
  return { ...find, options };
}

/** Two or more readings of the same words, or two days named: equal ones are one, different ones a question. */
export function merge(finds: readonly Find[], question: string): Find {
  const possible = finds.filter((find) => find.kind !== 'no');
  const [first, ...rest] = possible.length > 0 ? possible : finds;
  if (first === undefined) return noDay('That names no day. Type a date such as 4 Dec, or a weekday.');
  if (rest.every((find) => sameFind(first, find))) return first;
  const options = new Map(
    possible.flatMap(optionsOf).map((option) => [`${option.day} ${option.time ?? ''}`, option]),
  );
  return { kind: 'ask', question, options: [...options.values()] };
}

function sameFind(a: Find, b: Find): boolean {
  return a.kind === b.kind && JSON.stringify(optionsOf(a)) === JSON.stringify(optionsOf(b));
}

export function clockText(time: Temporal.PlainTime): string {
  return time.toString({ smallestUnit: 'minute' });
}
