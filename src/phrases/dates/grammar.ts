import { on, steer, the, unitOf } from './atoms.ts';
import { bareNumber, dayRange, pointedTime, several, vague } from './doubts.ts';
import { feast } from './feast-rules.ts';
import { type Find, merge } from './find.ts';
import { plain, seasonAsked } from './moments.ts';
import { day } from './named-days.ts';
import { any, map, maybe, once, type Rule, seq } from './rules.ts';

/** A deadline is its last day; a season has none. */
const deadline: Rule<Find> = once(
  any(
    map(seq(deadlineWords(), the, plain, maybe(latest())), ([, , found]) => seasonAsked(found)),
    map(seq(plain, latest()), ([found]) => seasonAsked(found)),
    map(seq(steer('in'), the, feast), ([, , found]) => seasonAsked(found)),
  ),
);

function deadlineWords(): Rule<unknown> {
  const to = maybe(steer('to', 'for'));
  return any<unknown>(
    seq(steer('by', 'until', 'till'), maybe(steer('latest')), maybe(steer('on', 'at')), to),
    seq(steer('latest'), maybe(steer('by')), to, maybe(steer('on'))),
    seq(steer('at'), the, steer('latest'), maybe(steer('by'))),
    seq(steer('no', 'not'), steer('later'), steer('than')),
    seq(steer('not'), steer('after')),
    seq(steer('on'), steer('or'), steer('before')),
    steer('within'),
  );
}

function latest(): Rule<unknown> {
  return any<unknown>(
    steer('latest'),
    seq(steer('at'), the, steer('latest')),
    seq(steer('on'), steer('latest')),
    seq(steer('or'), steer('before')),
  );
}

const weekEnding: Rule<Find> = map(
  seq(any<unknown>(steer('weekending'), seq(unitOf('week'), steer('ending'))), on, the, day),
  ([, , , found]) => found,
);

/**
 * The whole grammar: rules that may stand for a complete phrase, in tiers. A later tier is asked only when no earlier
 * one fits, so that "vor einer Woche" is a week ago and not the time before a week.
 */
export const TIERS: readonly Rule<Find>[] = [
  plain,
  any(deadline, weekEnding),
  any(vague, several, dayRange, pointedTime, bareNumber),
];

/** Merges what the ways to read a phrase came to. */
export function settle(finds: readonly Find[]): Find {
  return merge(finds, 'Which day is meant?');
}
