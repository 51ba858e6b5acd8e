import type { LineOption, LineReading } from './line-reading.ts';
import type { LineAmount } from './take-apart.ts';

/** Ends the reading of a line with a question or a refusal, from wherever it comes up. */
export class NotRead extends Error {
  override readonly name = 'NotRead';
  readonly outcome: Exclude<LineReading, { verdict: 'read' }>;

  constructor(outcome: Exclude<LineReading, { verdict: 'read' }>) {
    super(outcome.verdict === 'ask' ? outcome.question : outcome.problem);
    this.outcome = outcome;
  }
}

export const doubt = (question: string, typed: readonly string[]): NotRead =>
  new NotRead({ verdict: 'ask', question, options: typed.map(option) });

/** A question that gives way to that of another kind. */
export const faintDoubt = (question: string, typed: string): NotRead =>
  new NotRead({ verdict: 'ask', question, options: [option(typed)], faint: true });

export const refusal = (problem: string): NotRead => new NotRead({ verdict: 'refuse', problem });

export const option = (typed: string): LineOption => ({ label: typed, typed });

/** The line with one amount written otherwise. */
export function withAmount(
  text: string,
  { start, end }: Pick<LineAmount, 'start' | 'end'>,
  instead: string,
): string {
  return `${text.slice(0, start)}${instead}${text.slice(end)}`.replace(/\s+/g, ' ').trim();
}
