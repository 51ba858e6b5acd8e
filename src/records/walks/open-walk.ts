import { UserError } from '../../core/user-error.ts';
import type { TeamRecord } from '../team-record.ts';
import type { Walk } from './walk.ts';

/** A change of a search, and how the history tells it. */
export interface Moved {
  readonly value: Walk;
  readonly said: string;
}

/** @throws UserError 'stale-message' when a button names one that was taken back. */
export function walkOf(record: TeamRecord, walkId: number): Walk {
  const walk = record.walks.find(walkId);
  if (walk !== undefined) return walk;
  throw new UserError('stale-message', 'That search is no longer in the record. /fault list shows what is.');
}

/** @throws UserError 'not-now' when somebody has closed it, 'stale-message' when it was taken back. */
export function openWalk(record: TeamRecord, walkId: number): Walk {
  const walk = walkOf(record, walkId);
  if (walk.state !== 'finished') return walk;
  throw new UserError(
    'not-now',
    `${walk.endedBy ?? ''} has closed that search. Nothing was changed. /fault start begins a new one.`,
  );
}

/** A button asks for what an update has taken out of the guide. */
export const outOfGuide = (): UserError =>
  new UserError(
    'stale-message',
    'The guide no longer asks that. Nothing was changed. /fault resume shows what it asks now.',
  );
