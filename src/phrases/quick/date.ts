import { sayDay } from '../../core/time.ts';
import { readDayAsked } from '../day-asked.ts';
import type { Line } from './line.ts';
import { answer, ask, type QuickContext, type QuickReading } from './reading.ts';

/** A day of the calendar that is asked for. */
export function readDateLine(line: Line, { dates }: QuickContext): QuickReading | undefined {
  const asked = dates && readDayAsked(line.text, dates);
  if (dates === undefined || asked === undefined) return undefined;
  if (asked.asks === 'next-holiday') return answer('date', 'holiday', {}, {});
  const { found, typed, asks } = asked;
  switch (found.verdict) {
    case 'read':
      return answer('date', asks, { date: found.day }, { day: typed });
    case 'ask': {
      const today = dates.now.toPlainDate().toString();
      const whole = (day: string): string =>
        asks === 'holiday' ? `is ${day} a bank holiday` : `what date is ${day}`;
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
