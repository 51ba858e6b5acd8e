import type { GuideTest, Outcome } from '../../calc/guide/guide.ts';
import { type Choice, UserError } from '../../core/user-error.ts';
import { plain } from '../suppliers/supplier.ts';

/**
 * The outcome meant by what somebody types at a test: a measured value ("9.1 V"), its words, or part of them.
 *
 * @throws UserError 'which-one' when it fits none or several: then all are offered.
 */
export function matchOutcome(test: GuideTest, typed: string, field: string): Outcome {
  const wanted = plain(typed);
  const same = test.outcomes.filter(({ id, label }) => plain(label) === wanted || id === wanted);
  const measured = same.length > 0 ? undefined : byValue(test, typed);
  if (measured !== undefined) return measured;
  const inside = same.length > 0 ? same : test.outcomes.filter(({ label }) => hasWords(label, wanted));
  const [only, ...more] = inside;
  if (only !== undefined && more.length === 0) return only;
  throw new UserError('which-one', `“${typed}”: which of these was it? ${test.test}.`, {
    field,
    choices: (only === undefined ? test.outcomes : inside).map(outcomeChoice),
  });
}

export const outcomeChoice = ({ id, label }: Outcome): Choice => ({ label, value: id });

const hasWords = (label: string, wanted: string): boolean => {
  const words = plain(label).split(/[^\p{L}\p{N}]+/u);
  return wanted.split(/[^\p{L}\p{N}]+/u).every((word) => words.some((one) => one.startsWith(word)));
};

/** The outcome whose range a value lies in; only where the unit is the test's own, or left out. */
function byValue({ outcomes }: GuideTest, typed: string): Outcome | undefined {
  const match = /^[^\d-]{0,12}(-?\d+(?:[.,]\d+)?)\s*([a-zµλ]{0,5})\b/iu.exec(typed.trim());
  if (match === null) return undefined;
  const [, digits = '', unit = ''] = match;
  const value = Number(digits.replace(',', '.'));
  const [only, ...more] = outcomes.filter(
    ({ reads }) =>
      reads !== null &&
      (unit === '' || unit.toLowerCase() === reads.unit.toLowerCase()) &&
      value >= (reads.from ?? -Infinity) &&
      value < (reads.below ?? Infinity),
  );
  return more.length === 0 ? only : undefined;
}
