import { z } from 'zod';
import { UserError } from '../core/user-error.ts';
import type { FieldName } from '../phrases/quantity/fields.ts';
import { readQuantity } from '../phrases/quantity/read-quantity.ts';
import type { Read } from '../phrases/quantity/reading.ts';

/** An option typed as people say it that comes out as `Output`. */
export type TypedOption<Output> = z.ZodPipe<z.ZodString, z.ZodTransform<Output, string>>;

/** A flow of fuel: by mass, or by volume where the density is still to come. */
export type FuelFlow = { readonly massGs: number } | { readonly volumeCcMin: number };

const LONGEST = 60;

/** An option whose text is handed to `read`, which answers or throws a UserError of its own. */
function typedOption<Output>(
  measures: FieldName,
  description: string,
  read: (text: string) => Output,
): TypedOption<Output> {
  return z.string().min(1).max(LONGEST).meta({ description, measures }).transform(read);
}

/**
 * An option for a quantity: typed with any unit people use, handed over as a number in the field's base unit (mm, kPa, N·m,
 * °C, L, kg, kW, km, V, A, Ω, mm², s, plain ratios).
 *
 * @param name as the option is called, so that a question can be answered by a button.
 */
export function quantity(name: string, field: FieldName, description: string): TypedOption<number> {
  return typedOption(field, description, (text) => readAs(name, field, text).value);
}

/** The length of a cable or line, in mm: a figure without a unit is asked about in metres and feet. */
export function runLength(name: string, description: string): TypedOption<number> {
  return typedOption('length', description, (text) => {
    askWhenBare(name, text, ['m', 'ft', 'mm', 'in']);
    return readAs(name, 'length', text).value;
  });
}

/** A height above the sea, in km, or below it: a figure without a unit is asked about in metres and feet. */
export function height(name: string, description: string): TypedOption<number> {
  return typedOption('distance', description, (text) => {
    askWhenBare(name, text, ['m', 'ft']);
    const above = text.replace(BELOW, '');
    const { value } = readAs(name, 'distance', above);
    return above === text ? value : -value;
  });
}

/** How long an injector is held open, in s. A figure without a unit is in ms, as every log and data sheet has it. */
export function pulseTime(name: string, description: string): TypedOption<number> {
  return typedOption(
    'time',
    description,
    (text) => readAs(name, 'time', BARE.test(text.trim()) ? `${text.trim()} ms` : text).value,
  );
}

/** A share of antifreeze, as a ratio: `50 %`, `50/50`, `1/3`. Of two unlike shares it asks which one is the antifreeze. */
export function shareOfMix(name: string, description: string): TypedOption<number> {
  return typedOption('percent', description, (text) => {
    const bare = text.trim();
    const [, first, sign, second] = TWO_SHARES.exec(bare) ?? [];
    const [top, bottom] = [figureOf(first), figureOf(second)];
    if (top + bottom === 100) {
      if (top === bottom) return HALF;
      throw offered(name, `“${bare}”: which of the two is the antifreeze?`, [`${top} %`, `${bottom} %`]);
    }
    if (sign === '/' && top < bottom && bottom <= 10) return top / bottom;
    const figure = BARE.test(bare) ? figureOf(bare) : Number.NaN;
    if (figure === 0) return 0;
    if (figure <= 1) {
      const ofOne = `${Number((figure * 100).toPrecision(6))} %`;
      throw offered(name, `${bare}: of one, or per cent?`, [ofOne, `${bare} %`]);
    }
    return readAs(name, 'percent', text).value;
  });
}

const HALF = 0.5;
const TWO_SHARES = /^(\d+(?:[.,]\d+)?) ?([/:–-]) ?(\d+(?:[.,]\d+)?)$/u;
const figureOf = (text: string | undefined): number => Number((text ?? 'none').replace(',', '.'));

/** A flow in a fuel line or of a pump: a figure without a unit is asked about in what pumps are rated in. */
export function pumpFlow(name: string, description: string): TypedOption<FuelFlow> {
  const read = fuelFlow(name, description);
  return typedOption('flow', description, (text) => {
    askWhenBare(name, text, ['L/h', 'US gal/h', 'cc/min', 'lb/h']);
    return read.parse(text);
  });
}

const BARE = /^\d+(?:[.,]\d+)?$/u;
const BELOW = /^\s*[-−]\s*(?=\d)/u;

/** @throws UserError 'which-one' for a figure without a unit, which is offered in each of these. */
function askWhenBare(name: string, text: string, units: readonly string[]): void {
  const bare = text.trim();
  if (!BARE.test(bare)) return;
  throw offered(
    name,
    `${bare} of what?`,
    units.map((unit) => `${bare} ${unit}`),
  );
}

function offered(name: string, question: string, typed: readonly string[]): UserError {
  const choices = typed.map((each) => ({ label: each, value: each }));
  return new UserError('which-one', `${name}: ${question}`, { field: name, choices });
}

/** What a cable may lose: volts, or a share of the supply where a per cent sign says so. */
export type CableDrop = { readonly dropV: number } | { readonly dropRatio: number };

/** A drop in volts or in per cent of the supply. */
export function cableDropTyped(name: string, description: string): TypedOption<CableDrop> {
  return typedOption('voltage', description, (text) =>
    text.includes('%')
      ? { dropRatio: readAs(name, 'percent', text).value }
      : { dropV: readAs(name, 'voltage', text).value },
  );
}

/** A pressure above the air outside, in kPa: boost. One said to be absolute is refused. */
export function gaugePressure(name: string, description: string): TypedOption<number> {
  return typedOption('pressure', description, (text) => referred(name, text, 'gauge'));
}

/** A pressure above nothing at all, in kPa. One said to be a gauge's is refused. */
export function absolutePressure(name: string, description: string): TypedOption<number> {
  return typedOption('pressure', description, (text) => referred(name, text, 'absolute'));
}

/** A speed of turning, in rpm. */
export function turningSpeed(name: string, description: string): TypedOption<number> {
  return typedOption('speed', description, (text) =>
    inUnit(name, 'speed', text, 'rpm', 'a speed of turning, e.g. 6500 rpm'),
  );
}

/** A speed along a path, in km/h. */
export function travelSpeed(name: string, description: string): TypedOption<number> {
  return typedOption('speed', description, (text) =>
    inUnit(name, 'speed', text, 'km/h', 'a speed along a path, e.g. 20 m/s'),
  );
}

/** A flow by mass, in g/s: air. */
export function massFlow(name: string, description: string): TypedOption<number> {
  return typedOption('flow', description, (text) =>
    inUnit(name, 'flow', text, 'g/s', 'a flow by mass, e.g. 150 g/s or 20 lb/min'),
  );
}

/** A flow of fuel, by mass or by volume. */
export function fuelFlow(name: string, description: string): TypedOption<FuelFlow> {
  return typedOption('flow', description, (text) => {
    const { value, unit } = readAs(name, 'flow', text);
    return unit === 'g/s' ? { massGs: value } : { volumeCcMin: value };
  });
}

/** A λ. A gauge's AFR is refused with the λ it stands for on petrol's scale, as gauges show it. */
export function lambdaValue(name: string, description: string): TypedOption<number> {
  return typedOption('ratio', description, (text) => {
    const { value, typedUnit } = readAs(name, 'ratio', text);
    if (typedUnit !== 'AFR') return value;
    const lambda = (value / 14.7).toFixed(3);
    throw new UserError(
      'which-one',
      `${name}: “${text}” is an air–fuel ratio. A gauge on petrol's scale (14.7) means λ ${lambda} by it, whatever is in the tank.`,
      { field: name, choices: [{ label: `λ ${lambda}`, value: lambda }] },
    );
  });
}

/**
 * What a text means in a field.
 *
 * @throws UserError 'which-one' when it can mean several things, each offered; 'bad-input' when it means none, or a range.
 */
export function readAs(name: string, field: FieldName, text: string): Read {
  const reading = readQuantity(text, field);
  switch (reading.verdict) {
    case 'read':
      return reading;
    case 'range':
      throw new UserError(
        'bad-input',
        `${name}: “${text}” is a range, and one value is needed. Type either end.`,
      );
    case 'ask': {
      const choices = reading.options.map(({ typed }) => ({ label: typed, value: typed }));
      const message = `${name}: “${text}”: ${reading.question}`;
      throw choices.length === 0
        ? new UserError('bad-input', message)
        : new UserError('which-one', message, { field: name, choices });
    }
    case 'refuse':
      throw new UserError('bad-input', `${name}: ${reading.problem}`);
  }
}

function inUnit(name: string, field: FieldName, text: string, unit: Read['unit'], wanted: string): number {
  const read = readAs(name, field, text);
  if (read.unit === unit) return read.value;
  throw new UserError('bad-input', `${name}: “${text}” is not what is wanted here: ${wanted}.`);
}

function referred(name: string, text: string, wanted: 'gauge' | 'absolute'): number {
  const { value, reference } = readAs(name, 'pressure', text);
  if (reference === undefined || reference === wanted) return value;
  throw new UserError(
    'bad-input',
    wanted === 'gauge'
      ? `${name}: “${text}” is absolute; this is measured above the air outside. Take off the air pressure, 101.3 kPa at sea level.`
      : `${name}: “${text}” is above the air outside; this is absolute. Add the air pressure, 101.3 kPa at sea level.`,
  );
}
