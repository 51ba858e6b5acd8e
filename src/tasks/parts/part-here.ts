import { buildHere, openBuildHere } from '../../bot/crew.ts';
import type { Hand } from '../../bot/hand.ts';
import { type Choice, UserError } from '../../core/user-error.ts';
import { findPart, NEW, suggestParts } from '../../records/parts/find-part.ts';
import { openPart } from '../../records/parts/open-part.ts';
import type { KnownPart } from '../../records/parts/part-store.ts';
import type { TeamRecord } from '../../records/team-record.ts';

/** The part meant in this channel's build. @throws UserError when there is none, or several fit. */
export function partHere(hand: Hand, typed: string, field = 'part'): KnownPart {
  const build = buildHere(hand);
  if (build !== undefined) return findPart(hand.record, build.id, typed, field);
  throw new UserError(
    'not-found',
    'No part of this build is known yet. /part add writes one down, and so does the first /order place of it.',
  );
}

/**
 * The part meant, for what somebody has in the hand: one that nobody has named before may be written down with it.
 *
 * @param quantity how many of a new one there are
 * @returns what finds it inside the change
 * @throws UserError 'which-one' when there is none of that name, or several fit.
 */
export function partInHand(hand: Hand, typed: string, quantity = 1): (record: TeamRecord) => KnownPart {
  if (typed.startsWith(NEW) && typed.length > NEW.length) {
    return (record) => openPart(record, openBuildHere(record, hand).id, typed, quantity).part;
  }
  try {
    const { id } = partHere(hand, typed);
    return () => partHere(hand, `#${id}`);
  } catch (error) {
    if (!(error instanceof UserError) || error.code !== 'not-found' || typed.startsWith('#')) throw error;
    throw new UserError('which-one', `No part here is called "${typed}" yet. Is it a new one?`, {
      field: 'part',
      choices: [{ label: `New part: ${typed}`.slice(0, 80), value: `${NEW}${typed}` }],
    });
  }
}

/** Parts of this build that fit what is typed so far. */
export function suggestPartsHere(typed: string, hand: Hand): readonly Choice[] {
  const build = buildHere(hand);
  return build ? suggestParts(hand.record, build.id, typed) : [];
}

/** The same for something that may be new: this build's parts, then what was ordered for others. */
export function suggestNewParts(typed: string, hand: Hand): readonly Choice[] {
  const here = suggestPartsHere(typed, hand);
  const known = new Set(here.map(({ value }) => value));
  const elsewhere = hand.record.orders
    .namesUsed()
    .filter(
      (name) => name.length <= 100 && !known.has(name) && name.toLowerCase().includes(typed.toLowerCase()),
    )
    .map((name) => ({ label: name, value: name }));
  return [...here, ...elsewhere];
}
