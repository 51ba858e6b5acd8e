import { sayExactly } from '../../calc/units/say.ts';
import { dimensions, type UnitId, units } from '../../calc/units/table.ts';
import type { Dimension } from '../../calc/units/unit.ts';
import { type Choice, UserError } from '../../core/user-error.ts';
import { type FieldName, fields } from './fields.ts';
import { readQuantity } from './read-quantity.ts';
import type { Offer, QuantityReading, Read, ReadRange } from './reading.ts';
import type { Said } from './reference.ts';
import { resolveUnit } from './resolve-unit.ts';
import { scan } from './scan.ts';
import { tidyKeepingCase } from './tidy.ts';

/** A value to be said in another unit, and the unit it is wanted in, if it was said. */
export interface Conversion {
  readonly value: Read | ReadRange;
  readonly target?: { readonly unit: UnitId; readonly said?: Said };
}

/** Fields in which a text with a unit and no question beside it is tried; a pitch is a length, a percentage a ratio. */
const TRIED: readonly FieldName[] = [
  ...([
    'length',
    'distance',
    'pressure',
    'torque',
    'temperature',
    'flow',
    'volume',
    'mass',
    'power',
  ] as const),
  ...(['speed', 'angle', 'voltage', 'current', 'resistance', 'viscosity', 'area', 'force', 'time'] as const),
  ...(['ratio', 'percent', 'density', 'spring-rate', 'economy', 'pitch'] as const),
];

/** Words that alone mean different things on different parts of a car, with what to type for the plain meaning. */
const BY_PART: Readonly<Record<string, string>> = {
  lb: 'lbm',
  lbs: 'lbm',
  pound: 'lbm',
  pounds: 'lbm',
  '#': 'lbm',
  cc: 'mL',
  ccs: 'mL',
  ccm: 'mL',
  '°': 'deg',
};

const WANTED = /^(?<value>.*\S) (?:to|in|into|as|en|zu|nach|à|a) (?<to>\D*(?:\p{L}[23]|h2o)?)$/iu;
const EXAMPLES = 'Type a number with its unit, like 85 lb ft, 58 psi or 550 cc/min.';

/**
 * What is to be converted: `85 lb ft` to `Nm`, or both at once, `14 psi in bar`. Without a field to go by, the unit says what
 * is measured; a unit that means several things is asked about.
 *
 * @throws UserError 'which-one' with choices for the option `value` (or `to`), or 'bad-input' with what to type instead.
 */
export function readConversion(typed: string, to: string | undefined): Conversion {
  const joined = to === undefined ? WANTED.exec(tidyKeepingCase(typed))?.groups : undefined;
  const target = joined?.['to'];
  if (target !== undefined && TRIED.some((name) => resolveUnit(target, fields[name]).kind === 'unit'))
    return toUnit(joined?.['value'] ?? '', target);
  return to === undefined ? { value: byItsUnit(typed) } : toUnit(typed, tidyKeepingCase(to));
}

interface Tried {
  readonly name: FieldName;
  readonly found: QuantityReading;
}

/** Written of nothing but threads. */
const OF_THREADS = /t\.?p\.?i|thread|g[aä]ng|filet|hilos|th\/in/iu;

/**
 * The fields a text is tried in. A length is tried as a distance only when it is too long for a part, and as a pitch only
 * when threads are named: other limits must not settle what is asked about in the first.
 */
function fieldsFor(typed: string, to: string): readonly FieldName[] {
  const long = readQuantity(typed, 'length').verdict === 'refuse';
  const threads = OF_THREADS.test(`${typed} ${to}`);
  return TRIED.filter((name) => (name === 'distance' ? long : name === 'pitch' ? threads : true));
}

const tryAll = (typed: string, names: readonly FieldName[]): readonly Tried[] =>
  names.map((name) => ({ name, found: readQuantity(typed, name) }));

function toUnit(typed: string, to: string): Conversion {
  const meant = fieldsFor(typed, to).flatMap((name) => {
    const target = resolveUnit(to, fields[name]);
    const known =
      (target.kind === 'unit' && !target.slip) || (target.kind === 'doubt' && target.units.length > 0);
    return known ? [{ name, target }] : [];
  });
  if (meant.length === 0)
    throw new UserError('bad-input', `to: "${to}" is no unit known here. Type one like Nm, psi, mm or lb/h.`);
  if (!hasUnit(typed) && !isValue(readQuantity(typed, 'length'))) {
    const names = meant.map(({ name }) => name);
    const fair = tryAll(typed, names).flatMap(({ found }) => offersOf(found));
    if (fair.length > 0) throw question(typed, 'of what?', fair);
  }
  const read = meant.flatMap(({ name, target }) => {
    const [tried] = tryAll(typed, [name]);
    return tried !== undefined && isValue(tried.found) ? [{ value: tried.found, target }] : [];
  });
  const plain = read.filter(({ value, target }) => !isHere(value) && target.kind === 'unit' && !target.here);
  const [best] = plain.length > 0 ? plain : read.toSorted((a, b) => sureness(b.target) - sureness(a.target));
  if (best !== undefined) return { value: best.value, target: sureTarget(best.target, to) };
  const through = throughDensity(typed, to);
  if (through !== undefined) return through;
  throw cannot(
    typed,
    to,
    meant.map(({ name }) => name),
  );
}

/** A mass wanted as a volume, or the other way round: what stands between them is for the sum to say. */
function throughDensity(typed: string, to: string): Conversion | undefined {
  for (const [from, into] of [
    ['mass', 'volume'],
    ['volume', 'mass'],
  ] as const) {
    const value = readQuantity(typed, from);
    const target = resolveUnit(to, fields[into]);
    if (isValue(value) && hasUnit(typed) && (target.kind === 'unit' || target.kind === 'doubt'))
      return { value, target: sureTarget(target, to) };
  }
  return undefined;
}

type Target = ReturnType<typeof resolveUnit>;

const sureness = (target: Target): number => (target.kind === 'unit' ? 1 : 0);

function sureTarget(target: Target, to: string): NonNullable<Conversion['target']> {
  if (target.kind === 'unit') {
    return { unit: target.unit, ...(target.said === undefined ? {} : { said: target.said }) };
  }
  const choices = target.kind === 'doubt' ? target.units.map((unit) => unitChoice(unit)) : [];
  throw new UserError('which-one', `to: "${to}": ${target.kind === 'doubt' ? target.why : 'which unit?'}`, {
    field: 'to',
    choices,
  });
}

const unitChoice = (unit: UnitId): Choice => ({ label: units[unit].sign, value: units[unit].sign });

/** Why nothing came of it: the value has to be asked about, is something else, or is no value at all. */
function cannot(typed: string, to: string, names: readonly FieldName[]): UserError {
  const tried = tryAll(typed, names);
  const asked = tried.find(({ found }) => found.verdict === 'ask');
  if (asked?.found.verdict === 'ask') return question(typed, asked.found.question, asked.found.options);
  const elsewhere = tryAll(typed, TRIED).find(({ found }) => isValue(found) && hasUnit(typed));
  const [name] = names;
  if (elsewhere !== undefined && isValue(elsewhere.found) && name !== undefined) {
    const is = dimensions[units[elsewhere.found.unit].dimension].called;
    return new UserError(
      'bad-input',
      `"${typed}" is ${is}, and "${to}" a unit of ${calledOf(name)}: the one does not become the other.`,
    );
  }
  const refused = tried.find(({ found }) => found.verdict === 'refuse')?.found;
  return new UserError('bad-input', refused?.verdict === 'refuse' ? refused.problem : EXAMPLES);
}

const calledOf = (name: FieldName): string => {
  const { called } = fields[name];
  return called.charAt(0).toLowerCase() + called.slice(1);
};

/** `1-1/16"` */
const INCH_FRACTION = /\d\/\d+ ?["″]$/u;

/** What a text measures by its unit alone. */
function byItsUnit(typed: string): Read | ReadRange {
  const tried = tryAll(typed, fieldsFor(typed, ''));
  const length = tried[0]?.found;
  if (!hasUnit(typed)) {
    // a fraction of an inch and a metric size need none
    if (length !== undefined && isValue(length)) return length;
    const ratio = tried.find(({ name }) => name === 'ratio')?.found;
    if (ratio !== undefined && isValue(ratio) && /[:λ]|afr|lambda/iu.test(typed)) return ratio;
    throw new UserError('bad-input', `"${typed.slice(0, 40)}" has no unit. ${EXAMPLES}`);
  }
  // a capital apart from its number is the kelvin, and no thousand
  const kelvin = /\d K$/u.test(typed.trim())
    ? tried.find(({ name }) => name === 'temperature')?.found
    : undefined;
  if (kelvin !== undefined && isValue(kelvin)) return kelvin;
  // seconds of arc are not counted in fractions
  if (INCH_FRACTION.test(typed) && length !== undefined && isValue(length)) return length;
  const plain = plainWord(typed);
  const read = tried.flatMap(({ found }) => (isValue(found) ? [found] : []));
  const sure = distinct(read.filter((found) => !isHere(found) && !isSlip(found)));
  const doubts = tried.flatMap(({ found }) => (found.verdict === 'ask' ? [found] : []));
  const [only, ...others] = sure;
  if (plain !== undefined) {
    const word = { typed: `${plain.figures} ${plain.word}` };
    const others = [...read.filter(isHere).flatMap(offersOf), ...doubts.flatMap(offersOf)];
    throw question(typed, 'that depends on what it is of. Which one?', [word, ...others]);
  }
  if (only !== undefined && others.length === 0) return only;
  if (only !== undefined) {
    throw question(typed, 'which one?', sure.flatMap(offersOf));
  }
  const [doubt] = doubts;
  if (doubt !== undefined)
    throw question(
      typed,
      doubt.question,
      doubts.flatMap(({ options }) => options),
    );
  const [refused] = tried.flatMap(({ found }) =>
    found.verdict === 'refuse' && !/ is no unit | not an? /u.test(found.problem) ? [found.problem] : [],
  );
  throw new UserError(
    'bad-input',
    refused ?? `"${typed.slice(0, 40)}" is no quantity known here. ${EXAMPLES}`,
  );
}

/** The amount of a text whose unit means different things on different parts, with the plain unit's word. */
function plainWord(typed: string): { readonly figures: string; readonly word: string } | undefined {
  const amount = scan(tidyKeepingCase(typed))?.amounts;
  const [only, ...more] = amount ?? [];
  const key = only?.unit.toLowerCase() ?? '';
  if (only === undefined || more.length > 0 || !Object.hasOwn(BY_PART, key)) return undefined;
  return { figures: only.figures, word: BY_PART[key] ?? key };
}

function hasUnit(typed: string): boolean {
  return scan(tidyKeepingCase(typed))?.amounts.some(({ unit, thousand }) => unit !== '' || thousand) ?? false;
}

const isValue = (found: QuantityReading): found is Read | ReadRange =>
  found.verdict === 'read' || found.verdict === 'range';

const isHere = (found: Read | ReadRange): boolean => found.verdict === 'read' && found.here === true;

const isSlip = (found: Read | ReadRange): boolean => found.verdict === 'read' && found.slip === true;

/** What would be typed for the meanings a reading leaves open. */
function offersOf(found: QuantityReading): readonly Pick<Offer, 'typed'>[] {
  if (found.verdict === 'ask') return found.options;
  return found.verdict === 'read' ? [offerOf(found)] : [];
}

const offerOf = ({ value, unit, figure, typedUnit }: Read): Offer => ({
  value,
  unit,
  typed: sayExactly(figure, typedUnit),
});

/** One reading of each dimension. */
function distinct(found: readonly (Read | ReadRange)[]): readonly (Read | ReadRange)[] {
  const seen = new Set<Dimension>();
  return found.filter(({ unit }) => {
    const { dimension } = units[unit];
    return seen.has(dimension) ? false : seen.add(dimension);
  });
}

function question(typed: string, why: string, options: readonly Pick<Offer, 'typed'>[]): UserError {
  const answers = [...new Set(options.map((each) => each.typed))].slice(0, 5);
  const message = why.startsWith(typed) ? why : `"${typed}": ${why}`;
  return answers.length === 0
    ? new UserError('bad-input', message)
    : new UserError('which-one', message, {
        field: 'value',
        choices: answers.map((answer) => ({ label: answer, value: answer })),
      });
}
