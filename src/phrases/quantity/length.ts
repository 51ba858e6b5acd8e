import { mmIn, unitsNear } from './length-units.ts';
import { type NumberPhrase, readNumberPhrase } from './number-phrase.ts';
import { tidy } from './tidy.ts';
import { ask, type Quantity, refuse } from './verdict.ts';

const MAX_LENGTH = 60;
/** Ten metres: nothing on a car is longer. */
const MAX_MM = 10_000;
const APPROX =
  /^(?:about|approx(?:imately|\.)?|ca\.?|circa|roughly|around|nearly|just (?:under|over)|~|≈) ?/u;
const NUMBER = String.raw`(?<number>half an?|(?:a quarter of )?an?|zero|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|[\d.,/' ]*\d(?:e[+-]?\d{1,2})?(?: ?- ?\d+ ?/ ?\d+)?(?:ths?)?)`;
const UNIT = String.raw`(?<unit>[\p{L}\p{M}"'][\p{L}\p{M}".]*)?`;
const ONE = new RegExp(`^${NUMBER} ?(?:de )?${UNIT}$`, 'u');

/**
 * A length as people type it, in mm: `21.9 mm`, `0,125 in`, `11/16`, `1-1/16"`, `5' 6"`, `2 1/2 thou`, `M10`, `2 to 4 thou`.
 *
 * One meaning is read; several fair ones (no unit, `mil`, `1,234 mm`) are asked about; none is refused. Valid: 0 to 10 m.
 */
export function readLength(typed: string): Quantity {
  const text = tidy(typed).replace(/(?<=.) ?\p{Extended_Pictographic}+$/u, '');
  if (text === '') return refuse('nothing typed');
  if (text.length > MAX_LENGTH) return refuse('too long for a length');
  const plain = text.replace(APPROX, '');
  const read = readRange(plain) ?? readFeet(plain) ?? readPlusMinus(plain) ?? readOne(plain);
  return read.verdict === 'read' && plain !== text ? { ...read, approx: true } : read;
}

function readRange(text: string): Quantity | undefined {
  const between =
    /^(?:between |zwischen )?(?<from>.*?\d\S*?) ?(?:to|bis|and|und|\.\.\.?) ?(?<to>\d.*)$/u.exec(
      text,
    )?.groups;
  if (between === undefined) return undefined;
  const to = readOne(between['to'] ?? '');
  const own = readOne(between['from'] ?? '');
  const unit = /[\p{L}"'µ]+$/u.exec(between['to'] ?? '')?.[0] ?? '';
  const from = own.verdict === 'read' ? own : readOne(`${between['from'] ?? ''} ${unit}`);
  if (from.verdict !== 'read' || to.verdict !== 'read') return refuse(`"${text}" is no range of lengths`);
  return { verdict: 'range', min: Math.min(from.value, to.value), max: Math.max(from.value, to.value) };
}

function readFeet(text: string): Quantity | undefined {
  const groups = /^(?<feet>\d+)(?:'| ?ft) ?(?<inches>[\d /.]+)(?:"| ?in)$/u.exec(text)?.groups;
  if (groups === undefined) return undefined;
  const inches = readNumberPhrase((groups['inches'] ?? '').trim());
  return inches === null
    ? refuse(`"${text}" is no length`)
    : inLimits(Number(groups['feet']) * 304.8 + inches.value * 25.4);
}

function readPlusMinus(text: string): Quantity | undefined {
  const [value, tolerance, ...more] = text.split(/ ?(?:±|\+ ?\/? ?-) ?/u);
  if (value === undefined || tolerance === undefined || more.length > 0) return undefined;
  const unit = /[\p{L}"µ]+$/u;
  const shared = unit.exec(tolerance)?.[0] ?? unit.exec(value)?.[0] ?? '';
  const read = readOne(unit.test(value) ? value : `${value} ${shared}`);
  const around = readOne(unit.test(tolerance) ? tolerance : `${tolerance} ${shared}`);
  if (read.verdict !== 'read') return read;
  return around.verdict === 'read' ? { ...read, plusMinus: around.value } : around;
}

function readOne(text: string): Quantity {
  const metric = /^m ?(\d+(?:[.,]\d+)?)$/u.exec(text);
  if (metric !== null) return inLimits(readNumberPhrase(metric[1] ?? '')?.value ?? Number.NaN);
  const screw = /^(?:#|no\.? ?)(\d{1,2})$/u.exec(text);
  if (screw !== null) return ask([(0.06 + 0.013 * Number(screw[1])) * 25.4], 'a screw size or a drill size?');
  const tenths = /^(?<count>\S+) tenths? of a thou$/u.exec(text)?.groups;
  if (tenths !== undefined)
    return inLimits((readNumberPhrase(tenths['count'] ?? '')?.value ?? Number.NaN) * 0.00254);
  const groups = ONE.exec(text)?.groups;
  const number = groups === undefined ? null : readNumberPhrase((groups['number'] ?? '').trim());
  if (number === null) return refuse(`"${text}" is no length`);
  return withUnit(number, groups?.['unit'], text);
}

function withUnit(number: NumberPhrase, unit: string | undefined, text: string): Quantity {
  if (unit === undefined) {
    if (Number.isNaN(number.value)) return refuse('nothing is divided by zero');
    if (number.inchFraction)
      return number.doubtful ? ask([number.value * 25.4], 'inches?') : inLimits(number.value * 25.4);
    const options = text.includes('/') || number.value < 1 ? [25.4, 1] : [1, 25.4];
    return ask(
      options.map((scale) => number.value * scale),
      'mm or inches?',
    );
  }
  if (unit === 'mil' || unit === 'mils')
    return ask([number.value * 0.0254, number.value], 'thousandths of an inch, or mm?');
  if (unit === 'over') return ask([number.value * 0.0254], 'thousandths of an inch oversize?');
  if (unit === 'tenths' || unit === 'tenth')
    return ask([number.value * 0.00254, number.value * 0.1], 'tenths of a thou, or of a mm?');
  const scale = mmIn(unit);
  if (scale === undefined) {
    const near = unitsNear(unit);
    return near.length > 0
      ? ask(
          near.map((mm) => number.value * mm),
          `"${unit}" is no unit; which was meant?`,
        )
      : refuse(`"${unit}" is no unit of length`);
  }
  if (number.doubtful) return ask([number.value * scale], 'is that how it was meant?');
  const values = [number.value, ...(number.orElse === undefined ? [] : [number.orElse])].map(
    (value) => value * scale,
  );
  const possible = values.filter((value) => value >= 0 && value <= MAX_MM);
  return possible.length > 1
    ? ask(possible, 'is the comma a decimal sign or a thousands sign?')
    : inLimits(possible[0] ?? Number.NaN);
}

function inLimits(mm: number): Quantity {
  return mm >= 0 && mm <= MAX_MM ? { verdict: 'read', value: mm } : refuse('a length is between 0 and 10 m');
}
