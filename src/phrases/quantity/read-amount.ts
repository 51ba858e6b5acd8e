import { COUNTED_IN_THOUSANDS } from '../../calc/units/say.ts';
import { dimensions, type UnitId } from '../../calc/units/table.ts';
import type { Field } from './fields.ts';
import type { QuantityReading, Read } from './reading.ts';
import type { Said } from './reference.ts';
import { type Meant, resolveUnit } from './resolve-unit.ts';
import type { Amount } from './scan.ts';
import { ask, beyondLimits, refuse, type Valued, valued } from './verdicts.ts';

/** Units that are counted in fractions; of any other, a fraction but the plainest is said back. */
const IN_FRACTIONS: ReadonlySet<UnitId> = new Set<UnitId>([
  ...(['in', 'ft', 'thou', 'tenthThou', 'mi', 'turn', 'lb', 'oz', 'stone'] as const),
  ...(['usGal', 'usQt', 'usPt', 'impGal', 'impQt', 'impPt', '1', 'h', 'day'] as const),
]);

/** Bare units of which a `k` behind the number is a thousand and nothing else. */
const IN_THOUSANDS: ReadonlySet<UnitId> = new Set<UnitId>(['rpm', 'ohm']);

/** The value of one amount: a number with the words behind it. */
export function readAmount(amount: Amount, field: Field, said?: Said): QuantityReading {
  return readMeant(amount, resolveUnit(amount.unit, field), field, said);
}

/** @param before what was said of a pressure's zero in front of the number. */
export function readMeant(amount: Amount, meant: Meant, field: Field, before?: Said): QuantityReading {
  if (Number.isNaN(amount.number.value)) return refuse('Nothing is divided by zero.', field);
  if (!Number.isFinite(amount.number.value)) return refuse(`${amount.figures} is too large.`, field);
  switch (meant.kind) {
    case 'none':
      return readBare(amount, field, meant.approx);
    case 'unit': {
      const read = inUnit(amount, meant.unit, field);
      return read.verdict === 'read'
        ? withSaid(
            {
              ...read,
              ...(meant.approx ? { approx: true as const } : {}),
              ...(meant.here ? { here: true as const } : {}),
              ...(meant.slip ? { slip: true as const } : {}),
            },
            [meant.said, before],
            field,
          )
        : read;
    }
    case 'doubt': {
      const options = meant.units.map((unit) => valued(figuresOf(amount)[0] ?? Number.NaN, unit, field));
      if (options.length > 0 && !options.some(({ possible }) => possible))
        return beyondLimits(`${amount.figures} ${amount.unit}`, meant.units[0] ?? placeUnit(field), field);
      return ask(`${amount.figures} ${amount.unit}: ${meant.why}`, options);
    }
    case 'more': {
      const value = valued(figuresOf(amount)[0] ?? Number.NaN, meant.unit, field);
      return ask(`What is "${meant.rest}" to say? Only the figure is read here.`, [value]);
    }
    case 'foreign': {
      const called = meant.dimensions.map((each) => dimensions[each].called).join(' or ');
      return refuse(`${amount.figures} ${amount.unit} is ${called}, not ${lowered(field.called)}.`, field);
    }
    case 'unknown':
      return refuse(`"${meant.word}" is no unit of ${lowered(field.called)}.`, field);
  }
}

const placeUnit = (field: Field): UnitId => field.admits[0]?.unit ?? '1';
const lowered = (called: string): string => called.charAt(0).toLowerCase() + called.slice(1);

/** Every figure the number can be, the likeliest first. */
function figuresOf({ number, sign, thousand }: Amount): readonly number[] {
  const scale = (sign === '-' ? -1 : 1) * (thousand ? 1000 : 1);
  return [number.value, ...(number.orElse === undefined ? [] : [number.orElse])].map((each) => each * scale);
}

function inUnit(amount: Amount, unit: UnitId, field: Field): QuantityReading {
  const { number } = amount;
  const values = figuresOf(amount).map((figure) => valued(figure, unit, field));
  const fractionOf = fractionDoubt(amount, unit, field);
  if (fractionOf !== undefined) return fractionOf;
  const possible = values.filter((each) => each.possible);
  if (possible.length > 1) return ask('Is the comma a decimal sign, or does it part thousands?', possible);
  const [likeliest] = possible;
  const grouped =
    number.grouped === undefined ? undefined : valued(number.grouped * signOf(amount), unit, field);
  if (grouped?.possible) {
    if (likeliest === undefined && COUNTED_IN_THOUSANDS.has(unit)) return read(grouped);
    if (likeliest === undefined) return ask('Does the point part thousands?', [grouped]);
    if (COUNTED_IN_THOUSANDS.has(unit))
      return ask('Is the point a decimal sign, or does it part thousands?', [likeliest, grouped]);
  }
  if (likeliest === undefined) return beyondLimits(`${amount.figures} ${amount.unit}`.trim(), unit, field);
  return number.doubtful ? ask(`${amount.figures}: is that how it was meant?`, [likeliest]) : read(likeliest);
}

const signOf = ({ sign }: Amount): 1 | -1 => (sign === '-' ? -1 : 1);

/** `40/45 psi` is two readings as much as a fraction. */
function fractionDoubt({ number }: Amount, unit: UnitId, field: Field): QuantityReading | undefined {
  if (number.parts === undefined || IN_FRACTIONS.has(unit)) return undefined;
  const [top, bottom] = number.parts;
  if (top < bottom && bottom <= 4) return undefined;
  return ask(`${top}/${bottom}: two figures, or a fraction?`, [
    valued(top, unit, field),
    valued(bottom, unit, field),
    valued(number.value, unit, field),
  ]);
}

function read({ value, unit, figure, typedUnit }: Valued): Read {
  return { verdict: 'read', value, unit, figure, typedUnit };
}

function readBare(amount: Amount, field: Field, approx: true | undefined): QuantityReading {
  const { number, thousand } = amount;
  const figure = figuresOf(amount)[0] ?? Number.NaN;
  const bare = bareUnits(amount, figure, field);
  if (typeof bare === 'string' && (!thousand || IN_THOUSANDS.has(bare))) {
    const found = inUnit(amount, bare, field);
    return found.verdict === 'read' && approx ? { ...found, approx } : found;
  }
  const units = typeof bare === 'string' ? [bare] : bare;
  const figures = number.orElse === undefined ? [figure] : figuresOf(amount);
  const options = figures.flatMap((each) => units.map((unit) => valued(each, unit, field)));
  if (!options.some(({ possible }) => possible))
    return beyondLimits(amount.figures, units[0] ?? placeUnit(field), field);
  return ask(`${amount.figures} of what?`, options);
}

function bareUnits({ number, thousand }: Amount, figure: number, field: Field): UnitId | readonly UnitId[] {
  const inches = field.admits.some(({ unit }) => unit === 'mm') && number.parts !== undefined;
  if (inches || (field.called === 'A length' && number.inchFraction))
    return number.inchFraction ? 'in' : ['in', 'mm'];
  if (thousand && field.called === 'A resistance') return 'ohm';
  if (number.parts !== undefined && field.called !== 'A ratio') {
    const offered = typeof field.bare === 'string' ? [field.bare] : field.bare(figure);
    return typeof offered === 'string' ? [offered] : offered;
  }
  return typeof field.bare === 'string' ? field.bare : field.bare(figure);
}

/** Says what a pressure is measured from, and turns a vacuum downwards. */
function withSaid(found: Read, said: readonly (Said | undefined)[], field: Field): QuantityReading {
  const [first, ...others] = [...new Set(said.filter((each) => each !== undefined))];
  if (first === undefined) return found;
  if (others.length > 0) return ask('Is its zero the air around, or nothing at all?', [possible(found)]);
  if (first !== 'vacuum') {
    return first === 'absolute' && found.value < 0
      ? refuse('No absolute pressure is below nothing.', field)
      : { ...found, reference: first };
  }
  const down = valued(-Math.abs(found.figure), found.typedUnit, field);
  if (found.value < 0)
    return ask('Minus and vacuum: said twice, or is it pressure?', [
      down,
      possible({ ...found, value: -found.value, figure: -found.figure }),
    ]);
  if (!down.possible)
    return refuse('No vacuum is deeper than the air is heavy: 101.3 kPa, 1.013 bar, 29.9 inHg.', field);
  return { ...read(down), reference: 'gauge', ...(found.approx ? { approx: true } : {}) };
}

const possible = ({ value, unit, figure, typedUnit }: Read): Valued => ({
  value,
  unit,
  figure,
  typedUnit,
  possible: true,
});
