import { standings } from '../../records/parts/standings.ts';
import type { Sheet } from '../csv.ts';
import type { SheetSource } from './sheet-source.ts';

/** Every part with how many of it are where. */
export function partSheet({ record, build, today }: SheetSource): Sheet {
  return {
    name: 'parts',
    head: [
      'number',
      'part',
      'also called',
      'origin',
      'system',
      'single use',
      'needed',
      'in hand',
      'fitted',
      'coming',
      'out for work',
      'to sort out',
      'sent back',
      'missing',
      'where',
      'note',
      'link',
    ],
    rows: standings(record, build.id, today).map(({ part, ...at }) => [
      part.id,
      part.name,
      part.alsoCalled.join(', ') || null,
      part.origin,
      part.system,
      part.singleUse ? 'yes' : 'no',
      part.needed,
      at.inHand,
      at.fitted,
      sum(at.coming),
      sum(at.out),
      at.toSortOut,
      at.sentBack,
      at.missing,
      at.whereabouts,
      part.note,
      part.link,
    ]),
  };
}

const sum = (all: readonly { readonly quantity: number }[]): number =>
  all.reduce((total, { quantity }) => total + quantity, 0);
