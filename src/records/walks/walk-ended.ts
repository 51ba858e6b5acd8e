import type { Answer, Button } from '../../core/reply.ts';
import { dayAt, sayDay } from '../../core/time.ts';
import { walkData } from './walk-data.ts';
import { subjectOf, type WalkView } from './walk-view.ts';

/** A search that is closed. */
export function finishedAnswer(view: WalkView, buttons: readonly Button[]): Answer {
  const { walk, guide, today, zone } = view;
  const cause = guide.causes.find(({ id }) => id === walk.cause);
  const on = walk.endedAtMs === null ? '' : `, ${sayDay(dayAt(walk.endedAtMs, zone), today)}`;
  return {
    kind: 'answer',
    subject: subjectOf(view),
    result: cause?.name ?? walk.note ?? 'Closed without a cause',
    tone: 'done',
    certainty: `Closed by ${walk.endedBy ?? ''}${on}.`,
    facts: [
      ...(walk.note === null ? [] : [['Note', walk.note] as const]),
      ...(cause === undefined ? [] : [['Check again', cause.recheck] as const]),
    ],
    buttons,
    audience: 'crew',
    data: walkData(view),
  };
}
