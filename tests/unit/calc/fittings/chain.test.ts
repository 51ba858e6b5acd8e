import { describe, expect, it } from 'vitest';
import { type Adapter, adapterName } from '../../../../src/calc/fittings/adapters.ts';
import { pipeDash } from '../../../../src/calc/fittings/book.ts';
import { shortestChain } from '../../../../src/calc/fittings/chain.ts';
import { suggestEnds } from '../../../../src/calc/fittings/suggest.ts';
import { adapters, book, endNamed } from '../../../support/fitting-book.ts';

const chain = (from: string, to: string, known: readonly Adapter[] = adapters) =>
  shortestChain(endNamed(from), endNamed(to), known)?.links.map(adapterName);

const body = (a: string, b: string): Adapter => ({
  id: `${a}_${b}`,
  shape: 'adapter',
  a: endNamed(a),
  b: endNamed(b),
  apart: 0,
});

describe('the shortest chain', () => {
  it.each([
    ['JIC -8 female', 'ORB -10 female', 1],
    ['M10x1 female flat face', 'JIC -4 female', 1],
    ['SAE45 -6 female', 'JIC -6 female', 2],
    ['JIC -6 male', 'JIC -6 male', 1],
    ['JIC -6 male', 'JIC -6 female', 0],
  ])('from %s to %s has %i links', (from, to, links) => {
    expect(chain(from, to)).toHaveLength(links);
  });

  it('takes fewer joints before it avoids a taper thread', () => {
    const known = [
      body('JIC -4 female', '1/4-18 NPT male'),
      body('1/4-18 NPT female', 'ORB -4 male'),
      body('JIC -4 female', 'G 1/4 male'),
      body('G 1/4 female', 'M14x1.5 male flat face'),
      body('M14x1.5 female flat face', 'ORB -4 male'),
    ];
    expect(chain('JIC -4 male', 'ORB -4 female', known)?.[0]).toContain('1/4-18 NPT male');
    expect(chain('JIC -4 male', 'ORB -4 female', known.slice(2))).toHaveLength(3);
  });

  it('avoids a taper thread where there are as few joints without it', () => {
    const known = [
      body('JIC -4 female', '1/4-18 NPT male'),
      body('1/4-18 NPT female', 'ORB -4 male'),
      body('JIC -4 female', 'G 1/4 male'),
      body('G 1/4 female', 'ORB -4 male'),
    ];
    expect(chain('JIC -4 male', 'ORB -4 female', known)?.[0]).toContain('G 1/4 male');
  });

  it('is none where no adapter seals', () => {
    expect(chain('M10x1 female double flare', 'JIC -3 female')).toBeUndefined();
    expect(chain('JIC -4 male', 'ORB -4 female', [])).toBeUndefined();
  });
});

describe('a pipe size in sixteenths', () => {
  it.each([
    ['1/8', 2],
    ['3/4', 12],
    ['1', 16],
    ['1-1/4', 20],
    ['2', 32],
  ])('of %s is %i', (nominal, dash) => {
    expect(pipeDash(nominal)).toBe(dash);
  });
});

describe('ends offered while typing', () => {
  it('have every word typed so far, the usual kinds first', () => {
    expect(suggestEnds(book, 'jic -6 m').map(({ value }) => value)).toContain('JIC -6 male');
    expect(suggestEnds(book, '9/16-18')[0]?.value).toBe('JIC -6 male');
    expect(suggestEnds(book, '')).toHaveLength(25);
    expect(suggestEnds(book, 'nothing like it')).toEqual([]);
  });
});
