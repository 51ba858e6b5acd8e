import { z } from 'zod';
import { defineCommand } from '../src/bot/command.ts';
import { threadCatalogue } from '../src/calc/threads/catalogue.ts';
import type { FittingFacts, PracticeFacts } from '../src/calc/threads/facts.ts';
import {
  type Candidate,
  type Identification,
  identifyThread,
  type Suspect,
} from '../src/calc/threads/identify.ts';
import { crestLimits, type Shown, threadsToShow } from '../src/calc/threads/near.ts';
import { diameterReading, joinPitches, pitchReading } from '../src/calc/threads/reading-error.ts';
import type { Seat, ThreadReadings } from '../src/calc/threads/readings.ts';
import type { ThreadFamily } from '../src/calc/threads/thread.ts';
import { threadAnswer } from '../src/calc/threads/thread-answer.ts';
import { threadName } from '../src/calc/threads/wording.ts';
import { INCH_MM } from '../src/calc/units/definitions.ts';
import type { Answer, Drawing } from '../src/core/reply.ts';
import { UserError } from '../src/core/user-error.ts';
import { readThreadSize } from '../src/phrases/threads/size.ts';
import type { ThreadSize } from '../src/phrases/threads/typed.ts';
import type { ThreadBand } from '../src/pictures/thread-data.ts';
import { threadPicture } from '../src/pictures/thread-picture.ts';
import { type Fitting, fittingKinds, fittings } from '../src/tables/fittings.ts';
import {
  commonWeight,
  fittingTorques,
  foundOn,
  spannerSize,
  tapDrill,
} from '../src/tables/thread-practice.ts';
import { threadTables } from '../src/tables/threads.ts';

const threads = threadCatalogue(threadTables);
const threadById = new Map(threads.map((thread) => [thread.id, thread]));
const fittingsOf = Map.groupBy(fittings, ({ threadId }) => threadId);
const seatOf = ({ kind }: Fitting): Seat => fittingKinds.get(kind)?.seat ?? 'none';
/** Every thread of the tables, as identification weighs it. */
export const suspects: readonly Suspect[] = threads.map((thread) => ({
  thread,
  weight: commonWeight(thread),
  seats: new Set((fittingsOf.get(thread.id) ?? []).map(seatOf)),
}));
const standardPitchesMm = [...new Set(threads.map(({ pitchMm }) => pitchMm))];

const input = z.object({
  size: z
    .string()
    .min(1)
    .max(1_000)
    .describe('Diameter and pitch: 21.9 x 1.5, 0.746in 16tpi, 3/4-16, 13.1 x 15/10'),
  side: z.enum(['male', 'female']).optional().describe('Measured over the crests, or across the bore'),
  within: z.number().min(0.005).max(2).optional().describe('What the diameter could be out by, mm'),
  taper: z.enum(['tapered', 'parallel']).optional().describe('Whether the diameter grows along the thread'),
  angle: z.enum(['55', '60']).optional().describe('Flank angle, degrees'),
  seat: z
    .enum(['cone37', 'cone45', 'face-oring', 'boss-oring', 'washer', 'none'])
    .optional()
    .describe('What seals it: a cone, an O-ring in the face or the port, a washer, nothing'),
});

export type ThreadInput = z.output<typeof input>;

/**
 * Which thread the readings mean, in words and as data.
 *
 * @throws UserError when the size cannot be read, means several things, or contradicts an option.
 */
export function threadReply(asked: ThreadInput): Answer {
  const size = readThreadSize(asked.size);
  const seat = asked.seat ?? seatNamed(size);
  const { readings, pitchesDisagree } = readingsFrom(size, asked, seat);
  const found = identifyThread(suspects, readings);
  const answer = threadAnswer(found, {
    readings,
    readAs: sayBack(size, readings),
    pitchesDisagree,
    unusedWords: size.unused,
    practiceOf: (candidate) => practiceOf(candidate, seat),
  });
  return { ...answer, drawings: drawingsOf(found, readings, size, answer.result) };
}

/** The reading among the published threads; a thread known by name alone has no place to be drawn at. */
function drawingsOf(
  found: Identification,
  readings: ThreadReadings,
  size: ThreadSize,
  title: string,
): readonly Drawing[] {
  const { diameter, pitch, named, seat } = readings;
  if (diameter === undefined) return [];
  const shown = threadsToShow(found, suspects, diameter, readings);
  const nominal = size.diameter?.inchName === true ? named?.nominal : undefined;
  return [
    threadPicture({
      title,
      diameter,
      ...(pitch === undefined ? {} : { pitch }),
      ...(nominal === undefined ? {} : { named: nominal }),
      bands: shown.map((each) => bandOf(each, seat)),
    }),
  ];
}

function bandOf({ thread, side, stands }: Shown, seat: Seat | undefined): ThreadBand {
  const { minMm, maxMm } = crestLimits(thread, side);
  const fits = practiceOf({ thread }, seat).fittings.map(({ id }) => id);
  return {
    name: threadName(thread),
    ...(fits.length === 0 ? {} : { note: fits.map((id) => id.replaceAll(' ', '\u00a0')).join(', ') }),
    side,
    fromMm: minMm,
    toMm: maxMm,
    pitchMm: thread.pitchMm,
    tpi: thread.tpi,
    tapered: thread.tapered,
    fits: stands,
  };
}

function readingsFrom(
  size: ThreadSize,
  asked: ThreadInput,
  seat: Seat | undefined,
): { readonly readings: ThreadReadings; readonly pitchesDisagree: boolean } {
  const side = agreed('side', asked.side, size.side);
  const taper = agreed('taper', asked.taper, size.taperSaid);
  const named = isReading(size, asked) ? undefined : namedByFitting(size);
  const pitch = joinPitches(size.pitches.map((given) => pitchReading(given, standardPitchesMm)));
  const diameter =
    size.diameter === undefined
      ? undefined
      : diameterReading(size.diameter, {
          withinMm: asked.within,
          female: side === 'female',
          inchName: size.diameter.inchName,
        });
  const taperRate =
    size.taper === undefined || diameter === undefined
      ? undefined
      : {
          perMm: Math.abs(size.taper.otherMm - diameter.mm) / size.taper.overMm,
          plusMinus: (Math.SQRT2 * diameter.plusMinusMm) / size.taper.overMm,
        };
  return {
    pitchesDisagree: pitch?.agree === false,
    readings: {
      ...(diameter === undefined ? {} : { diameter }),
      ...(named === undefined ? {} : { named }),
      ...(pitch === undefined ? {} : { pitch: { mm: pitch.mm, plusMinusMm: pitch.plusMinusMm } }),
      ...(side === undefined ? {} : { side }),
      ...(taper === undefined ? {} : { taper }),
      ...(taperRate === undefined ? {} : { taperRate }),
      ...(asked.angle === undefined ? {} : { angleDeg: asked.angle === '55' ? 55 : 60 }),
      ...(seat === undefined ? {} : { seat }),
    },
  };
}

/** @throws UserError when the size text and the option say different things. */
function agreed<Value extends string>(
  option: string,
  asked: Value | undefined,
  said: Value | undefined,
): Value | undefined {
  if (asked !== undefined && said !== undefined && asked !== said) {
    throw new UserError(
      'bad-input',
      `The size says ${said} and the option ${option} says ${asked}. Leave one out.`,
    );
  }
  return asked ?? said;
}

/** A whole number of millimetres said to be right within so much was measured: it is no name. */
function isReading({ diameter, named }: ThreadSize, { within }: ThreadInput): boolean {
  const wholeMm = diameter !== undefined && !diameter.inchName && named?.families === undefined;
  return wholeMm && (within !== undefined || diameter.plusMinusMm !== undefined);
}

/** `jic -6` names the thread of that fitting; without a dash number only its seat is known. */
function namedByFitting(size: ThreadSize): ThreadReadings['named'] {
  const { fitting } = size;
  if (fitting?.dash === undefined) return size.named;
  const found = fittings.find(({ kind, dash }) => kind === fitting.system && dash === fitting.dash);
  const thread = found === undefined ? undefined : threadById.get(found.threadId);
  if (thread === undefined) {
    const known = fittings.filter(({ kind }) => kind === fitting.system).map(({ dash }) => `-${dash}`);
    throw new UserError(
      'not-found',
      `There is no dash ${fitting.dash} of that kind. Known: ${known.join(', ')}.`,
    );
  }
  return { nominal: thread.nominal, families: [thread.family], series: [thread.series] };
}

function seatNamed({ fitting }: ThreadSize): Seat | undefined {
  return fitting === undefined ? undefined : fittingKinds.get(fitting.system)?.seat;
}

/** What the handbooks say of a candidate; a seat that was seen leaves only the fittings that have it. */
function practiceOf({ thread }: Pick<Candidate, 'thread'>, seat: Seat | undefined): PracticeFacts {
  const possible = (fittingsOf.get(thread.id) ?? []).filter(
    (each) => seat === undefined || seatOf(each) === seat,
  );
  return {
    foundOn: foundOn(thread.id),
    spanner: spannerSize(thread),
    drill: tapDrill(thread.id),
    fittings: possible.map(fittingFacts),
  };
}

function fittingFacts(fitting: Fitting): FittingFacts {
  const kind = fittingKinds.get(fitting.kind);
  return {
    id: fitting.id,
    kind: fitting.kind,
    kindName: kind?.name ?? fitting.kind,
    standard: kind?.standard ?? '',
    tubeOdIn: fitting.tubeOdIn,
    oRing: fitting.oRing,
    washers: fitting.washers,
    spannerMm: fitting.spannerMm,
    source: fitting.source,
    torques: fittingTorques(fitting.id),
  };
}

const FAMILY_WORDS: Readonly<Record<ThreadFamily, string>> = {
  'iso-metric': 'metric',
  unified: 'Unified',
  'bsp-parallel': 'G',
  'bsp-taper': 'R',
  npt: 'NPT',
  whitworth: 'Whitworth',
};

/** How the text was understood, so that a slip is seen. */
function sayBack(size: ThreadSize, { diameter, pitch, side, named }: ThreadReadings): string {
  const family = (named?.families ?? []).map((each) => FAMILY_WORDS[each]);
  const across = diameter === undefined ? '' : `${diameter.mm.toFixed(2)} mm across`;
  return [
    ...(named?.nominal === undefined ? [] : [`the size ${named.nominal} ${family.join(' or ')}`.trim()]),
    ...(across === '' || size.diameter?.inchName === true ? [] : [across]),
    ...(size.taper === undefined
      ? []
      : [`${size.taper.otherMm.toFixed(2)} mm across ${size.taper.overMm} mm further on`]),
    ...(pitch === undefined
      ? ['no pitch']
      : [`pitch ${pitch.mm.toFixed(3)} mm (${(INCH_MM / pitch.mm).toFixed(1)} tpi)`]),
    ...(side === undefined ? [] : [side]),
    ...(size.lengthMm === undefined ? [] : [`${size.lengthMm} mm long`]),
  ].join(', ');
}

export default defineCommand({
  description: 'Which thread is this, how sure, what goes in it and what seals it',
  example: '/thread size:"13.9 x 1.5" side:male',
  input,
  run: threadReply,
});
