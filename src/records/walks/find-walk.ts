import { type Choice, UserError } from '../../core/user-error.ts';
import type { TeamRecord } from '../team-record.ts';
import { guideOf } from './guide-book.ts';
import { isOpen, type Walk } from './walk.ts';

/** The searches of a build that go on, the newest first. */
export const openWalks = (record: TeamRecord, buildId: number): readonly Walk[] =>
  record.walks.ofBuild(buildId).filter(isOpen);

/**
 * The search meant: by its number, by words of its symptom, or the only one there is.
 *
 * @throws UserError 'not-found' or 'which-one'.
 */
export function findWalk(
  record: TeamRecord,
  buildId: number | undefined,
  typed: string | undefined,
  field: string,
): Walk {
  const open = buildId === undefined ? [] : openWalks(record, buildId);
  const fitting = typed === undefined ? open : open.filter((walk) => fits(walk, typed));
  const [only, ...more] = fitting;
  if (only !== undefined && more.length === 0) return only;
  if (only !== undefined) {
    throw new UserError('which-one', 'Several searches are going on. Which one?', {
      field,
      choices: fitting.map(walkChoice),
    });
  }
  const going = open.map((walk) => walkChoice(walk).label).join('; ');
  throw new UserError(
    'not-found',
    open.length === 0
      ? 'No search is going on in this channel. /fault start begins one: type what you see.'
      : `No search here is “${typed ?? ''}”. Going on: ${going}.`,
  );
}

export const suggestWalks = (record: TeamRecord, buildId: number, typed: string): readonly Choice[] =>
  openWalks(record, buildId)
    .filter((walk) => typed === '' || fits(walk, typed))
    .map(walkChoice);

function fits(walk: Walk, typed: string): boolean {
  const number = /^#?(\d{1,9})$/.exec(typed.trim())?.[1];
  if (number !== undefined) return walk.id === Number(number);
  return guideOf(walk.symptom).name.toLowerCase().includes(typed.trim().toLowerCase());
}

const walkChoice = (walk: Walk): Choice => ({
  label: `#${walk.id} ${guideOf(walk.symptom).name}, begun by ${walk.startedBy}`.slice(0, 100),
  value: `#${walk.id}`,
});
