import { type UnitId, units } from '../../calc/units/table.ts';
import type { FieldName } from './fields.ts';
import { readQuantity } from './read-quantity.ts';
import { tidyKeepingCase } from './tidy.ts';

/** A row of quantities as read: `12.1 12 11.8 9.6 bar`. */
export type ListReading =
  | {
      readonly verdict: 'read';
      /** In the field's base unit, in the order typed. */
      readonly values: readonly number[];
      readonly typedUnit: UnitId;
      /** Nobody said the unit; it was told by the size of the figures. */
      readonly unitAssumed: boolean;
    }
  | { readonly verdict: 'ask'; readonly question: string; readonly choices: readonly string[] }
  | { readonly verdict: 'refuse'; readonly why: string };

const LONGEST = 200;
/** `1: 12.1`, `cyl 2 = 12.0`: which one it is, not how much. */
const LABELS = /(^|[\s,;])(?:cyl(?:inder)?\.? ?|no\.? ?|#)?\d{1,2} ?[:=] ?(?=[-+]?[\d.])/giu;
const ITEM = /([-+]?\d[\d.,]*\d|\d)\s*(kgf?\/cm2|[^\d\s.,;+-][^\d\s,;]*)?/giu;
/** A stroke between figures parts them, where it cannot be a fraction. */
const STROKE = /(?<=\d) ?\/ ?(?=\d)/gu;
const LEFT = /[^\s,;|]/u;

/**
 * Quantities typed in a row, parted by spaces, commas or semicolons, each with its unit or one for all: `165 170 168 90 psi`,
 * `12,1 12,0 11,8 bar`, `1: 12.1 bar, 2: 12 bar`, `165,170,168,90`.
 *
 * @param bare the unit meant by figures without one, by the largest of them; without it the field decides, or asks.
 */
export function readQuantityList(
  typed: string,
  field: FieldName,
  bare?: (largest: number) => UnitId | undefined,
): ListReading {
  const plain = tidyKeepingCase(typed)
    .replace(LABELS, '$1')
    .replaceAll(/\band\b|&/giu, ' ');
  const text = field === 'length' ? plain : plain.replaceAll(STROKE, ' ');
  if (typed.length > LONGEST) return { verdict: 'refuse', why: 'That is too long for a row of readings.' };
  const found = [...text.matchAll(ITEM)].flatMap(([, figures = '', unit = '']) =>
    partedAtCommas(figures, unit),
  );
  const rest = text.replace(ITEM, ' ');
  if (found.length === 0 || LEFT.test(rest)) {
    const odd = rest.trim();
    return {
      verdict: 'refuse',
      why: odd === '' ? 'There is no number in it.' : `“${odd}” is not read here.`,
    };
  }
  const said = found.map(({ unit }) => unit).find((unit) => unit !== '');
  const largest = Math.max(...found.map(({ figure }) => Number(figure.replace(',', '.'))));
  const told = said === undefined ? bare?.(largest) : undefined;
  const values: number[] = [];
  let typedUnit: UnitId | undefined;
  for (const { figure, unit } of found) {
    const own = unit === '' ? (said ?? (told === undefined ? '' : units[told].sign)) : unit;
    const reading = readQuantity(`${figure} ${own}`.trim(), field);
    if (reading.verdict === 'ask')
      return asked(
        typed,
        reading.question,
        reading.options.map((each) => each.typed),
      );
    if (reading.verdict !== 'read') {
      const why = reading.verdict === 'refuse' ? reading.problem : 'One figure for each, not a range.';
      return { verdict: 'refuse', why };
    }
    typedUnit ??= reading.typedUnit;
    values.push(reading.value);
  }
  if (typedUnit === undefined) return { verdict: 'refuse', why: 'There is no number in it.' };
  return { verdict: 'read', values, typedUnit, unitAssumed: told !== undefined };
}

interface Item {
  readonly figure: string;
  readonly unit: string;
}

/** Two commas or a comma beside points part figures; one comma alone is a decimal sign, unless it cannot be. */
function partedAtCommas(figures: string, unit: string): readonly Item[] {
  const parts = figures.split(',');
  const list =
    parts.length > 2 || (parts.length === 2 && (figures.includes('.') || /^\d{3},\d{3}$/u.test(figures)));
  if (!list) return [{ figure: figures, unit }];
  return parts.map((figure, index) => ({ figure, unit: index === parts.length - 1 ? unit : '' }));
}

/** Each unit the first figure could have had, behind the whole row. */
function asked(typed: string, question: string, offered: readonly string[]): ListReading {
  const signs = [...new Set(offered.map((each) => each.replace(/^[^\p{L}%°"']+/u, '')))];
  return { verdict: 'ask', question, choices: signs.map((sign) => `${typed.trim()} ${sign}`) };
}
