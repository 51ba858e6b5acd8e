import { crewOf } from '../../bot/crew.ts';
import type { Hand } from '../../bot/hand.ts';
import { readAs } from '../../bot/quantity-option.ts';
import type { Answer } from '../../core/reply.ts';
import { UserError } from '../../core/user-error.ts';
import { readFluidText } from '../../phrases/fluid-text.ts';
import { casesNamed, findCase, whichCase } from '../../records/fluids/find-case.ts';
import { type FluidCase, lackingL, plainGrade } from '../../records/fluids/fluid.ts';
import { drain, type Pouring, pour } from '../../records/fluids/move-fluid.ts';
import { litresOf } from '../../records/fluids/say-fluid.ts';
import { caseHere, casesHere, litres, mine, reportCase, shelfLeft, spelled, upper } from './fluids.ts';

export interface PouredTyped {
  readonly what: string;
  readonly case?: string | undefined;
  readonly volume?: string | undefined;
  readonly grade?: string | undefined;
  readonly over: Pouring['over'];
  readonly mismatch: Pouring['mismatch'];
  readonly note?: string | undefined;
}

/** "5.6 L 10W-40 into sump". */
export function pouredFluid(hand: Hand, typed: PouredTyped): Answer {
  const text = readFluidText(typed.what);
  const { fluidCase, grade } = poursInto(hand, typed.case ?? text.into, typed.grade ?? text.grade);
  const volume = typed.volume ?? text.volume;
  if (volume === undefined) {
    throw new UserError(
      'bad-input',
      `what: how much went into ${fluidCase.name}? Nothing was noted. Type e.g. ${litresOf(hand.record)(lackingL(fluidCase) || fluidCase.capacityL)} into ${fluidCase.name}.`,
    );
  }
  return pourInto(hand, fluidCase.id, { ...typed, volumeL: litres('volume', volume) * text.count, grade });
}

/** Pours into a known case and shows it. */
export function pourInto(
  hand: Hand,
  caseId: number,
  how: Pick<Pouring, 'volumeL' | 'grade' | 'over' | 'mismatch' | 'note'>,
): Answer {
  const { today } = crewOf(hand);
  mine(hand, caseId);
  const changed = hand.change((record) => pour(record, caseId, { ...how, by: hand.who.name, on: today }));
  const { fluidCase, move } = changed.value;
  const elsewhere = move.volumeL - move.fromShelfL;
  const shelf =
    elsewhere > 0.005
      ? move.fromShelfL === 0
        ? `Nothing of ${move.grade} was on the shelf by the record.`
        : `${litresOf(hand.record)(elsewhere)} more than the shelf held by the record.`
      : `Off the shelf; ${shelfLeft(hand, move.grade)}.`;
  return reportCase(hand, { ...changed, value: fluidCase }, shelf);
}

export interface DrainedTyped {
  readonly what: string;
  readonly volume?: string | undefined;
  readonly distance?: string | undefined;
  readonly note?: string | undefined;
}

/** "sump", or "2.3 L from cooling system". */
export function drainedFluid(hand: Hand, typed: DrainedTyped): Answer {
  const text = readFluidText(typed.what);
  // "sump" alone is no grade but the case; "cooling system, all of it" has its name in it
  const named = text.into ?? (text.volume === undefined ? undefined : text.grade) ?? typed.what;
  const fluidCase = caseHere(hand, named, 'what');
  const volume = typed.volume ?? text.volume;
  return drainCase(hand, fluidCase.id, {
    volumeL: volume === undefined ? undefined : litres('volume', volume),
    distanceKm:
      typed.distance === undefined ? undefined : readAs('distance', 'distance', typed.distance).value,
    note: typed.note,
  });
}

export function drainCase(
  hand: Hand,
  caseId: number,
  how: {
    readonly volumeL?: number | undefined;
    readonly distanceKm?: number | undefined;
    readonly note?: string | undefined;
  } = {},
): Answer {
  const { today } = crewOf(hand);
  mine(hand, caseId);
  const changed = hand.change((record) =>
    drain(record, caseId, how.volumeL, { ...how, by: hand.who.name, on: today }),
  );
  return reportCase(hand, { ...changed, value: changed.value.fluidCase });
}

export interface ChangedTyped extends Omit<PouredTyped, 'what' | 'case'> {
  readonly case: string;
  readonly distance?: string | undefined;
}

/** An oil change: drained and filled again as one change, so that it never stands empty in the record. */
export function changedFluid(hand: Hand, typed: ChangedTyped): Answer {
  const found = caseHere(hand, typed.case);
  const { today } = crewOf(hand);
  const volumeL = typed.volume === undefined ? found.capacityL : litres('volume', typed.volume);
  const grade = typed.grade === undefined ? undefined : spelled(hand, typed.grade);
  const distanceKm =
    typed.distance === undefined ? undefined : readAs('distance', 'distance', typed.distance).value;
  const how = { by: hand.who.name, on: today, note: typed.note, distanceKm };
  const changed = hand.change((record) => {
    // what does not go in again did not come out: cooler and filter head keep theirs
    if (found.inL > 0) drain(record, found.id, Math.min(volumeL, found.inL), how);
    const { value } = pour(record, found.id, { ...how, ...typed, volumeL, grade });
    return {
      value: value.fluidCase,
      said: `${found.name} changed: ${litresOf(hand.record)(volumeL)} ${value.move.grade}`,
    };
  });
  return reportCase(hand, changed, `${upper(shelfLeft(hand, changed.value.grade))}.`);
}

/** The case meant, by its name, or by the grade that only it takes. */
function poursInto(
  hand: Hand,
  into: string | undefined,
  gradeTyped: string | undefined,
): { readonly fluidCase: FluidCase; readonly grade: string | undefined } {
  const cases = casesHere(hand);
  if (into !== undefined)
    return { fluidCase: findCase(cases, into), grade: gradeTyped && spelled(hand, gradeTyped) };
  // "sump 5.6 L": what is not the volume may be the case's name
  const [byName, another] = gradeTyped === undefined ? [] : casesNamed(cases, gradeTyped);
  if (byName !== undefined && another === undefined) return { fluidCase: byName, grade: undefined };
  const grade = gradeTyped && spelled(hand, gradeTyped);
  const takers =
    grade === undefined ? cases : cases.filter((one) => plainGrade(one.grade) === plainGrade(grade));
  const among = takers.length > 0 ? takers : cases;
  const [only, more] = among;
  if (only === undefined) return { fluidCase: findCase(cases, gradeTyped ?? 'sump'), grade };
  if (more === undefined && takers.length > 0) return { fluidCase: only, grade };
  throw whichCase('Into which case was it poured?', among, 'case');
}
