import type { Day } from '../../core/time.ts';
import { UserError } from '../../core/user-error.ts';
import type { TeamRecord } from '../team-record.ts';
import { type Bottle, type FluidCase, type FluidMove, plainGrade } from './fluid.ts';
import { litresOf, type SayLitres } from './say-fluid.ts';

/** What is left of a litre figure: tenths of a millilitre, so that sums come out even. */
const tidy = (litres: number): number => Math.round(litres * 1e4) / 1e4;

/** Over this share of what it takes a case is asked about. */
const OVER_SHARE = 1.02;

interface Doing {
  readonly by: string;
  readonly on: Day;
  readonly note?: string | undefined;
  /** What the car's distance stood at. */
  readonly distanceKm?: number | undefined;
}

export interface Pouring extends Doing {
  readonly volumeL: number;
  /** The grade in the bottle; the case's own where nobody said another. */
  readonly grade: string | undefined;
  /** What was said to more than fits: it is overfilled, it takes that much, or it was drained first. */
  readonly over: 'ask' | 'all' | 'takes' | 'drained';
  /** What was said to another grade than the case's: poured all the same, or the case's own after all. */
  readonly mismatch: 'ask' | 'poured' | 'own';
}

interface Moved {
  readonly value: { readonly fluidCase: FluidCase; readonly move: FluidMove };
  readonly said: string;
}

/**
 * Pours into a case, out of the bottles of that grade on the shelf, opened ones first.
 *
 * @throws UserError 'which-one' about `over` when it is more than fits, about `mismatch` when it is another grade.
 */
export function pour(record: TeamRecord, caseId: number, pouring: Pouring): Moved {
  const found = caseOf(record, caseId);
  const grade = gradeOf(found, pouring);
  const volumeL = tidy(pouring.volumeL);
  if (volumeL <= 0)
    throw new UserError('out-of-range', 'volume: nothing is no pour. Nothing was changed. Type e.g. 5.6 L.');
  const before = pouring.over === 'drained' && found.inL > 0 ? drained(record, found, pouring) : found;
  const inAfterL = tidy(before.inL + volumeL);
  if (inAfterL > found.capacityL * OVER_SHARE) {
    if (pouring.over === 'ask') throw overfilled(before, volumeL, inAfterL, litresOf(record));
    if (pouring.over !== 'all') record.fluids.correctCase({ ...before, capacityL: inAfterL });
  }
  const fromShelfL = takeFromShelf(record, found.buildId, grade, volumeL, pouring.on);
  const move = record.fluids.move({
    ...doing(pouring),
    caseId,
    kind: 'poured',
    grade,
    volumeL,
    fromShelfL,
    inAfterL,
  });
  const value = { fluidCase: caseOf(record, caseId), move };
  return { value, said: `${litresOf(record)(volumeL)} ${grade} poured into ${found.name}` };
}

/**
 * Drains a case, whole or by so much.
 *
 * @throws UserError 'already-done' when there is nothing in it, 'out-of-range' when there is less in it than that.
 */
export function drain(record: TeamRecord, caseId: number, volumeL: number | undefined, how: Doing): Moved {
  const found = caseOf(record, caseId);
  if (found.inL === 0) {
    throw new UserError(
      'already-done',
      `By the record there is nothing in ${found.name}. Nothing was changed. /fluid poured notes what is in it.`,
    );
  }
  const say = litresOf(record);
  const out = tidy(volumeL ?? found.inL);
  if (out <= 0 || out > found.inL * OVER_SHARE) {
    throw new UserError(
      'out-of-range',
      `volume: ${found.name} holds ${say(found.inL)} by the record, so ${say(out)} cannot come out. Nothing was changed. Leave volume out for all of it.`,
    );
  }
  const move = record.fluids.move({
    ...doing(how),
    caseId,
    kind: 'drained',
    grade: found.grade,
    volumeL: out,
    fromShelfL: 0,
    inAfterL: Math.max(0, tidy(found.inL - out)),
  });
  const value = { fluidCase: caseOf(record, caseId), move };
  return { value, said: `${found.name} drained: ${say(out)} ${found.grade}` };
}

/** Bottles bought: as many of a size of a grade. */
export function buy(
  record: TeamRecord,
  bought: {
    readonly buildId: number;
    readonly count: number;
    readonly sizeL: number;
    readonly grade: string;
    readonly on: Day;
  },
): { readonly value: readonly Bottle[]; readonly said: string } {
  const { buildId, count, grade, on } = bought;
  const sizeL = tidy(bought.sizeL);
  const value = Array.from({ length: count }, () =>
    record.fluids.addBottle({ buildId, grade, sizeL, boughtOn: on }),
  );
  return { value, said: `bought: ${count} × ${litresOf(record)(sizeL)} ${grade}` };
}

/** @throws UserError 'stale-message' when a button names a case that is no longer there. */
export function caseOf(record: TeamRecord, id: number): FluidCase {
  const found = record.fluids.findCase(id);
  if (found !== undefined) return found;
  throw new UserError('stale-message', 'That case is no longer in the record. /fluid list shows what is.');
}

function drained(record: TeamRecord, found: FluidCase, how: Doing): FluidCase {
  return drain(record, found.id, undefined, how).value.fluidCase;
}

function gradeOf(found: FluidCase, { grade, mismatch }: Pouring): string {
  if (grade === undefined || plainGrade(grade) === plainGrade(found.grade) || mismatch === 'own')
    return found.grade;
  if (mismatch === 'poured') return grade;
  throw new UserError(
    'which-one',
    `${found.name} takes ${found.grade}, and ${grade} was said. Nothing is noted yet. Which is in it?`,
    {
      field: 'mismatch',
      choices: [
        { label: `${grade}, all the same`.slice(0, 80), value: 'poured' },
        { label: `It was ${found.grade}`.slice(0, 80), value: 'own' },
      ],
    },
  );
}

function overfilled(
  { name, inL, capacityL }: FluidCase,
  volumeL: number,
  inAfterL: number,
  say: SayLitres,
): UserError {
  const holds = inL > 0 ? ` and holds ${say(inL)}` : '';
  return new UserError(
    'which-one',
    `${name} takes ${say(capacityL)}${holds}: ${say(volumeL)} more makes ${say(inAfterL)}. Nothing is noted yet. How is it?`,
    {
      field: 'over',
      choices: [
        ...(inL > 0 ? [{ label: 'It was drained first', value: 'drained' }] : []),
        { label: `It takes ${say(inAfterL)}`, value: 'takes' },
        { label: `It is overfilled with ${say(inAfterL)}`, value: 'all' },
      ],
    },
  );
}

/** @returns how much came off the shelf: all of it, or what there was. */
function takeFromShelf(record: TeamRecord, buildId: number, grade: string, volumeL: number, on: Day): number {
  let wanted = volumeL;
  for (const bottle of record.fluids.shelf(buildId)) {
    if (plainGrade(bottle.grade) !== plainGrade(grade) || wanted <= 0) continue;
    const taken = Math.min(bottle.leftL, wanted);
    record.fluids.take(bottle.id, tidy(bottle.leftL - taken), on);
    wanted = tidy(wanted - taken);
  }
  return tidy(volumeL - wanted);
}

const doing = ({ by, on, note, distanceKm }: Doing) => ({
  movedOn: on,
  byName: by,
  note: note ?? null,
  distanceKm: distanceKm ?? null,
});
