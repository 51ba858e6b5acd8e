import { UserError } from '../../core/user-error.ts';
import type { Thread } from '../threads/thread.ts';
import { threadName } from '../threads/wording.ts';

/** What was read of a bolt's size: a name, or a diameter said in inches or mm, and perhaps its pitch. */
export interface BoltSize {
  readonly diameter?: { readonly mm: number; readonly inchName: boolean } | undefined;
  readonly named?:
    | {
        readonly nominal?: string;
        readonly families?: readonly string[];
        readonly series?: readonly string[];
      }
    | undefined;
  readonly pitches: readonly { readonly mm: number }[];
}

export interface KnownBolt {
  readonly thread: Thread;
  /** No pitch was said: the coarse one was taken. */
  readonly pitchAssumed: boolean;
}

const EXAMPLES = 'Type it like M10, M10x1.25, 3/8-16 or 7/16 UNF.';
/** How far a typed pitch may be from the one it means, mm. */
const PITCH_SLACK_MM = 0.03;

/**
 * The bolt of the published tables that a size means; coarse thread where no pitch was said.
 *
 * @throws UserError 'bad-input' for a size that names no bolt, 'not-found' for one no table has, with the pitches it has.
 */
export function knownBolt(size: BoltSize, threads: readonly Thread[]): KnownBolt {
  const { named, diameter, pitches } = size;
  const nominal = named?.nominal;
  if (nominal === undefined) {
    throw new UserError('bad-input', `That names no size of bolt. ${EXAMPLES}`);
  }
  const family = familyOf(named?.families, diameter);
  const made = threads.filter((thread) => thread.family === family && thread.nominal === nominal);
  const [pitch] = pitches;
  const wanted = (named?.series ?? []).length === 0 ? undefined : named?.series;
  const found =
    pitch === undefined
      ? made.find(({ series }) => series === (wanted?.[0] ?? (family === 'unified' ? 'UNC' : 'coarse')))
      : made.find(({ pitchMm }) => Math.abs(pitchMm - pitch.mm) <= PITCH_SLACK_MM);
  if (found === undefined) {
    const known = made.map(threadName).join(', ');
    throw new UserError(
      'not-found',
      known === ''
        ? `No bolt of that size is in the tables. ${EXAMPLES}`
        : `Not in the tables. There are ${known}.`,
    );
  }
  return { thread: found, pitchAssumed: pitch === undefined && wanted === undefined };
}

function familyOf(
  families: readonly string[] | undefined,
  diameter: BoltSize['diameter'],
): 'iso-metric' | 'unified' {
  if (families === undefined) return diameter?.inchName === true ? 'unified' : 'iso-metric';
  if (families.includes('iso-metric')) return 'iso-metric';
  if (families.includes('unified')) return 'unified';
  throw new UserError(
    'bad-input',
    `Strength classes are known for metric and Unified bolts only. ${EXAMPLES}`,
  );
}
