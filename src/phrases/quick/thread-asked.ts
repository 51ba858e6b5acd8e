import type { Line } from './line.ts';
import { answer, ask, type QuickAnswer, type QuickReading } from './reading.ts';
import type { SizeRead } from './thread-words.ts';
import { has, PARTS, vocabulary } from './vocabulary.ts';

/** Words by which a pitch is asked for, or said. */
export const PITCH = vocabulary('pitch steigung pas paso tpi');
/** Larger names are of engines and cars. */
const LARGEST_NAMED = 36;

/** The one thread that two bare numbers can be, to be said back with its units. */
export function spelledOut({ read }: SizeRead): QuickReading | undefined {
  const [pitch] = read.pitches;
  if (read.diameter === undefined || pitch === undefined) return undefined;
  const text = `${read.diameter.text} mm x ${pitch.text} ${pitch.how === 'tpi' ? 'tpi' : 'mm'}`;
  return ask('thread', 'A diameter and a pitch?', [{ label: text, text }]);
}

/** A pitch says half of it. */
export function pitchAlone({ amounts, words, text }: Line): QuickReading | undefined {
  const [only, ...more] = amounts;
  const isPitch = only !== undefined && (only.unit === 'tpi' || words.some((word) => PITCH.has(word)));
  if (!isPitch || more.length > 0 || words.some((word) => PARTS.has(word))) return undefined;
  const pitch = only.unit === '' ? `${only.figures} mm` : text.trim();
  return ask('thread', 'How much does it measure across?', [
    {
      label: `A diameter with ${pitch}`.slice(0, 34),
      text: `… x ${only.figures} ${only.unit || 'mm'}`,
      open: true,
    },
  ]);
}

/** The drill before the tap. A bare number is asked about: M8 and number 8 are two threads. */
export function drillFor(
  { read, text }: SizeRead,
  numbers: QuickAnswer['numbers'],
): QuickReading | undefined {
  const { named, diameter } = read;
  if (named?.nominal === undefined) return undefined;
  if (named.families === undefined && diameter?.inchName !== true)
    return ask('thread', `Is M${named.nominal} meant?`, [
      { label: `Drill for M${named.nominal}`, text: `tap drill m${named.nominal}` },
    ]);
  return answer('thread', 'tap-drill', numbers, { size: text });
}

/** A thread that was only named: its pitch is asked for, or what is to be known of it is open. */
export function withoutPitch(line: Line, { read, text, diameterMm }: SizeRead): QuickReading | undefined {
  const { named } = read;
  const name = named?.nominal;
  // a size and its series are the whole name
  if (name !== undefined && (named?.series ?? []).length > 0)
    return answer('thread', 'thread-pitch', diameterMm === undefined ? {} : { diameterMm }, { size: text });
  if (named?.families?.[0] !== 'iso-metric' || name === undefined || Number(name) > LARGEST_NAMED)
    return undefined;
  if (has(line, PITCH))
    return answer('thread', 'thread-pitch', { diameterMm: diameterMm ?? Number(name) }, { size: text });
  if (line.words.some((word) => PARTS.has(word))) return undefined;
  return {
    verdict: 'ask',
    kind: 'thread',
    question: `M${name}: what is to be known of it?`,
    candidates: [
      { kind: 'thread', label: `Pitch and drill of M${name}`, text: `pitch of m${name}` },
      { kind: 'torque', label: `Torque of M${name}, class 8.8`, text: `m${name} 8.8` },
      { kind: 'torque', label: `Torque of M${name}, class 10.9`, text: `m${name} 10.9` },
    ],
  };
}
