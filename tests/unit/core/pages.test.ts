import { describe, expect, it } from 'vitest';
import { pageOf } from '../../../src/core/pages.ts';

const does = { command: 'order', action: 'list', args: { supplier: 3 } };
const forty = Array.from({ length: 43 }, (_, index) => index + 1);

describe('a page of a list', () => {
  it('is all of a short one, with nowhere to go', () => {
    expect(pageOf([1, 2, 3], 1, does)).toEqual({ things: [1, 2, 3], buttons: [], page: 1, pages: 1 });
  });

  it('says where it is and leads both ways', () => {
    const page = pageOf(forty, 2, does);
    expect(page.things).toEqual(forty.slice(10, 20));
    expect(page.where).toBe('11 to 20 of 43');
    expect(page.buttons).toEqual([
      { label: 'Page before', does: { ...does, args: { supplier: 3, page: 1 } } },
      { label: 'Next page', does: { ...does, args: { supplier: 3, page: 3 } } },
    ]);
  });

  it.each([
    [99, [41, 42, 43]],
    [0, forty.slice(0, 10)],
    [-4, forty.slice(0, 10)],
  ])('asked for page %i, it is one there is', (page, things) => {
    expect(pageOf(forty, page, does).things).toEqual(things);
  });

  it('holds each thing once over all pages', () => {
    const seen = [1, 2, 3, 4, 5].flatMap((page) => pageOf(forty, page, does).things);
    expect(seen).toEqual(forty);
  });

  it('is the empty page of an empty list', () => {
    expect(pageOf([], 1, does)).toEqual({ things: [], buttons: [], page: 1, pages: 1 });
  });
});
