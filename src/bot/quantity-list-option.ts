import { z } from 'zod';
import { UserError } from '../core/user-error.ts';
import type { FieldName } from '../phrases/quantity/fields.ts';
import { type ListReading, readQuantityList } from '../phrases/quantity/read-list.ts';

type Read = Extract<ListReading, { verdict: 'read' }>;

/** An option for a row of readings, `12.1 12 11.8 9.6 bar`, read by `readRow`. */
export const row = (field: FieldName, description: string) =>
  z.string().min(1).max(200).meta({ description, measures: field });

/**
 * A row of readings in the field's base unit.
 *
 * @throws UserError 'which-one' when the unit is missing and nothing tells it; 'bad-input' when it is no row of readings.
 */
export function readRow(
  name: string,
  field: FieldName,
  typed: string,
  bare?: Parameters<typeof readQuantityList>[2],
): Read {
  const reading = readQuantityList(typed, field, bare);
  if (reading.verdict === 'read') return reading;
  if (reading.verdict === 'refuse') {
    throw new UserError(
      'bad-input',
      `${name}: ${reading.why} Type one after the other with the unit at the end, like “12.1 12 11.8 bar”.`,
    );
  }
  throw new UserError('which-one', `${name}: ${reading.question}`, {
    field: name,
    choices: reading.choices.map((each) => ({ label: each, value: each })),
  });
}
