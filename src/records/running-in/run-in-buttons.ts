import type { Button, Form } from '../../core/reply.ts';
import { NOTICE_ARG } from '../orders/order-buttons.ts';
import type { RunInStep } from './run-in.ts';

/** Done, or put off; on a notice they say which message they sit on. */
export function stepButtons({ id }: Pick<RunInStep, 'id'>, noticeId?: number): readonly Button[] {
  const args = { step: id, ...(noticeId === undefined ? {} : { [NOTICE_ARG]: noticeId }) };
  return [
    { label: 'Done', weight: 'main', does: { command: 'runin', action: 'done', args } },
    { label: 'Put off', does: { command: 'runin', action: 'snooze', args } },
  ];
}

/** Asks what was found: a filter cut open tells more than the oil. */
export function doneForm({ id, what, hint }: RunInStep, noticeId?: number): Form {
  return {
    kind: 'form',
    title: `Done: ${what}`.slice(0, 45),
    does: {
      command: 'runin',
      action: 'done-form',
      args: { step: id, ...(noticeId === undefined ? {} : { [NOTICE_ARG]: noticeId }) },
    },
    fields: [
      {
        name: 'found',
        label: 'What was found',
        hint: (hint ?? 'clean; fine grey dust; two bolts were loose').slice(0, 100),
        long: true,
        required: false,
      },
      { name: 'link', label: 'Link to a photo', hint: 'https://…', required: false },
    ],
  };
}

export function snoozeForm({ id, what }: RunInStep, noticeId?: number): Form {
  return {
    kind: 'form',
    title: `Put off: ${what}`.slice(0, 45),
    does: {
      command: 'runin',
      action: 'snooze-form',
      args: { step: id, ...(noticeId === undefined ? {} : { [NOTICE_ARG]: noticeId }) },
    },
    fields: [
      { name: 'until', label: 'For how long', hint: '50 km, 2 h, 3 days, or next Friday', required: true },
      { name: 'reason', label: 'Why', hint: 'no filter here before Thursday', required: true },
    ],
  };
}
