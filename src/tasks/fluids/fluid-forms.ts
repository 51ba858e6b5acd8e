import type { Hand } from '../../bot/hand.ts';
import type { Form } from '../../core/reply.ts';
import { bottlesToBuy, fluidBudget } from '../../records/fluids/budget.ts';
import { lackingL, plainGrade } from '../../records/fluids/fluid.ts';
import { litresOf } from '../../records/fluids/say-fluid.ts';
import { casesHere, mine, shelfHere } from './fluids.ts';

export function pourForm(hand: Hand, caseId: number): Form {
  const found = mine(hand, caseId);
  return {
    kind: 'form',
    title: `Poured into ${found.name}`.slice(0, 45),
    does: { command: 'fluid', action: 'pour-done', args: { case: caseId } },
    fields: [
      {
        name: 'volume',
        label: 'How much',
        value: litresOf(hand.record)(lackingL(found) || found.capacityL),
        hint: '5.6 L, 6 US qt',
      },
      { name: 'grade', label: 'Grade', value: found.grade },
    ],
  };
}

export function caseForm(name: string): Form {
  return {
    kind: 'form',
    title: 'What it takes',
    does: { command: 'fluid', action: 'case-done', args: {} },
    fields: [
      { name: 'name', label: 'What is filled', value: name },
      { name: 'grade', label: 'Which fluid', hint: '10W-40, DOT 4, coolant 50 %' },
      { name: 'capacity', label: 'How much it takes', hint: '5.6 L, 6 US qt' },
    ],
  };
}

/** Asks what an order of a case's grade still lacks. */
export function fluidOrderForm(hand: Hand, caseId: number): Form {
  const found = mine(hand, caseId);
  const budget = fluidBudget(casesHere(hand), shelfHere(hand)).find(
    ({ grade }) => plainGrade(grade) === plainGrade(found.grade),
  );
  const { count, sizeL } = budget === undefined ? { count: 1, sizeL: 1 } : bottlesToBuy(budget);
  return {
    kind: 'form',
    title: 'Order this fluid',
    does: { command: 'fluid', action: 'order-done', args: {} },
    fields: [
      {
        name: 'what',
        label: 'What is ordered',
        value: `${found.grade}, ${litresOf(hand.record)(sizeL)} bottle`,
      },
      { name: 'supplier', label: 'Who does it come from?' },
      { name: 'due', label: 'When will it come?', hint: 'Type it as you say it: 12 Dec, next Tuesday' },
      { name: 'quantity', label: 'How many', value: String(count) },
    ],
  };
}
