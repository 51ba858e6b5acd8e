import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { adaptReply, dashReply, mateReply } from '../../commands/fitting.ts';
import { writeActionRef } from '../../src/bot/action-ref.ts';
import { orderLine } from '../../src/calc/fittings/adapt-answer.ts';
import { findAdapter, turned } from '../../src/calc/fittings/adapters.ts';
import { shortestChain } from '../../src/calc/fittings/chain.ts';
import type { End, EndSeat } from '../../src/calc/fittings/end.ts';
import { mate } from '../../src/calc/fittings/mate.ts';
import { endsMeant } from '../../src/calc/fittings/resolve.ts';
import { UserError } from '../../src/core/user-error.ts';
import { readFittingEnd } from '../../src/phrases/fittings/end.ts';
import { adapters, book } from '../support/fitting-book.ts';

const runs = {
  seed: Number(process.env['FC_SEED'] ?? 20261125),
  numRuns: Number(process.env['FC_RUNS'] ?? 300),
};
const anEnd = fc.constantFrom(...book.ends);
const SEALING: ReadonlySet<EndSeat> = new Set([
  'cone37',
  'cone45',
  'cone60',
  'face-oring',
  'boss-oring',
  'washer',
  'taper',
]);
const adaptable = adapters.flatMap(({ a, b }) => [a, b]);

/** Ends of nearly the same size meet too seldom by chance. */
const aNearPair = anEnd.chain((end) => {
  const near = book.ends.filter((one) => Math.abs(one.thread.basic.majorMm - end.thread.basic.majorMm) < 0.6);
  return fc.tuple(fc.constant(end), fc.constantFrom(...near));
});

describe('mating', () => {
  it('does not hang on which end is named first', () => {
    fc.assert(
      fc.property(fc.oneof(fc.tuple(anEnd, anEnd), aNearPair), ([a, b]) => {
        expect(mate(a, b)).toEqual(mate(b, a));
      }),
      runs,
    );
  });

  it('never seals what does not mate, and never mates one side with itself', () => {
    fc.assert(
      fc.property(aNearPair, ([a, b]) => {
        const { mates, seals } = mate(a, b);
        if (seals === 'yes') expect(mates).toBe('yes');
        if (a.gender === b.gender) expect(mates).toBe('no');
      }),
      runs,
    );
  });

  it('never seals threads of different pitch, whatever their seats', () => {
    fc.assert(
      fc.property(aNearPair, ([a, b]) => {
        if (Math.abs(a.thread.pitchMm / b.thread.pitchMm - 1) > 0.01)
          expect(mate(a, b).seals).not.toBe('yes');
      }),
      runs,
    );
  });

  it('seals every end of a sealing kind with its own mate', () => {
    const pairs = book.ends.flatMap((end) => {
      if (end.gender !== 'male' || !SEALING.has(end.seat)) return [];
      const own = book.ends.find(
        (one) =>
          one.gender === 'female' &&
          one.seat === end.seat &&
          one.thread === end.thread &&
          counterpart(end, one),
      );
      return [[end, own] as const];
    });
    expect(pairs.length).toBeGreaterThan(300);
    for (const [end, own] of pairs) {
      expect(own, end.id).toBeDefined();
      if (own) expect(mate(end, own), `${end.id} on ${own.id}`).toMatchObject({ mates: 'yes', seals: 'yes' });
    }
  });
});

/** R goes into Rc, a banjo bolt into a plain port; all others have a female of their own kind. */
function counterpart(male: End, female: End): boolean {
  if (male.system === 'r') return female.system === 'rc';
  if (male.system === 'banjo') return female.system === 'plain';
  return male.system === female.system;
}

describe('names of ends', () => {
  it('read back as the very same end', () => {
    for (const { id } of book.ends) {
      expect(
        endsMeant(book, id, readFittingEnd(id)).ends.map((end) => end.id),
        id,
      ).toEqual([id]);
    }
  });

  it('mean the same in every spelling', () => {
    const spelt: readonly ((id: string) => string)[] = [
      (id) => id.toUpperCase(),
      (id) => id.toLowerCase(),
      (id) => `  ${id.replaceAll(' ', '   ')} `,
      (id) =>
        id.replace(/(M\d+)x([\d.]+)/u, (_, size, pitch) => `${size} × ${String(pitch).replace('.', ',')}`),
      (id) => id.replaceAll('-', '–'),
      (id) => `${id} thread`,
    ];
    fc.assert(
      fc.property(anEnd, fc.constantFrom(...spelt), ({ id }, spell) => {
        expect(endsMeant(book, spell(id), readFittingEnd(spell(id))).ends.map((end) => end.id)).toEqual([id]);
      }),
      runs,
    );
  });

  it('that mean nothing are refused in words, never by a fault', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 120 }), fc.string({ maxLength: 40 }), (a, b) => {
        try {
          mateReply(a, b);
        } catch (error) {
          expect(error).toBeInstanceOf(UserError);
        }
      }),
      runs,
    );
  });
});

const Found = z.object({ found: z.boolean(), joints: z.array(z.object({ seals: z.string() })) });

describe('a chain of adapters', () => {
  const ends = fc.tuple(fc.constantFrom(...adaptable), fc.constantFrom(...adaptable));

  it('seals at every joint, and joins up from one end to the other', () => {
    let found = 0;
    fc.assert(
      fc.property(ends, ([from, to]) => {
        const chain = shortestChain(from, to, adapters);
        if (chain === undefined) return;
        found += 1;
        expect(chain.joints).toHaveLength(chain.links.length + 1);
        expect(chain.joints[0]?.[0]).toBe(from);
        expect(chain.joints.at(-1)?.[1]).toBe(to);
        for (const [a, b] of chain.joints) expect(mate(a, b).seals).toBe('yes');
        for (const [index, link] of chain.links.entries()) {
          expect(chain.joints[index]?.[1]).toBe(link.a);
          expect(chain.joints[index + 1]?.[0]).toBe(link.b);
        }
      }),
      { ...runs, numRuns: Math.min(runs.numRuns, 150) },
    );
    expect(found).toBeGreaterThan(30);
  });

  it('is none where the two seal as they are, and as long the other way round', () => {
    fc.assert(
      fc.property(ends, ([from, to]) => {
        const there = shortestChain(from, to, adapters);
        const back = shortestChain(to, from, adapters);
        expect(back?.links.length).toBe(there?.links.length);
        if (mate(from, to).seals === 'yes') expect(there?.links).toEqual([]);
      }),
      { ...runs, numRuns: Math.min(runs.numRuns, 60) },
    );
  });

  it('is found for the ends as named', () => {
    expect(Found.parse(adaptReply('ORB -8 female', 'JIC -8 female').data)).toMatchObject({ found: true });
  });

  it('can be ordered link by link: every adapter has a button and a line that fit', () => {
    expect(adapters.length).toBeGreaterThan(1000);
    for (const body of adapters.flatMap((one) => [one, turned(one)])) {
      const ref = writeActionRef({ command: 'fitting', action: 'order', args: { adapter: body.id } });
      expect(ref.length).toBeLessThanOrEqual(100);
      expect(orderLine(body).length).toBeLessThanOrEqual(200);
    }
    const some = adapters.filter((_, index) => index % 97 === 0);
    for (const body of some) expect(findAdapter(adapters, turned(body).id)?.a).toBe(body.b);
  });
});

describe('a dash size', () => {
  it('is the same for millimetres and inches', () => {
    const sizes = (size: string) =>
      z
        .object({ matches: z.array(z.object({ dash: z.number(), as: z.string() })) })
        .parse(dashReply({ size }).data).matches;
    fc.assert(
      fc.property(fc.integer({ min: 3_000, max: 50_000 }), (um) => {
        const mm = um / 1000;
        expect(sizes(`${mm} mm`)).toEqual(sizes(`${(mm / 25.4).toFixed(7)} in`));
      }),
      runs,
    );
  });
});
