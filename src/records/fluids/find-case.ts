import { type Choice, UserError } from '../../core/user-error.ts';
import { likeNames, plain } from '../suppliers/supplier.ts';
import { whichOne } from '../which-one.ts';
import type { FluidCase } from './fluid.ts';
import type { SayLitres } from './say-fluid.ts';

/**
 * The case meant by its name as the crew types it, or by `#2`.
 *
 * @throws UserError 'not-found' naming those that are noted, 'which-one' about `field` when several fit or one nearly does.
 */
export function findCase(cases: readonly FluidCase[], typed: string, field = 'case'): FluidCase {
  const number = /^\s*#\s*(\d{1,9})\s*$/.exec(typed)?.[1];
  const numbered = cases.find(({ id }) => String(id) === number);
  if (numbered !== undefined) return numbered;
  const [only, another] = casesNamed(cases, typed);
  if (only !== undefined && another === undefined) return only;
  if (only !== undefined)
    throw whichCase(`Several cases fit "${typed}". Which one?`, casesNamed(cases, typed), field);
  const near = cases.filter(({ name }) => likeNames(typed, [name]).length > 0);
  if (near.length > 0) throw whichCase(`No case is called "${typed}". Is this the one?`, near, field);
  throw new UserError('not-found', noCase(cases, typed));
}

/** Cases of exactly this name, or else those whose name holds it or is held by it. */
export function casesNamed(cases: readonly FluidCase[], typed: string): readonly FluidCase[] {
  const wanted = plain(typed);
  const same = cases.filter(({ name }) => plain(name) === wanted);
  if (same.length > 0 || wanted.length < 3) return same;
  return cases.filter(({ name }) => plain(name).includes(wanted) || wanted.includes(plain(name)));
}

export const whichCase = (question: string, cases: readonly FluidCase[], field: string): UserError =>
  whichOne(
    question,
    cases.map(({ id, name, grade }) => ({ label: `${name} (${grade})`.slice(0, 80), value: `#${id}` })),
    field,
  );

function noCase(cases: readonly FluidCase[], typed: string): string {
  const how = '/fluid case name:sump grade:10W-40 capacity:"5.6 L" notes one';
  return cases.length === 0
    ? `No case of this build is noted yet. Nothing was changed. ${how}.`
    : `No case is called "${typed}". Nothing was changed. Noted: ${cases.map(({ name }) => name).join(', ')}. ${how}.`;
}

export function suggestCases(cases: readonly FluidCase[], typed: string, say: SayLitres): readonly Choice[] {
  return cases
    .filter(({ name, grade }) => plain(`${name} ${grade}`).includes(plain(typed)))
    .map(({ name, grade, capacityL }) => ({
      label: `${name} (${say(capacityL)} ${grade})`.slice(0, 100),
      value: name,
    }));
}
