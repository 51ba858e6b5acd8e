import type { JsonObject } from '../../core/json.ts';
import { pageOf } from '../../core/pages.ts';
import type { Answer, Fact, Item } from '../../core/reply.ts';
import { type Day, sayDay } from '../../core/time.ts';
import { sayMoney } from '../orders/say-order.ts';
import { type Cost, type Sums, sumsOf } from './costs.ts';
import type { Rate } from './rate-store.ts';

export const COST_GROUPS = ['supplier', 'system', 'month'] as const;
export type CostGroup = (typeof COST_GROUPS)[number];

export interface CostView {
  readonly costs: readonly Cost[];
  readonly by: CostGroup;
  /** All of it in the crew's money, where its rates reach; undefined when there is only one currency or no rate. */
  readonly together:
    | { readonly costs: readonly Cost[]; readonly left: readonly Cost[]; readonly currency: string }
    | undefined;
  readonly rates: readonly Rate[];
  /** Missing parts without a guessed price. */
  readonly unguessed: number;
  readonly today: Day;
  readonly page: number;
}

/** What a build has cost, is bound to cost and may still cost, by supplier, system or month. */
export function costAnswer({ costs, by, together, rates, unguessed, today, page }: CostView): Answer {
  const sums = sumsOf(costs);
  const groups = groupsOf(costs, by);
  const leaf = pageOf(groups, page, { command: 'cost', action: 'show', args: { by } });
  const head = together === undefined || together.left.length > 0 ? sums : sumsOf(together.costs);
  return {
    kind: 'answer',
    subject: 'Cost',
    result: head.length === 0 ? 'Nothing has a price yet' : head.map(saySums).join('; '),
    ...(costs.length === 0
      ? { certainty: 'Give a price with /order place, or a guess with /part set guess.' }
      : {}),
    facts: [
      ...(together === undefined ? [] : ratesUsed(sums, together, rates, today)),
      ...guesses(unguessed),
    ],
    items: leaf.things.map(
      ({ name, sums: own }): Item => ({ text: name, note: own.map(saySums).join('; ') }),
    ),
    buttons: [
      ...leaf.buttons,
      ...COST_GROUPS.filter((group) => group !== by && costs.length > 0).map((group) => ({
        label: `By ${group}`,
        does: { command: 'cost', action: 'show', args: { by: group } },
      })),
    ],
    audience: 'crew',
    data: {
      by,
      totals: sums.map(sumsData),
      together: together === undefined ? null : (sumsOf(together.costs).map(sumsData)[0] ?? null),
      groups: groups.map(({ name, sums: own }) => ({ name, totals: own.map(sumsData) })),
      missingWithoutGuess: unguessed,
    },
  };
}

interface Group {
  readonly name: string;
  readonly sums: readonly Sums[];
}

/** The dearest first; months in order. */
function groupsOf(costs: readonly Cost[], by: CostGroup): readonly Group[] {
  const groups = [...Map.groupBy(costs, (cost) => nameOf(cost, by))].map(([name, own]) => ({
    name,
    sums: sumsOf(own),
    weight: own.reduce((sum, { minor }) => sum + minor, 0),
  }));
  return groups.toSorted((a, b) => (by === 'month' ? (a.name < b.name ? -1 : 1) : b.weight - a.weight));
}

function nameOf(cost: Cost, by: CostGroup): string {
  if (by === 'month') return cost.month ?? 'not ordered yet';
  return cost[by] ?? (by === 'supplier' ? 'not ordered yet' : 'no system');
}

/** "GBP 84.50 spent, GBP 12.00 on order, GBP 30.00 to come". */
function saySums({ currency, spent, committed, 'to come': toCome, refunded }: Sums): string {
  const money = (minor: number): string => sayMoney({ minor, currency });
  const all = [
    (spent > 0 || committed + toCome + refunded === 0) && `${money(spent)} spent`,
    committed > 0 && `${money(committed)} on order`,
    toCome > 0 && `${money(toCome)} to come`,
    refunded > 0 && `${money(refunded)} refunded`,
  ];
  return all.filter(Boolean).join(', ');
}

const sumsData = ({ currency, spent, committed, 'to come': toCome, refunded }: Sums): JsonObject => ({
  currency,
  spentMinor: spent,
  committedMinor: committed,
  toComeMinor: toCome,
  refundedMinor: refunded,
});

function ratesUsed(
  sums: readonly Sums[],
  { currency, costs, left }: NonNullable<CostView['together']>,
  rates: readonly Rate[],
  today: Day,
): readonly Fact[] {
  const used = rates.filter(({ from, to }) => [from, to].includes(currency));
  return [
    ...sums.map((own) => [`In ${own.currency}`, saySums(own)] as const),
    ...sumsOf(costs).map(
      (own) =>
        [
          `All in ${own.currency}`,
          `${saySums(own)}${left.length > 0 ? ', as far as the rates reach' : ''}`,
        ] as const,
    ),
    ...used.map(
      ({ from, to, rate, saidOn, byName }) =>
        ['Rate', `${from} 1 = ${to} ${rate}, said by ${byName} on ${sayDay(saidOn, today)}`] as const,
    ),
  ];
}

const guesses = (unguessed: number): readonly Fact[] =>
  unguessed === 0
    ? []
    : [['Not counted', `${unguessed} missing ${unguessed === 1 ? 'part' : 'parts'} without a guessed price`]];
