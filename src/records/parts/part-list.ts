import { pageOf } from '../../core/pages.ts';
import type { Answer, Item } from '../../core/reply.ts';
import type { Day } from '../../core/time.ts';
import type { Order } from '../orders/order.ts';
import type { PartStanding, Whereabouts } from './part.ts';
import { partButtons } from './part-buttons.ts';
import { partData } from './part-data.ts';
import type { KnownPart } from './part-store.ts';
import { isLatePart, sayStanding } from './say-part.ts';
import type { KnownStanding } from './standings.ts';

/** Where a part can be, in the order in which a list shows them: what needs a hand first. */
export const WHEREABOUTS = [
  'to sort out',
  'not ordered',
  'out for work',
  'on order',
  'in the box',
  'on the shelf',
  'fitted',
  'sent back',
] as const satisfies readonly Whereabouts[];

export interface PartListView {
  readonly standings: readonly KnownStanding[];
  readonly ordersOf: (part: KnownPart) => readonly Order[];
  readonly today: Day;
  readonly where?: Whereabouts | 'missing' | undefined;
  readonly system?: string | undefined;
  readonly page: number;
}

/** Each with its likely next button, so fewer fit a card than of a bare list. */
const ON_A_PAGE = 8;

/** All parts of a build, or those in one place or of one system, what needs a hand first; `data` has the page shown. */
export function partList({ standings, ordersOf, today, where, system, page }: PartListView): Answer {
  const meant = standings
    .filter(
      (one) => where === undefined || (where === 'missing' ? one.missing > 0 : one.whereabouts === where),
    )
    .filter(({ part }) => system === undefined || part.system?.toLowerCase() === system.toLowerCase())
    .toSorted((a, b) => rank(a, today) - rank(b, today));
  const args = { ...(where === undefined ? {} : { where }), ...(system === undefined ? {} : { system }) };
  const leaf = pageOf(meant, page, { command: 'part', action: 'list', args }, ON_A_PAGE);
  return {
    kind: 'answer',
    subject: 'Parts',
    result: headline(meant, where, system),
    tone: meant.some((one) => isLatePart(one, today)) ? 'late' : 'plain',
    ...(standings.length === 0
      ? { certainty: '/part add writes one down, and so does the first /order place of it.' }
      : {}),
    items: leaf.things.map((one) => itemOf(one, ordersOf(one.part), today)),
    ...(leaf.things.length === 0
      ? {}
      : {
          menu: {
            prompt: 'Open one',
            does: { command: 'part', action: 'show', args: {} },
            arg: 'part',
            choices: leaf.things.map(({ part }) => ({
              label: part.name.slice(0, 100),
              value: `#${part.id}`,
            })),
          },
          buttons: leaf.buttons,
        }),
    audience: 'crew',
    data: { count: meant.length, page: leaf.page, pages: leaf.pages, parts: leaf.things.map(partData) },
  };
}

/** Late before the rest of its kind, and what is missing before what is not. */
function rank(standing: PartStanding, today: Day): number {
  const place = WHEREABOUTS.indexOf(standing.whereabouts);
  return place * 4 - (isLatePart(standing, today) ? 2 : 0) - (standing.missing > 0 ? 1 : 0);
}

function headline(
  meant: readonly PartStanding[],
  where: string | undefined,
  system: string | undefined,
): string {
  const of = system === undefined ? '' : ` of ${system}`;
  const count = `${meant.length} ${meant.length === 1 ? 'part' : 'parts'}${of}`;
  if (where !== undefined) return meant.length === 0 ? `Nothing${of} is ${where}` : `${count} ${where}`;
  const counts = WHEREABOUTS.flatMap((place) => {
    const here = meant.filter(({ whereabouts }) => whereabouts === place).length;
    return here === 0 ? [] : [`${here} ${place}`];
  });
  return counts.length === 0 ? `No parts${of} yet` : `${count}: ${counts.join(', ')}`;
}

function itemOf(standing: KnownStanding, orders: readonly Order[], today: Day): Item {
  const late = isLatePart(standing, today);
  return {
    text: standing.part.name,
    note: sayStanding(standing, today),
    tone: late ? 'late' : standing.missing > 0 || standing.toSortOut > 0 ? 'soon' : 'plain',
    buttons: partButtons(standing, orders).slice(0, 1),
  };
}
