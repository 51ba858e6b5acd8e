import { z } from 'zod';
import { writeActionRef } from '../src/bot/action-ref.ts';
import { action, defineCommand, type Suggest } from '../src/bot/command.ts';
import { crewOf } from '../src/bot/crew.ts';
import type { Hand } from '../src/bot/hand.ts';
import { PAGE_ARG, pageOf } from '../src/core/pages.ts';
import type { ActionRef, Answer, Button } from '../src/core/reply.ts';
import { whatNow } from '../src/records/jobs/can-do.ts';
import { nowAnswer, nowLines } from '../src/records/jobs/now-answer.ts';
import { jobBookHere } from '../src/tasks/jobs/jobs-here.ts';
import { readTimeAtHand } from '../src/tasks/jobs/read-minutes.ts';

/** So that each line has room for its button. */
const PAGE_SIZE = 7;

const page = z.coerce.number().int().min(1).max(10_000).optional();

const suggestTools: Suggest = (typed, hand) => {
  const kept = typed.replace(/[^,;]*$/, '');
  const last = typed.slice(kept.length).trim().toLowerCase();
  const all = new Set(jobBookHere(hand).jobs.flatMap(({ tools }) => tools));
  return [...all]
    .filter((tool) => tool.toLowerCase().includes(last))
    .map((tool) => `${kept}${kept === '' ? '' : ' '}${tool}`)
    .filter((value) => value.length <= 100)
    .map((value) => ({ label: value, value }));
};

export default defineCommand({
  description: 'What can I do now? Jobs nothing blocks, those that free most other work first',
  example: '/now',
  input: z.object({
    minutes: z.string().min(1).max(40).optional().describe('Time at hand: 90 min, 2 h'),
    people: z.int().min(1).max(20).optional().describe('How many of you there are'),
    tools: z.string().min(1).max(200).optional().describe('Only what these tools do, with commas between'),
    page: page.describe('Which page of a long list'),
  }),
  suggest: { tools: suggestTools },
  run: now,
  actions: {
    page: action({
      input: z.object({
        minutes: z.string().max(40).optional(),
        people: z.coerce.number().int().min(1).max(20).optional(),
        tools: z.string().max(200).optional(),
        page,
      }),
      run: (input, hand) => ({
        ...now(input, hand),
        inPlace: hand.pressedInPlace && input.page !== undefined,
      }),
    }),
  },
});

interface Asked {
  readonly minutes?: string | undefined;
  readonly people?: number | undefined;
  readonly tools?: string | undefined;
  readonly page?: number | undefined;
}

function now(asked: Asked, hand: Hand): Answer {
  const book = jobBookHere(hand);
  const list = whatNow(book, {
    minutes: asked.minutes === undefined ? undefined : readTimeAtHand(asked.minutes, 'minutes'),
    people: asked.people,
    tools: asked.tools
      ?.split(/[,;]/)
      .map((tool) => tool.trim())
      .filter(Boolean),
  });
  const lines = nowLines(list);
  const { things, buttons, where } = pageOf(lines, asked.page ?? 1, pageAction(asked), PAGE_SIZE);
  const turns = buttons.filter(fits);
  const typed = turns.length < buttons.length ? '; type page:2 for the next' : '';
  return nowAnswer({
    list,
    shown: things,
    book,
    today: crewOf(hand).today,
    ...(where === undefined ? {} : { where: `${where}${typed}` }),
    buttons: book.jobs.length === 0 ? [STARTING_SET] : turns,
  });
}

/** Where a build without jobs begins. */
const STARTING_SET: Button = {
  label: 'Jobs of assembly to choose from',
  weight: 'main',
  does: { command: 'job', action: 'from-set', args: { set: 'assembly' } },
};

function pageAction({ minutes, people, tools }: Asked): ActionRef {
  const args = {
    ...(minutes === undefined ? {} : { minutes }),
    ...(people === undefined ? {} : { people }),
    ...(tools === undefined ? {} : { tools }),
  };
  return { command: 'now', action: 'page', args };
}

/** A long list of tools does not fit into a button. */
function fits({ does }: Button): boolean {
  try {
    return writeActionRef({ ...does, args: { ...does.args, [PAGE_ARG]: 10_000 } }) !== '';
  } catch (error) {
    if (error instanceof RangeError) return false;
    throw error;
  }
}
