import { z } from 'zod';
import { action, defineCommand, type Suggest, subcommand } from '../src/bot/command.ts';
import { buildHere, suggestDays } from '../src/bot/crew.ts';
import type { Changed, Hand } from '../src/bot/hand.ts';
import { gaugePressure, quantity, turningSpeed } from '../src/bot/quantity-option.ts';
import { turned, turnedPage } from '../src/bot/turned.ts';
import { blank, line } from '../src/bot/typed.ts';
import type { Answer } from '../src/core/reply.ts';
import { NOTICE_ARG } from '../src/records/orders/order-buttons.ts';
import { planNames } from '../src/records/running-in/choose-plan.ts';
import { suggestSteps } from '../src/records/running-in/find-step.ts';
import type { RunInStep } from '../src/records/running-in/run-in.ts';
import { Notice } from '../src/reminders/notice.ts';
import { redrawForRemark } from '../src/reminders/redraw-morning.ts';
import { wordNotice } from '../src/reminders/word-notice.ts';
import {
  type DoneSaid,
  doneFormHere,
  doneHere,
  driveToday,
  planChanged,
  type SnoozeSaid,
  showPlan,
  snoozeFormHere,
  snoozeHere,
} from '../src/tasks/running-in/run-in.ts';
import { ceilingSaid, planSaid, stepSaid } from '../src/tasks/running-in/run-in-plan.ts';

const link = line(300).refine((text) => /^https?:\/\/\S+$/.test(text), 'must be an address like https://…');
const step = line(200).describe('Its words or number');
const [firstPlan = '', ...otherPlans] = planNames;

/** What a button names: the step, and the message it sits on. */
const pressed = { step: z.string().max(20), [NOTICE_ARG]: z.coerce.number().int().positive().optional() };

const offerSteps: Suggest = (typed, hand) => {
  const build = buildHere(hand);
  return build === undefined ? [] : suggestSteps(hand.record.runIn.ofBuild(build.id), typed);
};

export default defineCommand({
  description: 'Running in: how it may be driven today, what is due, what was found',
  subcommands: {
    plan: subcommand({
      description: 'The plan with its progress; or start one, or say what it rests on',
      example: '/runin plan choose:"road by distance" limit:"7200 rpm" boost:"1.1 bar"',
      input: z.object({
        choose: z
          .enum([firstPlan, ...otherPlans])
          .optional()
          .describe('A plan of common practice, or your own'),
        started: line(60).optional().describe('The day of the first start; today unless said'),
        odometer: line(40)
          .optional()
          .describe('What it showed then: 84210 km; the newest reading unless said'),
        hours: line(40).optional().describe('What the hour meter showed then: 0 h'),
        limit: turningSpeed('limit', 'Limit speed of the engine, which ceilings are shares of').optional(),
        boost: gaugePressure('boost', 'Boost it is to make in the end').optional(),
        measure: z
          .enum(['km', 'h', 'days'])
          .optional()
          .describe('What the ceilings of your own plan are counted in; km unless said'),
      }),
      run: (said, hand) => planSaid(hand, said),
    }),
    today: subcommand({
      description: 'How may I drive it today? Most rpm, boost, load, and until when',
      input: z.object({}),
      run: (_input, hand) => driveToday(hand),
    }),
    done: subcommand({
      description: 'Log a step as done, and what was found',
      input: z.object({
        step,
        found: line(300).optional().describe('What was found: filter clean; two bolts loose'),
        link: link.optional().describe('Address of a photograph'),
      }),
      suggest: { step: offerSteps },
      run: (said, hand) => planChanged(hand, doneHere(hand, said)),
    }),
    snooze: subcommand({
      description: 'Put a step off, and say why',
      input: z.object({
        step,
        until: line(60).describe('For how long: 50 km, 2 h, 3 days; or a day'),
        reason: line(200).describe('Why: no filter here before Thursday'),
      }),
      suggest: { step: offerSteps, until: suggestDays },
      run: (said, hand) => planChanged(hand, snoozeHere(hand, said)),
    }),
    step: subcommand({
      description: 'Add a step of your own, change one, or leave one out',
      input: z.object({
        what: line(200).describe('What is to be done; or the number or words of one in the plan'),
        due: line(60).optional().describe('From the first start: 500 km, 8 h, 14 days, or 500 km or 8 h'),
        hint: line(200).optional().describe('What to look for'),
        remove: z.boolean().default(false).describe('Leave it out of this plan'),
      }),
      suggest: { what: offerSteps },
      run: (said, hand) => stepSaid(hand, said),
    }),
    ceiling: subcommand({
      description: 'How hard it may be driven from a point on, by the builder’s own figures',
      input: z.object({
        at: line(40).describe('From the first start: 500 km'),
        speed: turningSpeed('speed', 'Most rpm from there on').optional(),
        boost: quantity('boost', 'percent', 'Share of the boost: 50 %').optional(),
        load: line(120).optional().describe('Half load, always varied'),
      }),
      run: (said, hand) => ceilingSaid(hand, said),
    }),
  },
  actions: {
    plan: action({
      input: z.object({ page: turnedPage }),
      run: ({ page }, hand) => turned(hand, page, (to) => showPlan(hand, to)),
    }),
    done: action({
      input: z.object(pressed),
      run: (input, hand) => doneFormHere(hand, input.step, input[NOTICE_ARG]),
    }),
    'done-form': action({
      input: z.object({ ...pressed, found: blank, link: blank.pipe(link.optional()) }),
      run: (input, hand) => finished(hand, doneHere(hand, doneOf(input)), input[NOTICE_ARG]),
    }),
    snooze: action({
      input: z.object(pressed),
      run: (input, hand) => snoozeFormHere(hand, input.step, input[NOTICE_ARG]),
    }),
    'snooze-form': action({
      input: z.object({ ...pressed, until: line(60), reason: line(200) }),
      run: (input, hand) => finished(hand, snoozeHere(hand, snoozeOf(input)), input[NOTICE_ARG]),
    }),
  },
});

const doneOf = ({ step: id, found, link: photo }: DoneSaid): DoneSaid => ({ step: id, found, link: photo });
const snoozeOf = ({ step: id, until, reason }: SnoozeSaid): SnoozeSaid => ({ step: id, until, reason });

/** The message the button sat on as it now is, whichever kind it was; elsewhere the plan's card. */
function finished(hand: Hand, changed: Changed<RunInStep>, noticeId: number | undefined): Answer {
  const inPlace =
    noticeId === undefined || !hand.pressedInPlace ? undefined : redrawn(hand, changed.value.id, noticeId);
  if (inPlace === undefined) return planChanged(hand, changed);
  const { id } = changed.value;
  return { ...inPlace, inPlace: true, data: { step: id, said: changed.said, change: changed.changeId } };
}

function redrawn(hand: Hand, stepId: number, noticeId: number): Answer | undefined {
  const kept = hand.notice(noticeId);
  const notice = Notice.safeParse(kept).data;
  if (notice?.kind === 'run-in' && notice.stepId === stepId) {
    return wordNotice(hand.record, notice, noticeId, hand.clock.nowMs());
  }
  return redrawForRemark(hand.record, kept, noticeId, { kind: 'run-in', id: stepId });
}
