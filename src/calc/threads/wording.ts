import type { Thread } from './thread.ts';

/** The designation as it is written on a drawing: "M22 × 1.5", "7/8-14 UNF", "G 1/2". */
export function threadName(thread: Pick<Thread, 'id' | 'family' | 'nominal' | 'pitchMm'>): string {
  return thread.family === 'iso-metric' ? `M${thread.nominal} × ${thread.pitchMm}` : thread.id;
}

/** A probability in words; the number always stands beside it. */
export function certaintyWords(probability: number): string {
  if (probability >= 0.98) return 'almost certain';
  if (probability >= 0.9) return 'very likely';
  if (probability >= 0.7) return 'likely';
  if (probability >= 0.5) return 'more likely than not';
  return 'possible';
}

/** Per cent without false digits: "98 %", "over 99 %", "under 1 %". */
export function percent(probability: number): string {
  if (probability > 0.99) return 'over 99 %';
  if (probability < 0.01) return 'under 1 %';
  return `${Math.round(probability * 100)} %`;
}

/** "A", "A or B", "A, B or C". */
export function listed(names: readonly string[]): string {
  const last = names.at(-1) ?? '';
  return names.length < 2 ? last : `${names.slice(0, -1).join(', ')} or ${last}`;
}
