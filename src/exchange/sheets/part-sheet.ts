import type { WholeBuild } from '../../records/builds/whole-build.ts';
import type { Sheet } from '../csv.ts';

/** Every part with how many of it are where. */
export function partSheet({ standings }: WholeBuild): Sheet {
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
    rows: standings.map(({ part, ...at }) => [
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
