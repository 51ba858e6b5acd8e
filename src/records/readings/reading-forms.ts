import type { Form } from '../../core/reply.ts';
import { sayOwn } from './log-readings.ts';
import type { Reading } from './reading.ts';
import { sayConditions } from './say.ts';

/** What, how much, at what: for a thumb. */
export function readingForm(): Form {
  return {
    kind: 'form',
    title: 'Log a reading',
    does: { command: 'reading', action: 'log', args: {} },
    fields: [
      { name: 'what', label: 'What', hint: 'oil pressure, compression, battery, odo', required: true },
      {
        name: 'value',
        label: 'Value, with its unit',
        hint: '4.2 bar, or 12.1 12.0 11.8 11.9 bar',
        required: true,
      },
      { name: 'conditions', label: 'Taken at', hint: '2500 rpm 92C hot, cyl 3, at rest', required: false },
      { name: 'note', label: 'Note', required: false },
      { name: 'link', label: 'Link to a photo', hint: 'https://…', required: false },
    ],
  };
}

export function correctForm(reading: Reading): Form {
  const at = sayConditions(reading.conditions, reading.typed);
  return {
    kind: 'form',
    title: `Correct #${reading.id}, ${reading.kind}`.slice(0, 45),
    does: { command: 'reading', action: 'correct-done', args: { reading: reading.id } },
    fields: [
      {
        name: 'value',
        label: 'What it should have been',
        value: sayOwn(reading),
        hint: at === '' ? 'with its unit' : `taken at ${at}`.slice(0, 100),
        required: true,
      },
    ],
  };
}
