import { type Choice, UserError } from '../../core/user-error.ts';
import { likeNames, plain } from '../suppliers/supplier.ts';
import { whichOne } from '../which-one.ts';
import { isInPlace, type Measure } from './measure.ts';

/**
 * The measure meant by `#3`, or by its words; those in place before those undone.
 *
 * @throws UserError 'not-found', or 'which-one' when several fit or one only nearly does.
 */
export function findMeasure(measures: readonly Measure[], typed: string, field = 'measure'): Measure {
  const number = /^\s*#?\s*(\d{1,9})\s*$/.exec(typed)?.[1];
  const numbered = measures.find(({ id }) => String(id) === number);
  if (numbered !== undefined) return numbered;
  const inPlace = measures.filter(isInPlace);
  const wanted = plain(typed);
  for (const among of [inPlace, measures]) {
    const exact = among.filter(({ what }) => plain(what) === wanted);
    const found = exact.length > 0 ? exact : among.filter(({ what }) => plain(what).includes(wanted));
    const [only, another] = found;
    if (only !== undefined && another === undefined) return only;
    if (only !== undefined)
      throw which(`Several temporary measures fit "${typed}". Which one?`, found, field);
  }
  const words = wanted.split(' ').filter((word) => word.length > 2);
  const near = inPlace.filter(
    ({ what }) => likeNames(typed, [what]).length > 0 || words.some((word) => plain(what).includes(word)),
  );
  if (near.length > 0)
    throw which(`No temporary measure is called "${typed}". Is this the one?`, near, field);
  throw new UserError(
    'not-found',
    inPlace.length === 0
      ? 'Nothing temporary is in place. /temporary put writes something down.'
      : `No temporary measure is called "${typed}". Nothing was changed. In place: ${inPlace.map(({ what }) => what).join(', ')}.`,
  );
}

const which = (question: string, found: readonly Measure[], field: string): UserError =>
  whichOne(question, found.map(measureChoice), field);

export const measureChoice = ({ id, what }: Measure): Choice => ({
  label: `#${id} ${what}`.slice(0, 80),
  value: `#${id}`,
});

export function suggestMeasures(measures: readonly Measure[], typed: string): readonly Choice[] {
  return measures
    .filter(isInPlace)
    .filter(({ id, what }) => plain(`#${id} ${what}`).includes(plain(typed)))
    .map(measureChoice);
}
