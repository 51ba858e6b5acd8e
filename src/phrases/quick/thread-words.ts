import { INCH_MM } from '../../calc/units/definitions.ts';
import { type OpenQuestion, UserError } from '../../core/user-error.ts';
import { readThreadSize } from '../threads/size.ts';
import type { ThreadSize } from '../threads/typed.ts';
import { meaningOf } from '../threads/words.ts';
import { PADDING, PARTS } from './vocabulary.ts';

/** A thread's size out of a line, as text for the command and as numbers. */
export interface SizeRead {
  readonly text: string;
  readonly read: ThreadSize;
  readonly diameterMm: number | undefined;
  readonly pitchMm: number | undefined;
  readonly lengthMm: number | undefined;
}

/** Takes words that say nothing of the size out, those that do stay. */
export function sizeText(text: string, ...more: readonly ReadonlySet<string>[]): string {
  return text
    .replace(/[?!]+|\bo2\b/gu, ' ')
    .replace(/\p{L}[\p{L}\p{M}'.]*/gu, (word, at: number, whole: string) => {
      const plain = word.replace(/\.$/u, '');
      const counted = plain === 'threads' && /\d ?$/u.test(whole.slice(0, at));
      if (meaningOf(plain) !== undefined || counted) return word;
      return PADDING.has(plain) || PARTS.has(plain) || more.some((set) => set.has(plain)) ? ' ' : word;
    })
    .replace(/^[\s,:;-]+|[\s,:;-]+$/gu, '')
    .replace(/\s+/gu, ' ');
}

/** The size in a line; the question where it has several fair readings; undefined where there is none. */
export function sizeOrQuestion(
  text: string,
  ...words: readonly ReadonlySet<string>[]
): SizeRead | OpenQuestion | undefined {
  const plain = sizeText(text, ...words);
  try {
    const read = readThreadSize(plain);
    if (read.unused.length > 0) return undefined;
    return {
      text: plain,
      read,
      diameterMm: diameterOf(read),
      pitchMm: read.pitches[0]?.mm,
      lengthMm: read.lengthMm,
    };
  } catch (error) {
    if (error instanceof UserError) return error.question;
    throw error;
  }
}

/** The size in a line, where there is one and it is certain. */
export function readSize(text: string, ...words: readonly ReadonlySet<string>[]): SizeRead | undefined {
  const found = sizeOrQuestion(text, ...words);
  return found !== undefined && 'read' in found ? found : undefined;
}

/** M8 and another diameter: bolts and how many of them, or how long. */
export function otherDiameter({ named, diameter }: ThreadSize): boolean {
  if (named?.families?.[0] !== 'iso-metric' || named.nominal === undefined || diameter === undefined)
    return false;
  return Math.abs(diameter.mm - Number(named.nominal)) > 1;
}

/** Measured, or what the name stands for: #10 is 0.190 in by ASME B1.1, each number 0.013 in more from 0.060. */
function diameterOf({ diameter, named }: ThreadSize): number | undefined {
  if (diameter !== undefined) return diameter.mm;
  const nominal = named?.nominal ?? '';
  if (nominal.startsWith('#')) return (0.06 + 0.013 * Number(nominal.slice(1))) * INCH_MM;
  if (named?.families?.[0] === 'iso-metric') return Number(nominal);
  return undefined;
}
