import type { ActionRef, Button } from './reply.ts';

/** One page of a list too long for a phone, with the buttons to its neighbours. */
export interface Page<Thing> {
  readonly things: readonly Thing[];
  readonly buttons: readonly Button[];
  /** "11 to 20 of 43"; absent where everything is on one page. */
  readonly where?: string;
  /** From 1. */
  readonly page: number;
  readonly pages: number;
}

/** Argument that names the page a button leads to. */
export const PAGE_ARG = 'page';

/** As many as a message holds with a button or two each. */
const USUAL_SIZE = 10;

/**
 * Cuts one page out of a list. A page beyond the end is the last one, since the list may have grown shorter since its
 * button was made.
 *
 * @param wanted counted from 1.
 * @param does the action that shows another page; it is given the page's number as `page`.
 */
export function pageOf<Thing>(
  all: readonly Thing[],
  wanted: number,
  does: ActionRef,
  size = USUAL_SIZE,
): Page<Thing> {
  const pages = Math.max(1, Math.ceil(all.length / size));
  const page = Math.min(Math.max(1, wanted), pages);
  const first = (page - 1) * size;
  const things = all.slice(first, first + size);
  if (pages === 1) return { things, buttons: [], page, pages };
  const to = (label: string, other: number): Button => ({
    label,
    does: { ...does, args: { ...does.args, [PAGE_ARG]: other } },
  });
  return {
    things,
    buttons: [
      ...(page > 1 ? [to('Page before', page - 1)] : []),
      ...(page < pages ? [to('Next page', page + 1)] : []),
    ],
    where: `${first + 1} to ${first + things.length} of ${all.length}`,
    page,
    pages,
  };
}
