import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { type ThreadInput, threadReply } from '../../commands/thread.ts';
import { threadCatalogue } from '../../src/calc/threads/catalogue.ts';
import { crestDensity, pitchDensity } from '../../src/calc/threads/evidence.ts';
import type { Thread } from '../../src/calc/threads/thread.ts';
import { UserError } from '../../src/core/user-error.ts';
import { fittings } from '../../src/tables/fittings.ts';
import { threadTables } from '../../src/tables/threads.ts';

const runs = {
  seed: Number(process.env['FC_SEED'] ?? 20261125),
  numRuns: Number(process.env['FC_RUNS'] ?? 300),
};
const threads = threadCatalogue(threadTables);
const aThread = fc.constantFrom(...threads);
const aSide = fc.constantFrom('male' as const, 'female' as const);

const Data = z.object({
  candidates: z.array(
    z.object({
      designation: z.string(),
      probability: z.number(),
      stands: z.boolean(),
      fittings: z.array(z.string()),
    }),
  ),
  noneProbability: z.number(),
  ambiguous: z.boolean(),
});
const ask = (input: ThreadInput) => Data.parse(threadReply(input).data);

function crestOf(thread: Thread, side: 'male' | 'female') {
  return side === 'male' ? thread.limits.major : thread.limits.minor;
}

describe('identifying a thread', () => {
  it('lists every thread read anywhere inside its published band with its true pitch', () => {
    fc.assert(
      fc.property(aThread, aSide, fc.double({ min: 0, max: 1, noNaN: true }), (thread, side, share) => {
        const { minMm, maxMm } = crestOf(thread, side);
        const size = `${(minMm + share * (maxMm - minMm)).toFixed(3)} mm x ${thread.pitchMm.toFixed(4)} mm`;
        const { candidates } = ask({ size, side, within: 0.03 });
        expect(candidates.map(({ designation }) => designation)).toContain(thread.id);
      }),
      runs,
    );
  });

  it('ranks a thread read at the middle of its band first, or calls the reading ambiguous', () => {
    for (const thread of threads) {
      for (const side of ['male', 'female'] as const) {
        const { minMm, maxMm } = crestOf(thread, side);
        const size = `${((minMm + maxMm) / 2).toFixed(3)} mm x ${thread.pitchMm.toFixed(4)} mm`;
        const angle = thread.formAngleDeg === 55 ? '55' : '60';
        const taper = thread.tapered ? 'tapered' : 'parallel';
        const { candidates, ambiguous } = ask({ size, side, within: 0.02, angle, taper });
        const place = candidates.findIndex(({ designation }) => designation === thread.id);
        expect(place, `${thread.id} ${side}`).toBeGreaterThanOrEqual(0);
        if (place > 0) {
          expect(ambiguous, `${thread.id} ${side} after ${candidates[0]?.designation}`).toBe(true);
          expect(candidates[place]?.stands).toBe(true);
        }
      }
    }
  });

  it('finds every thread and every fitting under its own name', () => {
    for (const { id } of threads) {
      expect(ask({ size: id }).candidates[0]?.designation, id).toBe(id);
    }
    for (const { id, threadId } of fittings) {
      const [best] = ask({ size: id }).candidates;
      expect(best?.designation, id).toBe(threadId);
      expect(best?.fittings, id).toContain(id);
    }
  });

  it('gives the same answer in mm and in inches', () => {
    fc.assert(
      fc.property(aThread, aSide, fc.integer({ min: -100, max: 100 }), (thread, side, offset) => {
        const { minMm, maxMm } = crestOf(thread, side);
        const inches = ((minMm + maxMm) / 2 + offset / 500) / 25.4;
        const pitchIn = thread.pitchMm / 25.4;
        const metric = ask({
          size: `${(inches * 25.4).toFixed(9)} mm x ${(pitchIn * 25.4).toFixed(9)} mm`,
          side,
          within: 0.04,
        });
        const imperial = ask({
          size: `${inches.toFixed(11)} in x ${pitchIn.toFixed(11)} in`,
          side,
          within: 0.04,
        });
        expect(imperial.candidates.map(({ designation }) => designation)).toEqual(
          metric.candidates.map(({ designation }) => designation),
        );
        for (const [index, { probability }] of metric.candidates.entries()) {
          expect(imperial.candidates[index]?.probability).toBeCloseTo(probability, 6);
        }
      }),
      runs,
    );
  });

  it('does not mind the order of diameter and pitch', () => {
    fc.assert(
      fc.property(aThread, aSide, (thread, side) => {
        const { minMm, maxMm } = crestOf(thread, side);
        const across = `${((minMm + maxMm) / 2).toFixed(2)} mm`;
        const pitch = thread.tpi === undefined ? `${thread.pitchMm} mm` : `${thread.tpi} tpi`;
        expect(ask({ size: `${pitch} x ${across}`, side })).toEqual(
          ask({ size: `${across} x ${pitch}`, side }),
        );
      }),
      runs,
    );
  });

  it('shares out a probability of one, best first', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 11, max: 70, noNaN: true }),
        fc.double({ min: 0.3, max: 5, noNaN: true }),
        fc.double({ min: 0.01, max: 1, noNaN: true }),
        (diameter, pitch, within) => {
          const { candidates, noneProbability, ambiguous } = ask({
            size: `${diameter.toFixed(2)} mm x ${pitch.toFixed(2)} mm`,
            within,
          });
          const total = candidates.reduce((sum, { probability }) => sum + probability, noneProbability);
          expect(total).toBeCloseTo(1, 9);
          for (const [index, { probability }] of candidates.entries()) {
            expect(probability).toBeGreaterThanOrEqual(0);
            expect(probability).toBeLessThanOrEqual(candidates[index - 1]?.probability ?? 1);
          }
          expect(ambiguous).toBe(candidates.filter(({ stands }) => stands).length > 1);
        },
      ),
      runs,
    );
  });

  it('keeps every candidate that stood when the readings get less certain', () => {
    fc.assert(
      fc.property(aThread, aSide, fc.double({ min: 1.5, max: 6, noNaN: true }), (thread, side, times) => {
        const { minMm, maxMm } = crestOf(thread, side);
        const size = (plusMinus: number) =>
          `${((minMm + maxMm) / 2).toFixed(3)} ±${(0.02 * plusMinus).toFixed(4)} mm x ${thread.pitchMm.toFixed(4)} ±${(0.01 * thread.pitchMm * plusMinus).toFixed(5)} mm`;
        const sharp = ask({ size: size(1), side });
        const vague = ask({ size: size(times), side });
        const standing = (found: typeof sharp) => found.candidates.filter(({ stands }) => stands).length;
        expect(standing(vague)).toBeGreaterThanOrEqual(standing(sharp));
      }),
      runs,
    );
  });

  it('is no surer of a thread read at its middle when the pitch is less certain', () => {
    fc.assert(
      fc.property(aThread, fc.double({ min: 1.1, max: 5, noNaN: true }), (thread, times) => {
        const pitch = thread.pitchMm;
        const share = (plusMinusMm: number) => {
          const densities = threads.map((each) => pitchDensity({ mm: pitch, plusMinusMm }, each.pitchMm));
          return (
            pitchDensity({ mm: pitch, plusMinusMm }, pitch) / densities.reduce((sum, each) => sum + each, 0)
          );
        };
        expect(share(0.01 * pitch * times)).toBeLessThanOrEqual(share(0.01 * pitch) + 1e-9);
      }),
      runs,
    );
  });

  it('spreads a crest over a density of one', () => {
    fc.assert(
      fc.property(
        aThread,
        aSide,
        fc.double({ min: 0.005, max: 0.5, noNaN: true }),
        (thread, side, plusMinusMm) => {
          const band = thread.crest[side];
          const from = band.below.toMm - 4 * plusMinusMm;
          const to = band.above.toMm + 4 * plusMinusMm;
          const steps = 4000;
          let sum = 0;
          for (let step = 0; step < steps; step += 1) {
            const mm = from + ((step + 0.5) / steps) * (to - from);
            sum += crestDensity(band, { mm, plusMinusMm }) * ((to - from) / steps);
          }
          expect(sum).toBeCloseTo(1, 3);
        },
      ),
      { ...runs, numRuns: 60 },
    );
  });

  it('answers or refuses in plain words whatever is typed', () => {
    const pieces = fc.constantFrom(
      '21.9',
      '1.5',
      'x',
      '/',
      '-',
      '11/16',
      'tpi',
      'in',
      'mm',
      '±',
      ',',
      '10',
      ' ',
      'm',
      '#',
      'to',
      'over',
      'male',
      '"',
      'jic',
      'bsp',
      '💥',
      '__proto__',
      '1e9',
      '..',
    );
    const text = fc.oneof(
      fc.string({ minLength: 1, maxLength: 100 }),
      fc.array(pieces, { minLength: 1, maxLength: 12 }).map((parts) => parts.join('')),
    );
    fc.assert(
      fc.property(text, (size) => {
        try {
          expect(threadReply({ size }).kind).toBe('answer');
        } catch (error) {
          if (!(error instanceof UserError)) throw error;
          expect(error.message.length).toBeGreaterThan(10);
        }
      }),
      { ...runs, numRuns: runs.numRuns * 5 },
    );
  });
});
