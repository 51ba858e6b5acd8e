import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import lines from '../../data/reference/phrases/quick.json' with { type: 'json' };
import more from '../../data/reference/phrases/quick-more.json' with { type: 'json' };
import { workingDays } from '../../src/calendar/working-days.ts';
import { readQuick } from '../../src/phrases/quick/read-quick.ts';
import type { QuickContext, QuickReading } from '../../src/phrases/quick/reading.ts';
import { boltClasses } from '../../src/tables/fasteners.ts';
import { fuelNames } from '../../src/tables/fuels.ts';
import { check } from '../support/laws.ts';

const context: QuickContext = {
  fuels: fuelNames,
  boltClasses: [...new Set(boltClasses.map(({ id }) => id))],
  dates: {
    now: Temporal.PlainDateTime.from('2026-11-24T09:15'),
    zone: 'Europe/London',
    locale: 'en-GB',
    direction: 'future',
    workingDays: workingDays('GB/ENG'),
  },
};

const read = (text: string): QuickReading => readQuick(text, context);
const known = fc.constantFrom(...[...lines, ...more].map(({ text }) => text));
const answered = fc.constantFrom(
  ...[...lines, ...more].filter(({ verdict }) => verdict === 'answer').map(({ text }) => text),
);

/** What a reading says, without the pieces as they were typed. */
function meant(reading: QuickReading): unknown {
  switch (reading.verdict) {
    case 'answer':
      return { kind: reading.kind, form: reading.form, numbers: reading.numbers };
    case 'ask':
      return { kind: reading.kind, kinds: reading.candidates.map(({ kind }) => kind) };
    case 'none':
      return 'none';
  }
}

/** Pieces that questions are made of, to be put together at random. */
const PIECES =
  'm10 1.5 21.9 x * / - , : ? + ± = -> to in mm bar psi cc lb/h afr λ lambda e85 10.9 grade 8 bore stroke 4 cyl v8 coolant % 50/50 1/2 npt bsp dash an -6 hose torque nm comp cr what how many is when friday week of 5 working days from 22 dec 0 00 1e9 .. ,, ° " \' # @ ( ) £ 🔧 x1 1x 9999999999 -'.split(
    ' ',
  );

describe('free text', () => {
  it('is read without a fault, whatever is typed', () => {
    check([fc.string({ unit: 'binary', maxLength: 200 })], (text) => void read(text));
    check([fc.array(fc.constantFrom(...PIECES), { maxLength: 30 })], (pieces) => {
      for (const joint of [' ', ''])
        expect(['answer', 'ask', 'none']).toContain(read(pieces.join(joint)).verdict);
    });
  });

  it.each([
    '1',
    '1 ',
    '1/',
    '1-',
    'm10x',
    'in ',
    '1 in ',
    'bar',
    ' ',
    'a',
    'x',
    '"',
    '1.5 x ',
    '(',
    'lb ft ',
    '５',
    'e',
  ])('of 4,000 characters of "%s" is nothing, and takes no longer for it', (piece) => {
    expect(read(piece.repeat(4_000).slice(0, 4_000)).verdict).toBe('none');
    // as much as is looked at
    expect(['answer', 'ask', 'none']).toContain(read(piece.repeat(120).slice(0, 120)).verdict);
  });

  it('means the same in capitals', () => {
    check([known], (text) => {
      expect(meant(read(text.toUpperCase()))).toEqual(meant(read(text)));
    });
  });

  it('means the same with more spaces than it needs', () => {
    check([known, fc.constantFrom('  ', '\u00a0', '\u202f', '\t')], (text, space) => {
      expect(meant(read(` ${text.replaceAll(' ', space)} `))).toEqual(meant(read(text)));
    });
  });

  it('means the same with decimal commas', () => {
    check([known], (text) => {
      // three figures behind a comma could be thousands
      const withCommas = text.replace(/(?<=\d)\.(?=\d{1,2}(?!\d))/gu, ',');
      expect(meant(read(withCommas))).toEqual(meant(read(text)));
    });
  });

  it('is talk as soon as it holds a word that no question has', () => {
    check([answered, fc.constantFrom('done', 'lads', 'sausages', 'quid', 'arrived', 'van')], (text, word) => {
      expect(read(`${word} ${text}`).verdict, `${word} ${text}`).not.toBe('answer');
      expect(read(`${text} ${word}`).verdict, `${text} ${word}`).not.toBe('answer');
    });
  });

  it('asked back offers readings that are answered, each as its own kind', () => {
    check([known], (text) => {
      const reading = read(text);
      if (reading.verdict !== 'ask') return;
      expect(reading.candidates.length).toBeGreaterThan(0);
      for (const candidate of reading.candidates.filter(({ open }) => open !== true)) {
        expect(read(candidate.text), `${text}: ${candidate.text}`).toMatchObject({
          verdict: 'answer',
          kind: candidate.kind,
        });
      }
    });
  });

  it('reads a diameter and a pitch as they were meant, in either order and however they are joined', () => {
    const tenths = fc.integer({ min: 70, max: 400 }).filter((each) => each % 10 !== 0);
    const pitch = fc.constantFrom(0.75, 1, 1.25, 1.5, 1.75, 2);
    check(
      [tenths, pitch, fc.constantFrom(' x ', 'x', ' X ', ' by ', '*', ' × '), fc.boolean()],
      (d, p, joint, turned) => {
        const [diameterMm, pair] = [d / 10, [String(d / 10), String(p)]];
        const text = (turned ? pair.toReversed() : pair).join(joint);
        expect(read(text), text).toMatchObject({
          verdict: 'answer',
          kind: 'thread',
          numbers: { diameterMm, pitchMm: p },
        });
      },
    );
  });

  it('reads a bolt’s size and class, and neither for a count of bolts', () => {
    const size = fc.constantFrom(5, 6, 8, 10, 12, 14, 16);
    const grade = fc.constantFrom('8.8', '10.9', '12.9');
    check([size, grade, fc.integer({ min: 2, max: 60 })], (m, propertyClass, count) => {
      const meant = { verdict: 'answer', kind: 'torque', numbers: { diameterMm: m, propertyClass } };
      expect(read(`m${m} ${propertyClass}`)).toMatchObject(meant);
      expect(read(`torque M${m} ${propertyClass}?`)).toMatchObject(meant);
      expect(read(`${count} x m${m} ${propertyClass}`).verdict).toBe('none');
    });
  });

  it('reads a quantity and the unit wanted, whichever is said first', () => {
    const value = fc.integer({ min: 1, max: 999 }).map((each) => each / 10);
    const pair = fc.constantFrom(
      ['bar', 'psi'],
      ['psi', 'kPa'],
      ['lbft', 'Nm'],
      ['hp', 'kW'],
      ['thou', 'mm'],
      ['kg', 'lb'],
    );
    check([value, pair], (figure, [from, to]) => {
      const [one, other] = [read(`${figure} ${from} in ${to}`), read(`how many ${to} is ${figure}${from}?`)];
      expect(one).toMatchObject({ verdict: 'answer', kind: 'convert' });
      expect(meant(other)).toEqual(meant(one));
    });
  });
});
