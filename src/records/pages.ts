import type { ActionRef, Button } from '../core/reply.ts';

/** One page of a list too long for a phone, with the buttons to its neighbours. */
export interface Page<Thing> {
  readonly things: readonly Thing[];
  readonly buttons: readonly Button[];
  /** From 1. */
  readonly page: number;
  readonly pages: number;
}

/**
 * Cuts one page out of a list. A page beyond the end is the last one, since the list may have grown shorter since its
 * button was made.
 *
 * @param wanted counted from 1
 * @param does the action that shows another page; it is given the page's number as `page`
 */
export function pageOf<Thing>(
  all: readonly Thing[],
  wanted: number,
  does: ActionRef,
  size = 12,
): Page<Thing> {
  const pages = Math.max(1, Math.ceil(all.length / size));
  const page = Math.min(pages, Math.max(1, wanted));
  const to = (other: number, label: string): Button => ({
    label,
    does: { ...does, args: { ...does.args, page: other } },
  });
  return {
    things: all.slice((page - 1) * size, page * size),
    buttons: [
      ...(page > 1 ? [to(page - 1, `Back to page ${page - 1}`)] : []),
      ...(page < pages ? [to(page + 1, `On to page ${page + 1} of ${pages}`)] : []),
    ],
    page,
    pages,
  };
}
