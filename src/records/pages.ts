import type { ActionRef, Button } from '../core/reply.ts';

/** So many things on a card that it reads without much scrolling on a phone and never meets the platform's limits. */
export const PAGE = 12;

/** One page of a long list. */
export interface Page<Thing> {
  readonly shown: readonly Thing[];
  /** From 1. */
  readonly page: number;
  readonly pages: number;
}

/** The page asked for, or the nearest there is. */
export function pageOf<Thing>(things: readonly Thing[], wanted: number, size = PAGE): Page<Thing> {
  const pages = Math.max(1, Math.ceil(things.length / size));
  const page = Math.min(pages, Math.max(1, Math.trunc(wanted)));
  return { shown: things.slice((page - 1) * size, page * size), page, pages };
}

/** Turns the leaf; nothing where all of it is on one. */
export function pageButtons({ page, pages }: Page<unknown>, does: ActionRef): readonly Button[] {
  const to = (wanted: number, label: string): Button => ({
    label,
    does: { ...does, args: { ...does.args, page: wanted } },
  });
  return [
    ...(page > 1 ? [to(page - 1, `Back to page ${page - 1}`)] : []),
    ...(page < pages ? [to(page + 1, `On to page ${page + 1} of ${pages}`)] : []),
  ];
}
