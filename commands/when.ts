import { z } from 'zod';
import { action, defineCommand, type Suggest, subcommand } from '../src/bot/command.ts';
import { buildHere, crewOf, openBuildHere, readDay, suggestDays } from '../src/bot/crew.ts';
import type { Hand } from '../src/bot/hand.ts';
import { undoButton } from '../src/bot/undo-button.ts';
import type { Answer } from '../src/core/reply.ts';
import { sayDay } from '../src/core/time.ts';
import { UserError } from '../src/core/user-error.ts';
import type { Away } from '../src/records/jobs/week.ts';
import { suggestParts } from '../src/records/parts/find-part.ts';
import { suggestSuppliers } from '../src/records/suppliers/find-supplier.ts';
import { suggestStagesHere } from '../src/tasks/jobs/jobs-here.ts';
import { readEvenings, sayEvenings } from '../src/tasks/jobs/read-evenings.ts';
import { orderByHere, weekHere, whenHere } from '../src/tasks/jobs/when-here.ts';

const stage = z.string().min(1).max(60).optional();
const page = z.coerce.number().int().min(1).max(10_000).optional();
const typedDay = z.string().min(1).max(100);
const suggestStage: Suggest = suggestStagesHere;
const suggestPart: Suggest = (typed, hand) => {
  const build = buildHere(hand);
  return build ? suggestParts(hand.record, build.id, typed) : [];
};

export default defineCommand({
  description: 'The day it will start: simulated from jobs, evenings and what is still to come',
  subcommands: {
    date: subcommand({
      description: 'When a stage can be passed, what drives the day, and what ordering sooner would gain',
      example: '/when date',
      input: z.object({
        stage: stage.describe('Which stage; the first start if you name none'),
        part: z
          .string()
          .min(1)
          .max(120)
          .optional()
          .describe('What this part would gain if it were ordered today'),
        supplier: z.string().min(1).max(80).optional().describe('From whom it would come instead'),
      }),
      suggest: {
        stage: suggestStage,
        part: suggestPart,
        supplier: (typed, { record }) => suggestSuppliers(record, typed),
      },
      run: ({ stage: asked, ...sooner }, hand) => whenHere(hand, asked, sooner),
    }),
    'order-by': subcommand({
      description: 'What is not ordered yet, when it is needed and by when to order it',
      example: '/when order-by',
      input: z.object({
        stage: stage.describe('For which stage; the first start if you name none'),
        page: page.describe('Which page of a long list'),
      }),
      suggest: { stage: suggestStage },
      run: (input, hand) => orderByHere(hand, input.stage, input.page ?? 1),
    }),
    evenings: subcommand({
      description: 'When you work on this build, and how many of you; without anything: what holds',
      example: '/when evenings hours:"Tue Thu 2.5 h, Sat 6 h" people:2',
      input: z.object({
        hours: z
          .string()
          .min(1)
          .max(200)
          .optional()
          .describe('Tue Thu 2.5 h, Sat 6 h; or weekdays 19:00-21:30'),
        people: z.int().min(1).max(20).optional().describe('How many of you work at a time'),
      }),
      run: setEvenings,
    }),
    away: subcommand({
      description: 'Days on which nobody works on this build; without anything: which are noted',
      example: '/when away from:"in 2 weeks" to:"in 3 weeks"',
      input: z.object({
        from: typedDay.optional().describe('The first day away: 24 Dec'),
        to: typedDay.optional().describe('The last day away; the same day if you leave it out'),
      }),
      suggest: { from: suggestDays, to: suggestDays },
      run: goAway,
    }),
  },
  actions: {
    date: action({ input: z.object({ stage }), run: (input, hand) => whenHere(hand, input.stage) }),
    'order-by': action({
      input: z.object({ stage, page }),
      run: async (input, hand) => ({
        ...(await orderByHere(hand, input.stage, input.page ?? 1)),
        inPlace: hand.pressedInPlace && input.page !== undefined,
      }),
    }),
    back: action({ input: z.object({ from: typedDay, to: typedDay }), run: comeBack }),
  },
});

function setEvenings(
  { hours, people }: { hours?: string | undefined; people?: number | undefined },
  hand: Hand,
): Answer {
  const { crew, said } = weekHere(hand);
  if (hours === undefined && people === undefined) return eveningsAnswer(crew, said);
  const week = {
    minutes: hours === undefined ? crew.minutes : readEvenings(hours, 'hours'),
    people: people ?? crew.people,
  };
  const changed = hand.change((record) => {
    record.weeks.set(openBuildHere(record, hand).id, week);
    return { value: week, said: `we work ${sayEvenings(week.minutes)}, ${week.people} at a time` };
  });
  const card = eveningsAnswer(week, true);
  return {
    ...card,
    buttons: [...(card.buttons ?? []), undoButton(changed)],
    data: { ...card.data, said: changed.said, change: changed.changeId },
  };
}

function eveningsAnswer(
  { minutes, people }: { minutes: readonly number[]; people: number },
  said: boolean,
): Answer {
  return {
    kind: 'answer',
    subject: 'Evenings',
    result: sayEvenings(minutes),
    certainty: `${people} ${people === 1 ? 'person' : 'people'} at a time${said ? '' : '; taken until you say when you work'}.`,
    buttons: [{ label: 'When will it start?', does: { command: 'when', action: 'date', args: {} } }],
    audience: 'crew',
    data: { minutesMin: minutes, people, said },
  };
}

function goAway({ from, to }: { from?: string | undefined; to?: string | undefined }, hand: Hand): Answer {
  if (from === undefined) {
    if (to === undefined) return awayAnswer(hand);
    throw new UserError('bad-input', 'from: is missing. Nothing was changed. Type the first day away too.');
  }
  const first = readDay(hand, 'from', from);
  const last = to === undefined ? first : readDay(hand, 'to', to);
  const { today } = crewOf(hand);
  if (last.day < first.day) {
    throw new UserError(
      'out-of-range',
      `to: ${sayDay(last.day, today)} is before ${sayDay(first.day, today)}. Nothing was changed. Type the later day there.`,
    );
  }
  const away = { from: first.day, to: last.day };
  const changed = hand.change((record) => {
    record.weeks.goAway(openBuildHere(record, hand).id, away);
    return { value: away, said: `away ${sayAway(away, today)}` };
  });
  const card = awayAnswer(hand);
  return {
    ...card,
    certainty: [first.readAs, ...(to === undefined ? [] : [last.readAs])].join(' '),
    buttons: [undoButton(changed)],
    data: { ...card.data, said: changed.said, change: changed.changeId },
  };
}

function comeBack(away: Away, hand: Hand): Answer {
  const { today } = crewOf(hand);
  const changed = hand.change((record) => {
    const buildId = openBuildHere(record, hand).id;
    if (!record.weeks.away(buildId).some((one) => one.from === away.from && one.to === away.to)) {
      throw new UserError('stale-message', 'Those days are not noted any more. Nothing was changed.');
    }
    record.weeks.comeBack(buildId, away);
    return { value: away, said: `not away ${sayAway(away, today)} after all` };
  });
  const card = awayAnswer(hand);
  return {
    ...card,
    buttons: [undoButton(changed)],
    data: { ...card.data, said: changed.said, change: changed.changeId },
  };
}

function awayAnswer(hand: Hand): Answer {
  const build = buildHere(hand);
  const { today } = crewOf(hand);
  const all = (build ? hand.record.weeks.away(build.id) : []).filter(({ to }) => to >= today);
  return {
    kind: 'answer',
    subject: 'Away',
    result: all.length === 0 ? 'No days away are noted' : all.map((one) => sayAway(one, today)).join('; '),
    items: all.slice(0, 8).map((one) => ({
      text: sayAway(one, today),
      buttons: [
        {
          label: 'We work after all',
          does: { command: 'when', action: 'back', args: { from: one.from, to: one.to } },
        },
      ],
    })),
    audience: 'crew',
    data: { away: all.map(({ from, to }) => ({ fromOn: from, toOn: to })) },
  };
}

const sayAway = ({ from, to }: Away, today: string): string =>
  from === to ? sayDay(from, today) : `${sayDay(from, today)} to ${sayDay(to, today)}`;
