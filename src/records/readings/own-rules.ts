import { UserError } from '../../core/user-error.ts';
import type { TeamRecord } from '../team-record.ts';
import { type Kind, requireNewKind } from './kinds.ts';
import type { OwnKind, OwnLimit } from './reading.ts';
import { capital, sayConditions } from './say.ts';
import { sayLimits, sayOrigin } from './verdict.ts';

/** Makes a kind of the crew's own. @throws UserError when its name is taken. */
export function makeKind(
  record: TeamRecord,
  buildId: number,
  kind: { readonly name: string; readonly unit: string },
): { readonly value: OwnKind; readonly said: string } {
  requireNewKind(kind.name, record.readingRules.ownKinds(buildId));
  const made = record.readingRules.addKind({ buildId, ...kind });
  return { value: made, said: `kind of reading "${made.name}" made, in ${made.unit}` };
}

/** Takes a kind of the crew's own off; its readings stay. @throws UserError when there is none of that name. */
export function dropKind(
  record: TeamRecord,
  buildId: number,
  name: string,
): { readonly value: OwnKind; readonly said: string } {
  const own = record.readingRules.ownKinds(buildId);
  const found = own.find((kind) => kind.name.toLowerCase() === name.toLowerCase());
  if (found === undefined) {
    const known = own.map((kind) => kind.name).join(', ');
    throw new UserError(
      'not-found',
      `"${name}" is no kind of your own${known === '' ? ': there is none yet' : `. Yours: ${known}`}. Built-in kinds stay.`,
    );
  }
  record.readingRules.removeKind(found.id);
  return { value: found, said: `kind of reading "${found.name}" taken off` };
}

/** Puts a limit down; one of the same kind, conditions and origin gives way to it. */
export function setLimit(
  record: TeamRecord,
  limit: Omit<OwnLimit, 'id'>,
): {
  readonly value: { readonly limit: OwnLimit; readonly before: OwnLimit | undefined };
  readonly said: string;
} {
  const same = (other: OwnLimit): boolean =>
    other.kind === limit.kind &&
    other.origin === limit.origin &&
    sayConditions(other.conditions) === sayConditions(limit.conditions);
  const before = record.readingRules.limits(limit.buildId).find(same);
  if (before !== undefined) record.readingRules.removeLimit(before.id);
  const made = record.readingRules.addLimit(limit);
  const was = before === undefined ? '' : `, was "${before.typed}"`;
  return {
    value: { limit: made, before },
    said: `limit of ${limit.kind}: ${limit.typed} (${sayOrigin(limit.origin)})${was}`,
  };
}

/** @throws UserError 'not-found' when it is gone already. */
export function dropLimit(
  record: TeamRecord,
  buildId: number,
  id: number,
): { readonly value: OwnLimit; readonly said: string } {
  const limit = record.readingRules.findLimit(id);
  if (limit === undefined || limit.buildId !== buildId) {
    throw new UserError(
      'not-found',
      'That limit is not there any more. /reading limits shows those in force.',
    );
  }
  record.readingRules.removeLimit(id);
  return { value: limit, said: `limit of ${limit.kind} taken off: ${limit.typed}` };
}

/** "Oil pressure at least 3 bar (2000 rpm, hot)". */
export function sayOwnLimit(limit: OwnLimit, kind: Kind, shownIn: string): string {
  const ends = {
    ...(limit.min === null ? {} : { min: limit.min }),
    ...(limit.max === null ? {} : { max: limit.max }),
  };
  const at = sayConditions(limit.conditions);
  return `${capital(limit.kind)} ${sayLimits(ends, kind.unit, shownIn)}${at === '' ? '' : ` (${at})`}`;
}
