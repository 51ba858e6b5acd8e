import type { Answer, Button, Item } from '../../core/reply.ts';
import { type Day, sayDay } from '../../core/time.ts';
import type { Part } from '../parts/part.ts';
import type { StageFact } from './facts.ts';
import type { OrderDay } from './order-days.ts';

/** A part nobody has ordered, the day it is needed on, and by when to order it where that can be said. */
export interface ToOrder {
  readonly part: Part;
  readonly neededOn: Day;
  readonly order: OrderDay | undefined;
}

export interface OrderByView {
  readonly stage: StageFact;
  readonly all: readonly ToOrder[];
  readonly shown: readonly ToOrder[];
  readonly where?: string;
  /** Whether any supplier has a time from order to door. */
  readonly knowsLead: boolean;
  readonly buttons: readonly Button[];
  readonly today: Day;
}

/** What is to be ordered, the soonest needed first, with the last day to order it on. */
export function orderByAnswer({ stage, all, shown, where, knowsLead, buttons, today }: OrderByView): Answer {
  const certainty = [
    knowsLead || all.length === 0 ? '' : 'No supplier has a time from order to door yet.',
    where === undefined ? '' : `${where}.`,
  ].filter(Boolean);
  return {
    kind: 'answer',
    subject: 'Order by',
    result:
      all.length === 0
        ? `Everything ${stage.name} needs is here or on its way`
        : `${all.length} ${all.length === 1 ? 'part' : 'parts'} to order for ${stage.name}`,
    ...(certainty.length === 0 ? {} : { certainty: certainty.join(' ') }),
    items: shown.map((one) => itemOf(one, today)),
    buttons,
    smallPrint: [
      'Needed: the day its first job would begin half of the time, were everything not yet ordered here already.',
    ],
    audience: 'crew',
    data: {
      stage: stage.key,
      parts: all.map(({ part, neededOn, order }) => ({
        part: part.id,
        name: part.name,
        neededOn,
        orderOn: order?.safeOn ?? null,
        latestOrderOn: order?.latestOn ?? null,
        supplier: order?.supplier ?? null,
      })),
    },
  };
}

function itemOf({ part, neededOn, order }: ToOrder, today: Day): Item {
  const needed = `Needed ${sayDay(neededOn, today)}.`;
  if (order === undefined) return { text: part.name, note: needed };
  const { latestOn, safeOn, supplier } = order;
  if (latestOn < today) {
    return {
      text: part.name,
      note: `${needed} Too late for that day even from ${supplier}: order it now.`,
      tone: 'late',
    };
  }
  const safe = safeOn < today ? '' : `, ${sayDay(safeOn, today)} to be sure`;
  return {
    text: part.name,
    note: `${needed} Order by ${sayDay(latestOn, today)}${safe}, from ${supplier}.`,
    tone: safeOn <= today ? 'soon' : 'plain',
  };
}
