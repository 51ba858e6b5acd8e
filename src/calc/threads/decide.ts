import type { Candidate } from './identify.ts';
import type { Side, Thread } from './thread.ts';
import { listed } from './wording.ts';

/** One measurement that tells candidates apart, and which answer leaves which of them. */
export interface Decider {
  readonly what: 'side' | 'pitch' | 'taper' | 'angle' | 'diameter' | 'same';
  /** To be read out at the car. */
  readonly ask: string;
  readonly answers: readonly { readonly reads: string; readonly leaves: readonly string[] }[];
}

/** Pitches closer than this share are not told apart with a rule. */
const PITCH_STEP = 0.01;
/** What a rule shows at the end of a span, mm. */
const RULE_MM = 0.5;
/** More choices than this are not read out. */
const MOST_NAMED = 4;

/**
 * The measurements that separate the candidates, most decisive first: which side it is, pitch over many threads, taper,
 * flank angle, then the crest diameter. Each is listed only while it still splits something.
 */
export function decidingMeasurements(candidates: readonly Candidate[]): readonly Decider[] {
  if (candidates.length < 2) return [];
  const deciders = [bySide, byPitch, byTaper, byAngle, byDiameter]
    .map((decide) => decide(candidates))
    .filter((decider) => decider !== undefined)
    .sort((a, b) => largest(a) - largest(b));
  const chosen: Decider[] = [];
  let groups: readonly (readonly Candidate[])[] = [candidates];
  for (const decider of deciders) {
    const split = groups.flatMap((group) => splitBy(group, decider));
    if (split.length > groups.length) {
      chosen.push(decider);
      groups = split;
    }
  }
  return chosen.length > 0 ? chosen : [sameThread(candidates)];
}

/** Candidates left over in the worst answer; fewer is more decisive. */
function largest({ answers }: Decider): number {
  return Math.max(...answers.map(({ leaves }) => leaves.length));
}

function splitBy(group: readonly Candidate[], { answers }: Decider): readonly (readonly Candidate[])[] {
  return answers
    .map(({ leaves }) => group.filter(({ thread }) => leaves.includes(thread.id)))
    .filter((part) => part.length > 0);
}

/** Only while the side was not said can candidates stand on both. */
function bySide(candidates: readonly Candidate[]): Decider | undefined {
  const on = (wanted: Side) =>
    candidates.filter(({ side }) => side === wanted).map(({ thread }) => thread.id);
  const [male, female] = [on('male'), on('female')];
  if (male.length === 0 || female.length === 0) return undefined;
  return {
    what: 'side',
    ask: 'Was that over the crests of a male thread, or across the bore of a female one?',
    answers: [
      { reads: 'male', leaves: male },
      { reads: 'female', leaves: female },
    ],
  };
}

function byPitch(candidates: readonly Candidate[]): Decider | undefined {
  const pitches = distinct(candidates.map(({ thread }) => thread.pitchMm));
  if (pitches.length < 2) return undefined;
  const closest = Math.min(...pitches.flatMap((a) => pitches.filter((b) => b > a).map((b) => b - a)));
  const threads = closest * 10 >= RULE_MM ? 10 : 20;
  return {
    what: 'pitch',
    ask: `Lay a rule along ${threads === 10 ? 'ten' : 'twenty'} threads: ${
      pitches.length > MOST_NAMED
        ? `type what you read like \`${threads * 1.5}/${threads}\`.`
        : `${listed(pitches.map((pitch) => `${(pitch * threads).toFixed(1)} mm`))}?`
    }`,
    answers: pitches.map((pitch) => ({
      reads: `${(pitch * threads).toFixed(1)} mm`,
      leaves: idsOf(candidates, (thread) => Math.abs(thread.pitchMm - pitch) < PITCH_STEP * pitch),
    })),
  };
}

function byTaper(candidates: readonly Candidate[]): Decider | undefined {
  const tapered = idsOf(candidates, (thread) => thread.tapered);
  const parallel = idsOf(candidates, (thread) => !thread.tapered);
  if (tapered.length === 0 || parallel.length === 0) return undefined;
  return {
    what: 'taper',
    ask: femaleOf(candidates)
      ? 'Does the bore taper? Measure it at the mouth and 10 mm in: 0.6 mm less is a taper, the same is parallel.'
      : 'Does it taper? Measure over the crests at two places 10 mm apart: 0.6 mm more is a taper, the same is parallel.',
    answers: [
      { reads: 'tapered', leaves: tapered },
      { reads: 'parallel', leaves: parallel },
    ],
  };
}

function byAngle(candidates: readonly Candidate[]): Decider | undefined {
  const sharp = idsOf(candidates, (thread) => thread.formAngleDeg === 55);
  const wide = idsOf(candidates, (thread) => thread.formAngleDeg === 60);
  if (sharp.length === 0 || wide.length === 0) return undefined;
  return {
    what: 'angle',
    ask: 'Flank angle 55° or 60°? Hold a gauge of each against the thread and look for light; 55° also has rounded crests.',
    answers: [
      { reads: '55°', leaves: sharp },
      { reads: '60°', leaves: wide },
    ],
  };
}

/** Crest diameter, where the published ranges do not overlap. */
function byDiameter(candidates: readonly Candidate[]): Decider | undefined {
  const bands = candidates
    .map(({ thread, side }) => ({ thread, side, range: rangeOf(thread, side) }))
    .sort((a, b) => a.range.minMm - b.range.minMm);
  const groups: { readonly ids: string[]; maxMm: number; minMm: number }[] = [];
  for (const { thread, range } of bands) {
    const last = groups.at(-1);
    if (last !== undefined && range.minMm <= last.maxMm) {
      last.ids.push(thread.id);
      last.maxMm = Math.max(last.maxMm, range.maxMm);
    } else {
      groups.push({ ids: [thread.id], minMm: range.minMm, maxMm: range.maxMm });
    }
  }
  if (groups.length < 2) return undefined;
  const answers = groups.map(({ ids, minMm, maxMm }) => ({
    reads: `${minMm.toFixed(2)} to ${maxMm.toFixed(2)} mm`,
    leaves: ids,
  }));
  return {
    what: 'diameter',
    ask: `Measure ${femaleOf(candidates) ? 'across the bore' : 'over the crests'} again, to 0.02 mm, on clean threads: ${listed(answers.map(({ reads }) => reads))}?`,
    answers,
  };
}

function sameThread(candidates: readonly Candidate[]): Decider {
  const ids = candidates.map(({ thread }) => thread.id);
  return {
    what: 'same',
    ask: 'No measurement separates these: they are the same thread under two names, and either mates.',
    answers: [{ reads: 'the same', leaves: ids }],
  };
}

function rangeOf(thread: Thread, side: Side): { readonly minMm: number; readonly maxMm: number } {
  return side === 'male' ? thread.limits.major : thread.limits.minor;
}

function femaleOf(candidates: readonly Candidate[]): boolean {
  return candidates[0]?.side === 'female';
}

function idsOf(candidates: readonly Candidate[], wanted: (thread: Thread) => boolean): readonly string[] {
  return candidates.filter(({ thread }) => wanted(thread)).map(({ thread }) => thread.id);
}

/** Values that differ by more than the step, ascending. */
function distinct(values: readonly number[]): readonly number[] {
  const kept: number[] = [];
  for (const value of [...values].sort((a, b) => a - b)) {
    const last = kept.at(-1);
    if (last === undefined || value - last > PITCH_STEP * value) kept.push(value);
  }
  return kept;
}
