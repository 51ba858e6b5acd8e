import { readQuantityList } from '../phrases/quantity/read-list.ts';
import { readQuantity } from '../phrases/quantity/read-quantity.ts';
import type { Read } from '../phrases/quantity/reading.ts';
import type { Catalogue } from './catalogue.ts';
import type { Request } from './request.ts';

/** The units a request is typed in, in the order its options are declared; a bare figure says nothing of the kind. */
export function typedUnits(asks: Request['asks'], catalogue: Catalogue): readonly Read['typedUnit'][] {
  if (asks.kind !== 'run') return [];
  const entry = catalogue.find(asks.command);
  const options =
    asks.subcommand === null
      ? entry?.options
      : entry?.subcommands.find(({ name }) => name === asks.subcommand)?.options;
  return (options ?? []).flatMap(({ name, measures }) => {
    const text = asks.options[name];
    if (measures === undefined || typeof text !== 'string' || !/\p{L}|["'°]/u.test(text)) return [];
    const reading = readQuantity(text, measures);
    if (reading.verdict === 'read' || reading.verdict === 'range') return [reading.typedUnit];
    const row = readQuantityList(text, measures);
    return row.verdict === 'read' ? [row.typedUnit] : [];
  });
}
