import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fromBase, toBase } from '../../src/calc/units/convert.ts';
import { sayFigure } from '../../src/calc/units/say.ts';
import { dimensions, type UnitId, unitIds, units } from '../../src/calc/units/table.ts';
import { UserError } from '../../src/core/user-error.ts';
import { type FieldName, fields } from '../../src/phrases/quantity/fields.ts';
import { readConversion } from '../../src/phrases/quantity/read-conversion.ts';
import { readQuantity } from '../../src/phrases/quantity/read-quantity.ts';
import { HOSTILE_WORDS } from '../support/hostile-words.ts';

fc.configureGlobal({
  seed: Number(process.env['FC_SEED'] ?? 20261125),
  numRuns: Number(process.env['FC_RUNS'] ?? 100),
});

const names = Object.keys(fields).filter((name): name is FieldName => Object.hasOwn(fields, name));

/** Every unit with a field it is read in; a share is typed as a percentage, and °R is always asked about. */
const typable = unitIds.flatMap((unit) => {
  if (unit === 'degR' || units[unit].scale.kind === 'wire-gauge') return [];
  const share = unit === 'percent' || unit === 'permille';
  const field = names.find((name) => {
    const { admits, without } = fields[name];
    const admitted = admits.some(({ dimension }) => dimension === units[unit].dimension);
    return admitted && without?.includes(unit) !== true && (name === 'percent') === share;
  });
  return field === undefined ? [] : [{ unit, field }];
});

/** Figures of up to four digits at any size, as instruments show them. */
const figure = fc
  .tuple(fc.integer({ min: 1, max: 9999 }), fc.integer({ min: -4, max: 4 }))
  .map(([digits, power]) => Number(`${digits}e${power}`));

describe('what is said is read back as the same', () => {
  it('has units of nearly every dimension', () => {
    const dimensionsTyped = new Set(typable.map(({ unit }) => units[unit].dimension));
    expect(dimensionsTyped.size).toBeGreaterThan(20);
  });

  it.each(typable)('$unit in $field', ({ unit, field }) => {
    let read = 0;
    fc.assert(
      fc.property(figure, (value) => {
        const said = sayFigure(value, unit);
        const found = readQuantity(said, field);
        // beyond the field's limits it is refused; a word such as "lb" of a spring may be asked about
        if (found.verdict !== 'read') return found.verdict !== 'range';
        read += 1;
        const shown = Number(
          said
            .replace(/[^\d.]*$/u, '')
            .replace(/\u202f/gu, '')
            .replace(/ ?[^\d.].*$/u, ''),
        );
        return Math.abs(found.figure - shown) <= Math.abs(shown) * 1e-12;
      }),
    );
    expect(read, `nothing said in ${unit} was read in ${field}`).toBeGreaterThan(0);
  });
});

describe('a unit', () => {
  it.each(unitIds.filter((unit) => units[unit].scale.kind !== 'wire-gauge'))(
    '%s comes back from its base',
    (unit) => {
      fc.assert(
        fc.property(figure, (value) => Math.abs(fromBase(toBase(value, unit), unit) / value - 1) < 1e-9),
      );
    },
  );

  it.each(
    unitIds.filter((unit) => units[unit].scale.kind === 'factor' || units[unit].scale.kind === 'offset'),
  )('%s grows with its figure', (unit) => {
    fc.assert(fc.property(figure, figure, (a, b) => a === b || a < b === toBase(a, unit) < toBase(b, unit)));
  });

  it('of every dimension is one of itself', () => {
    for (const { base } of Object.values(dimensions)) expect(toBase(1, base), base).toBe(1);
  });
});

describe('the reader', () => {
  const anything = fc.oneof(
    fc.string({ unit: 'grapheme', maxLength: 100 }),
    fc.constantFrom(...HOSTILE_WORDS),
    fc
      .array(
        fc.constantFrom(
          ...[
            '12',
            '1,234',
            '1.5',
            '-',
            '±',
            ' ',
            'mm',
            'psi',
            '"',
            "'",
            '/',
            'to',
            'bar',
            '(',
            ')',
            'x',
            'k',
            '°',
          ],
          ...[
            'about',
            'vacuum',
            'e9',
            '0',
            '.',
            ',',
            'C',
            'lb',
            'ft',
            'and',
            '%',
            'M',
            '…',
            '\u202f',
            '½',
            '#',
          ],
        ),
        { maxLength: 14 },
      )
      .map((parts) => parts.join('')),
  );

  it('throws on nothing, and gives finite numbers within the limits', () => {
    fc.assert(
      fc.property(anything, fc.constantFrom(...names), (text, name) => {
        const found = readQuantity(text, name);
        const limits = fields[name].admits;
        const within = (value: number, unit: UnitId) =>
          limits.some(
            (each) => each.unit === unit && ((value >= each.min && value <= each.max) || value === 0),
          );
        if (found.verdict === 'read') return within(found.value, found.unit);
        if (found.verdict === 'range')
          return within(found.min, found.unit) && within(found.max, found.unit) && found.min <= found.max;
        if (found.verdict === 'ask')
          return found.question.length > 5 && found.options.every(({ value, unit }) => within(value, unit));
        return found.problem.length > 20;
      }),
      { numRuns: 3000 },
    );
  });

  it('refuses what is too long without reading it', () => {
    for (const text of ['9'.repeat(4000), '1 '.repeat(2000), `${'('.repeat(3000)}5 bar`]) {
      expect(readQuantity(text, 'pressure').verdict).toBe('refuse');
    }
  });

  it('gives what its own offers say, when one of them is typed', () => {
    fc.assert(
      fc.property(anything, fc.constantFrom(...names), (text, name) => {
        const found = readQuantity(text, name);
        if (found.verdict !== 'ask') return true;
        return found.options.every(({ typed, value }) => {
          const again = readQuantity(typed, name);
          if (again.verdict === 'ask') return again.options.some((each) => each.typed === typed);
          return again.verdict === 'read' && Math.abs(again.value - value) <= Math.abs(value) * 1e-9;
        });
      }),
      { numRuns: 2000 },
    );
  });

  it('reads an inch and its millimetres alike', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 9999 }), (thousandths) => {
        const inches = readQuantity(`${thousandths / 1000} in`, 'length');
        const mm = readQuantity(`${(thousandths * 254) / 10_000} mm`, 'length');
        if (inches.verdict !== 'read') return false;
        const other =
          mm.verdict === 'read' ? mm.value : mm.verdict === 'ask' ? mm.options[0]?.value : undefined;
        return other !== undefined && Math.abs(other - inches.value) < 1e-9;
      }),
    );
  });

  it('reads a decimal comma as a decimal point', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 99 }), fc.integer({ min: 0, max: 99 }), (whole, rest) => {
        const [comma, point] = [',', '.'].map((sign) =>
          readQuantity(`${whole}${sign}${rest} bar`, 'pressure'),
        );
        return comma?.verdict === 'read' && point?.verdict === 'read' && comma.value === point.value;
      }),
    );
  });

  it('is monotone: a larger figure is never read as a smaller value', () => {
    fc.assert(
      fc.property(figure, figure, fc.constantFrom('psi', 'bar', 'kPa', 'inHg', 'MPa'), (a, b, unit) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)].map((each) =>
          readQuantity(`${each} ${unit}`, 'pressure'),
        );
        if (low?.verdict !== 'read' || high?.verdict !== 'read') return true;
        return low.value <= high.value;
      }),
    );
  });
});

describe('a conversion', () => {
  it('is read or refused in words, whatever is typed', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'grapheme', maxLength: 80 }),
        fc.option(fc.string({ maxLength: 40 })),
        (value, to) => {
          try {
            return readConversion(value, to ?? undefined).value.verdict !== undefined;
          } catch (error) {
            return error instanceof UserError && error.message.length > 10;
          }
        },
      ),
      { numRuns: 1000 },
    );
  });
});
