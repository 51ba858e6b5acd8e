import { z } from 'zod';
import { action, defineCommand, subcommand } from '../src/bot/command.ts';
import { buildHere, crewOf } from '../src/bot/crew.ts';
import type { Hand } from '../src/bot/hand.ts';
import { line, pageNumber } from '../src/bot/typed.ts';
import { COST_GROUPS } from '../src/records/costs/cost-answer.ts';
import { homeCurrency } from '../src/records/team/team.ts';
import { listCosts, rateGiven, rateList } from '../src/tasks/costs/cost-here.ts';

const by = z.enum(COST_GROUPS);
const currency = (what: string) => line(10).describe(what);

export default defineCommand({
  description: 'What the build has cost, is bound to cost, and may still cost',
  subcommands: {
    show: subcommand({
      description: 'Spent, on order and to come, by supplier, system or month',
      example: '/cost show by:supplier',
      input: z.object({
        by: by.default('supplier').describe('What it is added up by'),
        in: line(10).optional().describe('All of it in this money, by your rates: GBP'),
      }),
      suggest: { in: suggestCurrencies },
      run: (input, hand) => listCosts(hand, { ...input, page: 1 }),
    }),
    rate: subcommand({
      description: 'Say what one currency is worth in another; without a rate they are kept apart',
      example: '/cost rate from:EUR to:GBP rate:0.86',
      input: z.object({
        from: currency('One of this money, e.g. EUR'),
        to: currency('is so much of this, e.g. GBP'),
        rate: line(20).describe('So much, e.g. 0.86; 0 takes the rate away'),
      }),
      suggest: { from: suggestCurrencies, to: suggestCurrencies },
      run: (input, hand) => rateGiven(hand, input),
    }),
    rates: subcommand({
      description: 'The rates that have been given',
      input: z.object({}),
      run: (_, hand) => rateList(hand),
    }),
  },
  actions: {
    show: action({
      input: z.object({ by, page: pageNumber }),
      run: (input, hand) => listCosts(hand, input),
    }),
  },
});

/** Currencies that this build's prices are in. */
function suggestCurrencies(typed: string, hand: Hand) {
  const build = buildHere(hand);
  const prices = (build ? hand.record.orders.allOfBuild(build.id) : []).flatMap(
    ({ price }) => price?.currency ?? [],
  );
  return [...new Set([homeCurrency(crewOf(hand).settings.country), ...prices])]
    .filter((code) => code.includes(typed.toUpperCase()))
    .map((code) => ({ label: code, value: code }));
}
