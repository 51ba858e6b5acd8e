import type { UnitId } from '../../calc/units/table.ts';
import type { Field } from './fields.ts';
import { readAmount } from './read-amount.ts';
import type { QuantityReading } from './reading.ts';
import { resolveUnit } from './resolve-unit.ts';
import type { Amount } from './scan.ts';
import { beyondLimits, refuse, valued } from './verdicts.ts';

/** What follows what, and from how many on it would have been one of the larger. */
const LADDERS: readonly (readonly (readonly [unit: UnitId, fits: number])[])[] = [
  [
    ['ft', Number.POSITIVE_INFINITY],
    ['in', 12],
  ],
  [
    ['stone', Number.POSITIVE_INFINITY],
    ['lb', 14],
    ['oz', 16],
  ],
  [
    ['deg', Number.POSITIVE_INFINITY],
    ['arcmin', 60],
    ['arcsec', 60],
  ],
  [
    ['day', Number.POSITIVE_INFINITY],
    ['h', 24],
    ['min', 60],
    ['s', 60],
  ],
];

/** One quantity in steps: `5' 6"`, `12°30′`, `1h30`, `2 lb 6 oz`. Undefined when the amounts are not that. */
export function compound(amounts: readonly Amount[], field: Field): QuantityReading | undefined {
  const [first, ...others] = amounts;
  const start = first === undefined ? undefined : unitOf(first, field);
  const ladder = LADDERS.find((steps) => steps.some(([unit]) => unit === start));
  if (first === undefined || start === undefined || ladder === undefined || others.length === 0)
    return undefined;
  const from = ladder.findIndex(([unit]) => unit === start);
  const head = readAmount(first, field);
  if (head.verdict !== 'read') return undefined;
  let figure = head.figure;
  let step = from;
  for (const amount of others) {
    step += 1;
    const next = ladder[step];
    const unit = amount.unit === '' ? next?.[0] : unitOf(amount, field);
    if (next === undefined || unit !== next[0] || amount.sign !== '') return undefined;
    if (!(amount.number.value >= 0 && amount.number.value < next[1]))
      return refuse(
        `${amount.figures} of ${next[0]} is more than there are in one ${ladder[step - 1]?.[0]}.`,
        field,
      );
    const size = valued(amount.number.value, unit, field).value / valued(1, start, field).value;
    figure += first.sign === '-' ? -size : size;
  }
  const { possible, ...whole } = valued(figure, start, field);
  if (!possible) return beyondLimits(`${first.figures} ${first.unit}`, start, field);
  return { verdict: 'read', ...whole };
}

function unitOf(amount: Amount, field: Field): UnitId | undefined {
  const meant = resolveUnit(amount.unit, field);
  if (meant.kind === 'unit') return meant.unit;
  // a minute sign in a time, which by itself would be asked about
  return meant.kind === 'doubt' && meant.units.length === 1 && field.called === 'A time'
    ? meant.units[0]
    : undefined;
}
