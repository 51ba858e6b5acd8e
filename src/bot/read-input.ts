import type { z } from 'zod';
import { UserError } from '../core/user-error.ts';

/**
 * Reads what was given into the shape a handler declares.
 *
 * @throws UserError 'bad-input' naming each option that does not fit, and what would.
 */
export function readInput<Input extends z.ZodObject>(input: Input, given: unknown): z.output<Input> {
  const read = input.safeParse(given, { error: inWords });
  if (read.success) return read.data;
  const lines = read.error.issues.map(({ path, message }) => `${path.map(String).join('.')}: ${message}`);
  throw new UserError('bad-input', `${lines.join('. ')}. Nothing was changed.`);
}

/** What would fit; undefined where the declaration's own words say it. */
function inWords(issue: z.core.$ZodRawIssue): string | undefined {
  const ofText = 'origin' in issue && issue.origin === 'string';
  if (issue.code === 'too_small') {
    if (ofText && issue.minimum === 1) return 'nothing was typed';
    return `must be at least ${String(issue.minimum)}${ofText ? ' characters' : ''}`;
  }
  if (issue.code === 'too_big')
    return `must be at most ${String(issue.maximum)}${ofText ? ' characters' : ''}`;
  if (issue.code === 'invalid_value') return `must be one of ${issue.values?.map(String).join(', ')}`;
  if (issue.code === 'invalid_type') {
    if (issue.input === undefined) return 'is missing';
    return `must be a ${issue.expected === 'int' ? 'whole number' : issue.expected}`;
  }
  return undefined;
}
