import { buildHere, crewOf } from '../../bot/crew.ts';
import type { Hand } from '../../bot/hand.ts';
import { pageOf } from '../../core/pages.ts';
import type { Answer } from '../../core/reply.ts';
import { type Day, sayDay } from '../../core/time.ts';
import { fluidBudget, type GradeBudget } from '../../records/fluids/budget.ts';
import { isFull, plainGrade } from '../../records/fluids/fluid.ts';
import {
  type Ahead,
  budgetData,
  budgetItem,
  caseData,
  caseItem,
  sayShelf,
} from '../../records/fluids/fluid-answer.ts';
import { litresOf } from '../../records/fluids/say-fluid.ts';
import { type Order, standing } from '../../records/orders/order.ts';
import type { Stage } from '../../records/stages/stage.ts';
import { standingOf } from '../../records/stages/standing.ts';
import { plain } from '../../records/suppliers/supplier.ts';
import { stageFactsHere } from '../stages/stage-names.ts';
import { litresComing, shelveButtons } from './fluid-orders.ts';
import { casesHere, shelfHere } from './fluids.ts';

const PAGE_SIZE = 6;

/** Every case with how full it is, and the shelf. */
export function fluidList(hand: Hand, page: number): Answer {
  const say = litresOf(hand.record);
  const cases = casesHere(hand);
  const bottles = shelfHere(hand);
  const does = { command: 'fluid', action: 'list', args: {} };
  const { things, buttons, where } = pageOf(cases, page, does, PAGE_SIZE);
  const full = cases.filter(isFull).length;
  const grades = fluidBudget(cases, bottles).filter((one) => one.bottles.length > 0);
  return {
    kind: 'answer',
    subject: 'Fluids',
    result: cases.length === 0 ? 'No case is noted yet' : `${full} of ${cases.length} filled`,
    tone: full === cases.length ? 'done' : 'soon',
    certainty:
      cases.length === 0
        ? '/fluid case name:sump grade:10W-40 capacity:"5.6 L" notes what takes what.'
        : [where, 'Budget: what is enough and what to order.'].filter(Boolean).join('. '),
    items: things.map((one) => caseItem(one, say)),
    ...(grades.length === 0
      ? {}
      : { facts: grades.map((one) => [`Shelf: ${one.grade}`, sayShelf(one.bottles, say)] as const) }),
    buttons: [
      ...buttons,
      ...(cases.length === 0
        ? []
        : [{ label: 'Budget', does: { command: 'fluid', action: 'budget', args: {} } }]),
    ],
    audience: 'crew',
    data: {
      kind: 'fluids',
      cases: cases.map(caseData),
      shelf: grades.map(({ grade, shelfL }) => ({ grade, shelfL })),
    },
  };
}

/** What takes what against what is on the shelf, by grade, the short ones first. */
export function budgetList(hand: Hand, page: number): Answer {
  const all = fluidBudget(casesHere(hand), shelfHere(hand)).toSorted((a, b) => b.shortL - a.shortL);
  const short = all.filter(({ shortL }) => shortL > 0);
  const does = { command: 'fluid', action: 'budget', args: {} };
  const { things, buttons, where } = pageOf(all, page, does, PAGE_SIZE);
  const orders = ordersHere(hand);
  const before = stageOf(hand);
  const { today } = crewOf(hand);
  return {
    kind: 'answer',
    subject: 'Fluid budget',
    result:
      all.length === 0
        ? 'No case is noted yet'
        : short.length === 0
          ? 'There is enough of everything'
          : `${short.map(({ grade }) => grade).join(', ')}: not enough`,
    tone: short.length > 0 ? 'late' : 'done',
    ...(where === undefined ? {} : { certainty: where }),
    items: things.map((one) =>
      budgetItem(
        one,
        aheadOf(hand, one, orders, today),
        before === undefined ? '' : ` before ${before.name}`,
        litresOf(hand.record),
      ),
    ),
    buttons,
    audience: 'crew',
    data: {
      kind: 'fluid-budget',
      enough: short.length === 0,
      stage: before?.key ?? null,
      grades: all.map((one) => ({
        ...budgetData(one),
        orders: comingOf(one, orders).map(({ id }) => id),
      })),
    },
  };
}

/** What is on its way of a grade, and what has come and is not on the shelf yet. */
function aheadOf(hand: Hand, budget: GradeBudget, orders: readonly Order[], today: Day): Ahead {
  const coming = comingOf(budget, orders);
  const waiting = comingOf(budget, arrivedHere(hand)).flatMap((order) => {
    const [button] = shelveButtons(hand, order);
    return button === undefined ? [] : [{ order, button }];
  });
  return {
    says: [
      ...coming.map((order) => `on its way: #${order.id} ${order.what}, ${sayDay(order.promisedOn, today)}`),
      ...waiting.map(({ order }) => `here, but not on the shelf yet: #${order.id} ${order.what}`),
    ].join('; '),
    comingL: coming.reduce((sum, order) => sum + litresComing(hand, order), 0),
    buttons: waiting.slice(0, 1).map(({ button }) => button),
  };
}

/** Orders that name the grade. */
function comingOf({ grade }: GradeBudget, orders: readonly Order[]): readonly Order[] {
  const wanted = plainGrade(grade);
  if (wanted.length < 3) return orders.filter(({ what }) => plain(what) === plain(grade));
  return orders.filter(({ what }) => plainGrade(what).includes(wanted));
}

function arrivedHere(hand: Hand): readonly Order[] {
  const build = buildHere(hand);
  return build === undefined
    ? []
    : hand.record.orders.ofBuild(build.id).filter((order) => standing(order).received > 0);
}

function ordersHere(hand: Hand): readonly Order[] {
  const build = buildHere(hand);
  if (build === undefined) return [];
  return hand.record.orders
    .ofBuild(build.id)
    .filter((order) => !order.cancelled && standing(order).outstanding > 0);
}

/** The first stage still to come that asks for something to be filled. */
function stageOf(hand: Hand): Stage | undefined {
  const facts = stageFactsHere(hand);
  return facts.stages.find(
    (stage) =>
      stage.conditions.some(({ condition }) => ['fluid', 'fluids'].includes(condition.kind)) &&
      standingOf(stage, facts).kind !== 'passed',
  );
}
