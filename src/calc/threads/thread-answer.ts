import type { JsonObject } from '../../core/json.ts';
import type { Answer, Fact, Item } from '../../core/reply.ts';
import { type Decider, decidingMeasurements } from './decide.ts';
import { type FittingFacts, type PracticeFacts, sourceWords, threadFacts } from './facts.ts';
import type { Candidate, Identification } from './identify.ts';
import type { ThreadReadings } from './readings.ts';
import { certaintyWords, listed, percent, threadName } from './wording.ts';

/** What is known beside the readings when an answer is put into words. */
export interface AnswerContext {
  readonly readings: ThreadReadings;
  /** How the text was understood, to be said back. */
  readonly readAs: string;
  /** Pitch readings that do not agree with each other. */
  readonly pitchesDisagree: boolean;
  readonly unusedWords: readonly string[];
  readonly practiceOf: (candidate: Candidate) => PracticeFacts;
}

/** Puts an identification into words: result, certainty, what to measure next, and what to know about the winner. */
export function threadAnswer(found: Identification, context: AnswerContext): Answer {
  const standing = found.candidates.filter(({ stands }) => stands);
  const best = found.candidates[0];
  const next = nextMeasurements(found, standing, context.readings);
  const caution = cautions(found, context);
  return {
    kind: 'answer',
    subject: 'Thread',
    result: resultLine(found, standing, context.readings),
    certainty: certaintyLine(found, best),
    facts: [
      ...next.map((ask, index): Fact => [index === 0 ? 'Measure next' : 'Then', ask]),
      ...(best === undefined || !hasWinner(found, best)
        ? []
        : threadFacts(best.thread, context.practiceOf(best))),
    ],
    items:
      found.candidates.length > 1 || hopeless(found)
        ? found.candidates.map((each) => candidateItem(each, context))
        : [],
    ...(caution === '' ? {} : { caution }),
    smallPrint: smallPrint(best, context),
    audience: 'crew',
    data: answerData(found, standing, next, context),
  };
}

/** What to order is told only of a thread that stands alone, far ahead, or is the same under another name. */
function hasWinner(found: Identification, best: Candidate): boolean {
  if (hopeless(found)) return false;
  return !found.ambiguous || best.probability >= FAR_AHEAD || sameThread(found);
}

/** A thread of no table is likelier than all the candidates together. */
function hopeless({ noneProbability }: Identification): boolean {
  return noneProbability > 0.5;
}

const SHOWN_IN_LINE = 3;
/** From here on the rest are named after the winner, not beside it. */
const FAR_AHEAD = 0.9;

function shortened(names: readonly string[]): string {
  const more = names.length > SHOWN_IN_LINE ? [`${names.length - SHOWN_IN_LINE} more`] : [];
  return listed([...names.slice(0, SHOWN_IN_LINE), ...more]);
}

function resultLine(
  found: Identification,
  standing: readonly Candidate[],
  { pitch }: ThreadReadings,
): string {
  const [best] = found.candidates;
  if (best === undefined || hopeless(found)) return 'No thread in the tables fits these readings';
  if (!found.ambiguous) return `${threadName(best.thread)}, ${certaintyWords(best.probability)}`;
  const names = standing.map(({ thread }) => threadName(thread));
  if (standing[0] === best && best.probability >= FAR_AHEAD) {
    return `${threadName(best.thread)} is the likeliest; ${shortened(names.slice(1))} would fit too`;
  }
  const why = pitch === undefined ? 'the pitch will tell' : 'the readings cannot separate them';
  return `${shortened(names)}: ${why}`;
}

function certaintyLine(found: Identification, best: Candidate | undefined): string {
  if (best === undefined) return 'Measure again, and check the side: over the crests, or across the bore.';
  if (hopeless(found)) {
    return `The nearest is ${threadName(best.thread)}, ${percent(best.probability)}. Measure again, and check the side.`;
  }
  const none = `none of those listed ${percent(found.noneProbability)}`;
  return `${threadName(best.thread)} ${percent(best.probability)}, ${none}${best.side === 'female' ? '; female' : ''}`;
}

function nextMeasurements(
  found: Identification,
  standing: readonly Candidate[],
  readings: ThreadReadings,
): readonly string[] {
  if (found.ambiguous) return decidingMeasurements(standing).map(({ ask }: Decider) => ask);
  const [best] = standing;
  if (best === undefined || hopeless(found)) {
    return readings.pitch === undefined
      ? ['The pitch: lay a rule along ten threads and type it like `15/10`.']
      : ['The diameter again on clean, unworn threads, and the pitch over ten of them (`15/10`).'];
  }
  if (readings.pitch === undefined && readings.named === undefined) {
    return [`The pitch, to be sure: ten threads should cover ${(best.thread.pitchMm * 10).toFixed(1)} mm.`];
  }
  return [];
}

function candidateItem(candidate: Candidate, context: AnswerContext): Item {
  const { thread, side, probability } = candidate;
  const { fittings } = context.practiceOf(candidate);
  const range = side === 'male' ? thread.limits.major : thread.limits.minor;
  const notes = [
    `${side === 'male' ? 'outside' : 'bore'} ${range.minMm.toFixed(2)} to ${range.maxMm.toFixed(2)} mm`,
    `ten threads ${(thread.pitchMm * 10).toFixed(1)} mm`,
    ...(thread.tapered ? ['taper'] : []),
    ...(fittings.length > 0 ? [fittings.map(({ id }) => id).join(', ')] : []),
  ];
  return { text: `${threadName(thread)}: ${percent(probability)}`, note: notes.join('; ') };
}

function cautions(found: Identification, context: AnswerContext): string {
  const best = found.candidates[0];
  const { readings, pitchesDisagree, practiceOf } = context;
  const said: string[] = [];
  if (pitchesDisagree) {
    said.push(
      'The pitch readings disagree: the thread may be stretched or damaged, or the threads were miscounted.',
    );
  } else if (best !== undefined && !found.ambiguous && stretched(best, readings)) {
    said.push(
      'The pitch is off for this diameter: a stretched bolt reads long near the end. Do not use it again.',
    );
  }
  const practice = best === undefined ? undefined : practiceOf(best);
  if (best !== undefined && carriesFluid(best, practice?.fittings ?? [])) {
    said.push(
      'A thread that screws on need not seal. On fuel, oil or brake lines check the seat too, leak-test before the engine runs, and leave brake parts to the maker’s own.',
    );
  }
  if (found.ambiguous && !sameThread(found))
    said.push('Do not force a mate to find out: near threads strip or crack.');
  return said.join(' ');
}

function sameThread({ candidates }: Identification): boolean {
  return decidingMeasurements(candidates.filter(({ stands }) => stands))[0]?.what === 'same';
}

/** A pitch two standard deviations off and more than 1 % too long, on a thread whose diameter fits. */
function stretched({ thread, probability }: Candidate, { pitch }: ThreadReadings): boolean {
  if (pitch === undefined || probability < 0.3) return false;
  return pitch.mm - thread.pitchMm > Math.max(pitch.plusMinusMm, 0.01 * thread.pitchMm);
}

function carriesFluid({ thread }: Candidate, fittings: readonly FittingFacts[]): boolean {
  return fittings.length > 0 || thread.family.startsWith('bsp') || thread.family === 'npt';
}

function smallPrint(best: Candidate | undefined, context: AnswerContext): readonly string[] {
  const { readings, readAs, unusedWords } = context;
  const { side } = readings;
  return [
    `Read as ${readAs}`,
    ...(unusedWords.length === 0 ? [] : [`Not used: ${unusedWords.join(' ')}`]),
    uncertaintyLine(readings),
    ...(side === undefined && readings.diameter !== undefined
      ? ['Side not said: both were considered. Say male or female to be surer.']
      : []),
    'How common each thread is weighs in: common practice, no source.',
    ...(best?.thread.family === 'npt'
      ? ['The dryseal form NPTF cannot be told from NPT with caliper and gauge.']
      : []),
    ...(best === undefined ? [] : [`Sizes ${sourceWords(best.thread.sources)} (docs/sources.md)`]),
  ];
}

function uncertaintyLine({ diameter, pitch }: ThreadReadings): string {
  const parts = [
    ...(diameter === undefined ? [] : [`the diameter within ±${diameter.plusMinusMm.toFixed(2)} mm`]),
    ...(pitch === undefined ? [] : [`the pitch within ±${pitch.plusMinusMm.toFixed(3)} mm`]),
  ];
  return parts.length === 0
    ? 'A name, not a measurement: measure it before ordering.'
    : `Taken to be right 95 times in 100: ${parts.join(', ')}`;
}

function answerData(
  found: Identification,
  standing: readonly Candidate[],
  next: readonly string[],
  context: AnswerContext,
): JsonObject {
  const { diameter, pitch } = context.readings;
  return {
    candidates: found.candidates.map((candidate) => {
      const { thread, side, probability, stands } = candidate;
      const { fittings } = context.practiceOf(candidate);
      return {
        designation: thread.id,
        probability,
        fittings: fittings.map(({ id }) => id),
        stands,
        side,
        pitchMm: thread.pitchMm,
        majorMm: thread.basic.majorMm,
        minorMm: thread.basic.minorMm,
        crestMinMm: (side === 'male' ? thread.limits.major : thread.limits.minor).minMm,
        crestMaxMm: (side === 'male' ? thread.limits.major : thread.limits.minor).maxMm,
      };
    }),
    noneProbability: found.noneProbability,
    ambiguous: found.ambiguous,
    untabledProbability: found.untabledProbability,
    measureNext: next,
    deciders: decidingMeasurements(standing).map(({ what, answers }) => ({
      what,
      answers: answers.map(({ reads, leaves }) => ({ reads, leaves })),
    })),
    pitchesDisagree: context.pitchesDisagree,
    ...(diameter === undefined ? {} : { diameterMm: diameter.mm, diameterPlusMinusMm: diameter.plusMinusMm }),
    ...(pitch === undefined ? {} : { pitchMm: pitch.mm, pitchPlusMinusMm: pitch.plusMinusMm }),
  };
}
