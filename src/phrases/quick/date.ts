import { sayDay } from '../../core/time.ts';
import { readDayAsked } from '../day-asked.ts';
import type { Line } from './line.ts';
import { answer, ask, type QuickContext, type QuickReading } from './reading.ts';

/** The same question about another day. */
const ASKED_OF = {
  date: (day: string) => `what date is ${day}`,
  'days-until': (day: string) => `how many days until ${day}`,
  holiday: (day: string) => `is ${day} a bank holiday`,
} as const;

/** Whoever it is that starts, comes or is free on a day is no day of the calendar. */
const SOMEBODY = /^(?:he|she|it|they|we|you|i|er|sie|es|wir|ihr|du|il|elle|on|tu)\b ./u;

/** A day of the calendar that is asked for. */
export function readDateLine(line: Line, { dates }: QuickContext): QuickReading | undefined {
  const asked = dates && readDayAsked(line.text, dates);
  if (dates === undefined || asked === undefined) return undefined;
  if (asked.asks === 'date' && SOMEBODY.test(asked.typed)) return undefined;
  if (asked.asks === 'next-holiday') return answer('date', 'holiday', {}, {});
  const { found, typed, asks } = asked;
  switch (found.verdict) {
    case 'read':
      return answer('date', asks, { date: found.day }, { day: typed });
    case 'ask': {
      const today = dates.now.toPlainDate().toString();
      const whole = (day: string): string => ASKED_OF[asks](day);
      return ask(
        'date',
        found.question,
        found.options.map(({ day }) => ({ label: sayDay(day, today), text: whole(day) })),
      );
    }
    case 'refuse':
      return undefined;
  }
}
