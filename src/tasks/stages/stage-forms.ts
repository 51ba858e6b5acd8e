import type { Hand } from '../../bot/hand.ts';
import type { Form } from '../../core/reply.ts';
import { UserError } from '../../core/user-error.ts';
import { sayLimits } from '../../records/stages/find-readings.ts';
import { conditionHere, stageFactsHere } from './stage-names.ts';

/** Asks for the reading that a stage wants, begun for whoever types it. */
export function readForm(hand: Hand, conditionId: number): Form {
  const { condition } = conditionHere(hand, conditionId);
  const wanted = condition.condition;
  if (wanted.kind !== 'reading')
    throw new UserError('stale-message', 'That is no longer a reading. /ready shows what is asked for now.');
  return {
    kind: 'form',
    title: 'Log the reading',
    does: { command: 'reading', action: 'log', args: { what: wanted.reading } },
    fields: [
      {
        name: 'value',
        label: wanted.reading.slice(0, 45),
        hint: sayLimits(wanted.reading, wanted, stageFactsHere(hand).say).slice(0, 100),
      },
      { name: 'conditions', label: 'Read when', value: wanted.states.join(', '), required: false },
    ],
  };
}

/** Asks what an order of a part that nobody has noted yet still lacks. */
export function partOrderForm(hand: Hand, conditionId: number): Form {
  const { condition } = conditionHere(hand, conditionId);
  const name = condition.condition.kind === 'part' ? condition.condition.name : '';
  return {
    kind: 'form',
    title: 'Order this part',
    does: { command: 'stage', action: 'order-done', args: {} },
    fields: [
      { name: 'what', label: 'What is ordered', value: name },
      { name: 'supplier', label: 'Who does it come from?' },
      { name: 'due', label: 'When will it come?', hint: 'Type it as you say it: 12 Dec, next Tuesday' },
      { name: 'quantity', label: 'How many', value: '1' },
    ],
  };
}
