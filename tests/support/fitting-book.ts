import { type Adapter, adapterCatalogue } from '../../src/calc/fittings/adapters.ts';
import { type EndBook, endBook } from '../../src/calc/fittings/book.ts';
import type { End } from '../../src/calc/fittings/end.ts';
import { threadCatalogue } from '../../src/calc/threads/catalogue.ts';
import { adapterTables } from '../../src/tables/adapter-shapes.ts';
import { oRings, sealingRings } from '../../src/tables/fitting-sizes.ts';
import { fittingKinds, fittings } from '../../src/tables/fittings.ts';
import { threadTables } from '../../src/tables/threads.ts';

/** The ends and adapters of the real tables. */
export const book: EndBook = endBook({
  threads: threadCatalogue(threadTables),
  fittings,
  kinds: fittingKinds,
  oRings,
  rings: sealingRings,
});
export const adapters: readonly Adapter[] = adapterCatalogue(book, adapterTables);

/** @throws when the book has no such end. */
export function endNamed(id: string): End {
  const found = book.find(id);
  if (found) return found;
  throw new Error(`no end is called ${id}`);
}
