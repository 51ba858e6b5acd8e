import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readActionRef, writeActionRef } from '../../src/bot/action-ref.ts';

const parameters = {
  numRuns: Number(process.env['FC_RUNS'] ?? 500),
  seed: Number(process.env['FC_SEED'] ?? 20261124),
};

const name = fc.stringMatching(/^[a-z][a-z-]{0,11}$/);
const value = fc.oneof(
  fc.integer(),
  fc.string({ maxLength: 8, unit: 'grapheme' }).filter((text) => text.isWellFormed()),
);
const ref = fc.record({
  command: name,
  action: name,
  args: fc.dictionary(fc.string({ minLength: 1, maxLength: 6 }), value, {
    maxKeys: 3,
    noNullPrototype: true,
  }),
});

describe('a button’s reference', () => {
  it('is read back as it was written', () => {
    let written = 0;
    fc.assert(
      fc.property(ref, (given) => {
        let text: string;
        try {
          text = writeActionRef(given);
        } catch (error) {
          if (error instanceof RangeError) return;
          throw error;
        }
        written += 1;
        expect(text.length).toBeLessThanOrEqual(100);
        const args = Object.entries(given.args).map(([key, arg]): [string, string] => [key, String(arg)]);
        expect(readActionRef(text)).toEqual({ ...given, args: Object.fromEntries(args) });
      }),
      parameters,
    );
    expect(written).toBeGreaterThan(parameters.numRuns / 2);
  });

  it('is refused by the writer, never cut, when it would be longer than the platform takes', () => {
    const args = { note: 'x'.repeat(100) };
    expect(() => writeActionRef({ command: 'order', action: 'show', args })).toThrow(
      'longer than 100 characters',
    );
  });

  it('makes no trouble whatever text comes back', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 120, unit: 'grapheme' }), (text) => {
        const read = readActionRef(text);
        if (read !== null) expect(text.startsWith(`${read.command}/${read.action}`)).toBe(true);
      }),
      parameters,
    );
  });

  it.each(['', 'order', '/order', 'Order/show', 'order/show/more', 'order/show#x', 'order /show', '../x'])(
    'is not read from %j',
    (text) => expect(readActionRef(text)).toBeNull(),
  );
});
