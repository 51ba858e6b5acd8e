import { buildHere } from '../../bot/crew.ts';
import type { Hand } from '../../bot/hand.ts';
import { readAs } from '../../bot/quantity-option.ts';
import { UserError } from '../../core/user-error.ts';
import { findJob } from '../../records/jobs/find-job.ts';
import { findPart } from '../../records/parts/find-part.ts';
import type { Kind } from '../../records/readings/kinds.ts';
import type { Condition } from '../../records/stages/stage.ts';
import { likeNames, plain } from '../../records/suppliers/supplier.ts';
import { caseHere } from '../fluids/fluids.ts';
import { kindsHere } from '../readings/readings.ts';
import { stageFactsHere, stageMeant } from './stage-names.ts';

/** What a stage is to ask for, as typed; one of the first six. */
export interface AskTyped {
  readonly said?: string | undefined;
  readonly job?: string | undefined;
  readonly part?: string | undefined;
  readonly fluid?: string | undefined;
  readonly reading?: string | undefined;
  readonly temporary?: string | undefined;
  readonly min?: string | undefined;
  readonly max?: string | undefined;
  readonly states?: string | undefined;
  readonly fresh_days: number;
  readonly undo_before?: string | undefined;
  readonly proof: boolean;
}

const EXAMPLE = 'e.g. said:"brake lights seen" or reading:"oil temperature" max:"120 C"';

/**
 * The condition that the options make.
 *
 * @throws UserError 'bad-input' unless exactly one thing is asked for; or about a name that fits nothing or several.
 */
export function conditionTyped(hand: Hand, typed: AskTyped): Condition {
  const { said, job, part, fluid, reading, temporary } = typed;
  const given = [said, job, part, fluid, reading, temporary].filter((one) => one !== undefined);
  if (given.length !== 1) {
    throw new UserError(
      'bad-input',
      `Give one thing to ask for: said, job, part, fluid, reading or temporary, ${EXAMPLE}. Nothing was changed.`,
    );
  }
  const proof = typed.proof ? { proof: true } : {};
  if (said !== undefined) return { kind: 'said', what: said, ...proof };
  if (job !== undefined) return { kind: 'job', jobId: findJob(jobsHere(hand), job).id, ...proof };
  if (part !== undefined) return { kind: 'part', ...partMeant(hand, part), ...proof };
  if (fluid !== undefined)
    return { kind: 'fluid', case: caseHere(hand, fluid, 'fluid').name, alsoCalled: [], ...proof };
  if (temporary !== undefined) return temporaryTyped(hand, temporary, typed.undo_before);
  return { ...readingTyped(hand, reading ?? '', typed), ...proof };
}

const jobsHere = (hand: Hand) => {
  const build = buildHere(hand);
  return build === undefined ? [] : hand.record.jobs.ofBuild(build.id);
};

function partMeant(hand: Hand, typed: string): { readonly partId: number | null; readonly name: string } {
  const build = buildHere(hand);
  if (build === undefined) return { partId: null, name: typed };
  try {
    const { id, name } = findPart(hand.record, build.id, typed);
    return { partId: id, name };
  } catch (error) {
    if (!(error instanceof UserError) || error.code !== 'not-found') throw error;
    return { partId: null, name: typed };
  }
}

function temporaryTyped(hand: Hand, word: string, before: string | undefined): Condition {
  const stage = before === undefined ? null : stageMeant(stageFactsHere(hand), before, 'undo_before');
  return { kind: 'measure', word, signs: [], undoneBefore: stage?.key ?? null };
}

function readingTyped(
  hand: Hand,
  typed: string,
  { min, max, states, fresh_days: freshDays }: AskTyped,
): Condition & { readonly kind: 'reading' } {
  const kind = kindMeant(hand, typed);
  const limit = (field: 'min' | 'max', text: string | undefined): number | null =>
    text === undefined ? null : limitIn(kind, field, text);
  const [low, high] = [limit('min', min), limit('max', max)];
  if (low !== null && high !== null && low > high) {
    throw new UserError('bad-input', `min: ${min ?? ''} is above max: ${max ?? ''}. Nothing was changed.`);
  }
  const said = (states ?? '').split(/[,;]/).map((state) => plain(state));
  return {
    kind: 'reading',
    reading: kind.name,
    states: said.filter((state) => state !== '').toSorted(),
    min: low,
    max: high,
    freshDays,
  };
}

function limitIn({ field, unit, name }: Kind, option: string, text: string): number {
  if (field !== null) return readAs(option, field, text).value;
  const figure = Number(text.replace(unit, '').replace(',', '.').trim());
  if (Number.isFinite(figure)) return figure;
  throw new UserError(
    'bad-input',
    `${option}: ${name} is counted in ${unit}, so type a figure. Nothing was changed.`,
  );
}

function kindMeant(hand: Hand, typed: string): Kind {
  const kinds = kindsHere(hand);
  const exact = kinds.find(({ name }) => plain(name) === plain(typed));
  if (exact !== undefined) return exact;
  const byWord = kinds.filter(({ words }) => words.some((word) => plain(word) === plain(typed)));
  const near = byWord.length > 0 ? byWord : kinds.filter(({ name }) => likeNames(typed, [name]).length > 0);
  const [only, another] = near;
  if (byWord.length === 1 && only !== undefined && another === undefined) return only;
  if (near.length > 0) {
    throw new UserError('which-one', `reading: which is “${typed}”?`, {
      field: 'reading',
      choices: near.slice(0, 5).map(({ name }) => ({ label: name, value: name })),
    });
  }
  throw new UserError(
    'not-found',
    `reading: no kind is called "${typed}". Nothing was changed. Known: ${kinds
      .slice(0, 12)
      .map(({ name }) => name)
      .join(', ')} and more; /reading shows them.`,
  );
}
