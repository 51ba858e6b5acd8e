import type { ActionRef, Button } from '../core/reply.ts';

/** One page of a list too long for a phone, with the buttons to its neighbours. */
export interface Page<Thing> {
  readonly things: readonly Thing[];
  readonly buttons: readonly Button[];
  /** "11 to 20 of 43"; absent where everything is on one page. */
  readonly where?: string;
}

/** Argument that names the page a button leads to. */
export const PAGE_ARG = 'page';

/**
 * Cuts one page out of a list. A page beyond the end is the last one, since the list may have grown shorter since its
 * button was made.
 *
 * @param page counted from 1.
 * @param does the action that shows another page; it is given the page's number as `page`.
 */
export function pageOf<Thing>(all: readonly Thing[], page: number, does: ActionRef, size = 10): Page<Thing> {
  const pages = Math.max(1, Math.ceil(all.length / size));
  const at = Math.min(Math.max(1, page), pages);
  const first = (at - 1) * size;
  const things = all.slice(first, first + size);
  if (pages === 1) return { things, buttons: [] };
  const to = (other: number): ActionRef => ({ ...does, args: { ...does.args, [PAGE_ARG]: other } });
  return {
    things,
    buttons: [
      ...(at > 1 ? [{ label: 'Page before', does: to(at - 1) }] : []),
      ...(at < pages ? [{ label: 'Next page', does: to(at + 1) }] : []),
    ],
    where: `${first + 1} to ${first + things.length} of ${all.length}`,
  };
}
