import { differenceToBase } from '../../calc/units/convert.ts';
import { units } from '../../calc/units/table.ts';
import { compound } from './compound.ts';
import type { Field } from './fields.ts';
import { readMeant } from './read-amount.ts';
import type { QuantityReading, Read } from './reading.ts';
import type { Said } from './reference.ts';
import { type Meant, resolveUnit } from './resolve-unit.ts';
import type { Amount, Joint } from './scan.ts';
import { ask, refuse, type Valued } from './verdicts.ts';

/** Two amounts and what joins them: a range, a tolerance, the same thing twice, feet and inches, or a question. */
export function readPair(
  first: Amount,
  joint: Joint,
  second: Amount,
  field: Field,
  said?: Said,
): QuantityReading {
  const meant = [resolveUnit(first.unit, field), resolveUnit(second.unit, field)] as const;
  switch (joint) {
    case '±':
      return withTolerance(first, second, meant, field, said);
    case 'to':
      return twoUnits(meant)
        ? twice(first, second, meant, field, said)
        : range(first, second, meant, field, said);
    case '':
      return compound([first, second], field) ?? twice(first, second, meant, field, said);
    case '(':
    case '=':
    case 'or':
    case '/':
    case ',':
      return twice(first, second, meant, field, said);
    case 'x': {
      const each = readMeant(second, meant[1], field, said);
      if (each.verdict !== 'read' || first.unit !== '') return whichOf([first, second], meant, field);
      const all = {
        ...each,
        value: each.value * first.number.value,
        figure: each.figure * first.number.value,
      };
      return ask('One of them, or all together?', [asOption(each), asOption(all)]);
    }
    case '+': {
      const [one, other] = [readMeant(first, meant[0], field), readMeant(second, meant[1], field)];
      if (one.verdict !== 'read' || other.verdict !== 'read') return whichOf([first, second], meant, field);
      const sum = { ...one, value: one.value + other.value, figure: one.figure + other.figure };
      return ask('The first step, or both together?', [
        asOption(one),
        ...(one.typedUnit === other.typedUnit ? [asOption(sum)] : []),
      ]);
    }
    case 'and':
    case ':':
    case 'over':
    case 'at':
      return whichOf([first, second], meant, field);
  }
}

/** Several amounts where one was wanted: whatever of them can be read is offered, and nothing is read. */
export function whichOf(amounts: readonly Amount[], meant: readonly Meant[], field: Field): QuantityReading {
  const readings = amounts.map((amount, index) => readMeant(amount, meant[index] ?? { kind: 'none' }, field));
  const options = readings.filter((each) => each.verdict === 'read').map(asOption);
  const refusal = readings.find((each) => each.verdict === 'refuse');
  if (options.length === 0 && refusal !== undefined) return refusal;
  return ask('There are several figures in that: which one?', options);
}

function withTolerance(
  first: Amount,
  second: Amount,
  [own, around]: readonly [Meant, Meant],
  field: Field,
  said?: Said,
): QuantityReading {
  const main = own.kind === 'none' && around.kind !== 'none' ? around : own;
  const share = /^(?:%|percent|prozent|pct)$/iu.test(second.unit) && first.unit !== '';
  const unshared = share && main.kind === 'unit' && units[main.unit].dimension !== 'ratio';
  const read = readMeant(first, unshared ? own : main, field, said);
  if (read.verdict !== 'read') return read;
  if (!Number.isFinite(second.number.value)) return refuse('The tolerance is no number.', field);
  if (unshared) return { ...read, tol: Math.abs(read.value) * second.number.value * 0.01 };
  const unit = around.kind === 'unit' ? around.unit : around.kind === 'none' ? read.typedUnit : undefined;
  const other = second.number.orElse !== undefined || second.sign !== '';
  if (unit === undefined || units[unit].dimension !== units[read.typedUnit].dimension || other)
    return ask('What is the tolerance?', [asOption(read)]);
  const base = differenceToBase(second.number.value, unit, read.figure);
  return { ...read, tol: base / toDifference(read) };
}

/** How many base units there are in one of the unit a value is read in; a difference has no zero. */
const toDifference = ({ unit }: Read): number => differenceToBase(1, unit, 0);

function range(
  first: Amount,
  second: Amount,
  [own, other]: readonly [Meant, Meant],
  field: Field,
  said?: Said,
): QuantityReading {
  const [from, to] = [own.kind === 'none' ? other : own, other.kind === 'none' ? own : other];
  // 6-7k: the thousand is of both
  const start =
    second.thousand && !first.thousand && first.unit === '' ? { ...first, thousand: true } : first;
  const before = said ?? saidOf(other);
  const ends = [readMeant(start, from, field, before), readMeant(second, to, field, said)] as const;
  const [low, high] = ends;
  if (low.verdict !== 'read' || high.verdict !== 'read') {
    const refused = ends.find((each) => each.verdict === 'refuse');
    return refused ?? whichOf([start, second], [from, to], field);
  }
  if (low.figure > high.figure || low.unit !== high.unit || low.reference !== high.reference) {
    return ask('From which figure to which?', [asOption(low), asOption(high)]);
  }
  return {
    verdict: 'range',
    min: Math.min(low.value, high.value),
    max: Math.max(low.value, high.value),
    unit: low.unit,
    typedUnit: low.typedUnit,
    ...(low.reference === undefined ? {} : { reference: low.reference }),
    ...(low.approx || high.approx ? { approx: true as const } : {}),
  };
}

/** `4 bar - 58 psi` says one thing twice, and is no range. */
function twoUnits([own, other]: readonly [Meant, Meant]): boolean {
  return own.kind === 'unit' && other.kind === 'unit' && own.unit !== other.unit;
}

function saidOf(meant: Meant): Said | undefined {
  return meant.kind === 'unit' || meant.kind === 'none' ? meant.said : undefined;
}

/** The same value in two units is read as the first, if both agree within half of their last digits. */
function twice(
  first: Amount,
  second: Amount,
  meant: readonly [Meant, Meant],
  field: Field,
  said?: Said,
): QuantityReading {
  const readings = [
    readMeant(first, meant[0], field, said),
    readMeant(second, meant[1], field, said),
  ] as const;
  const [one, other] = readings;
  const named = first.unit !== '' && second.unit !== '';
  if (!named || one.verdict !== 'read' || other.verdict !== 'read') {
    if (first.unit !== '' && second.unit === '' && one.verdict === 'read')
      return ask('What is the second figure?', [asOption(one)]);
    return whichOf([first, second], meant, field);
  }
  const reference = one.reference ?? other.reference;
  const comparable = one.unit === other.unit && one.typedUnit !== other.typedUnit;
  const slack = slackOf(first, one) + slackOf(second, other);
  const agree = comparable && Math.abs(one.value - other.value) <= slack * 1.000001;
  const sameZero =
    one.reference === other.reference || one.reference === undefined || other.reference === undefined;
  if (!agree || !sameZero)
    return ask('The two do not say the same: which one?', [asOption(one), asOption(other)]);
  return { ...one, ...(reference === undefined ? {} : { reference }) };
}

/** Half of the last digit typed, in the unit the value is read in. */
function slackOf({ number }: Amount, read: Read): number {
  return differenceToBase(number.halfDigit, read.typedUnit, read.figure) / toDifference(read);
}

function asOption({ value, unit, figure, typedUnit }: Read): Valued {
  return { value, unit, figure, typedUnit, possible: true };
}
