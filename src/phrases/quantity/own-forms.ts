import type { UnitId } from '../../calc/units/table.ts';
import { UserError } from '../../core/user-error.ts';
import { readThreadSize } from '../threads/size.ts';
import type { Field, FieldName } from './fields.ts';
import { readNumberPhrase } from './number-phrase.ts';
import type { QuantityReading } from './reading.ts';
import { resolveUnit } from './resolve-unit.ts';
import type { Amount, Scan } from './scan.ts';
import { ask, beyondLimits, refuse, valued } from './verdicts.ts';

type Form = (text: string, field: Field) => QuantityReading | undefined;

/** Whole texts that only one field writes: `M10`, `4/0 AWG`, `2k2`, `1:30`. */
const FORMS: Partial<Record<FieldName, readonly Form[]>> = {
  length: [metricSize, numberedSize, sizeWithPitch],
  pitch: [metricPitch],
  area: [wireGauge],
  resistance: [letterForPoint, openCircuit],
  viscosity: [viscosityGrade],
  time: [clockTime],
  ratio: [toOne, mixture],
};

export function readOwnForm(text: string, name: FieldName, field: Field): QuantityReading | undefined {
  for (const form of FORMS[name] ?? []) {
    const found = form(text, field);
    if (found !== undefined) return found;
  }
  return undefined;
}

function figure(text: string | undefined): number {
  return readNumberPhrase(text ?? '')?.value ?? Number.NaN;
}

function readFigure(value: number, unit: UnitId, field: Field, typed: string): QuantityReading {
  const { possible, ...whole } = valued(value, unit, field);
  return possible ? { verdict: 'read', ...whole } : beyondLimits(typed, unit, field);
}

function metricSize(text: string, field: Field): QuantityReading | undefined {
  const size = /^m ?(\d+(?:[.,]\d{1,2})?)$/iu.exec(text)?.[1];
  return size === undefined ? undefined : readFigure(figure(size), 'mm', field, text);
}

function sizeWithPitch(text: string, field: Field): QuantityReading | undefined {
  const size = /^m ?(\d+(?:[.,]\d{1,2})?) ?x ?\d/iu.exec(text)?.[1];
  return size === undefined ? undefined : ask('The size, or the pitch?', [valued(figure(size), 'mm', field)]);
}

/** No. 10 is a screw of 0.190 in (ASME B18.6.3: 0.060 + 0.013·n) and a drill of another size. */
function numberedSize(text: string, field: Field): QuantityReading | undefined {
  const number = /^(?:#|no\.? ?|number |nr\.? ?)(\d{1,2})$/iu.exec(text)?.[1];
  if (number === undefined) return undefined;
  return ask('A screw by its number, or a drill?', [valued(0.06 + 0.013 * Number(number), 'in', field)]);
}

const DESIGNATION =
  /^m ?[\d.,]+ ?x|^(?:\d+[ -])?\d+\/\d+ ?- ?\d+|^#\d+ ?- ?\d+|\d ?(?:unc|unf|unef|npt|bs[pfw])/iu;

function metricPitch(text: string, field: Field): QuantityReading | undefined {
  const pitch = /^x ?([\d.,]+)(?: ?mm)?$/iu.exec(text)?.[1];
  if (pitch !== undefined) return readFigure(figure(pitch), 'mm', field, text);
  if (!DESIGNATION.test(text)) return undefined;
  try {
    const [found] = readThreadSize(text).pitches;
    return found === undefined ? undefined : readFigure(found.mm, 'mm', field, text);
  } catch (error) {
    // whatever it is, it is no designation; the general rules have the last word
    if (error instanceof UserError) return undefined;
    throw error;
  }
}

const THREADS =
  /^(?:threads?|pitches|turns|gänge|gang|gewindegänge|filets?|hilos?|filetti|crests?|peaks?)$/iu;

/** A length over so many threads: `15/10`, `12.7mm over 10 threads`, `10 threads in 12.4 mm`. */
export function readSpan({ amounts, joints }: Scan, field: Field): QuantityReading | undefined {
  const [first, second, ...more] = amounts;
  if (first === undefined || more.length > 0) return undefined;
  const parts = second === undefined && first.unit === '' ? first.number.parts : undefined;
  if (parts !== undefined) {
    const [top, bottom] = parts;
    if (first.number.inchFraction || bottom < 4)
      return ask(`${top} mm over ${bottom} threads, or a fraction of an inch?`, [
        valued(top / bottom, 'mm', field),
        valued(first.number.value, 'in', field),
      ]);
    return readFigure(top / bottom, 'mm', field, first.figures);
  }
  const joint = joints[0];
  if (second === undefined || (joint !== '/' && joint !== 'over')) return undefined;
  const countFirst = THREADS.test(first.unit);
  const [length, count] = countFirst ? [second, first] : [first, second];
  if (!countFirst && count.unit !== '' && !THREADS.test(count.unit)) return undefined;
  return over(length, count, field);
}

function over(length: Amount, count: Amount, field: Field): QuantityReading | undefined {
  const meant = resolveUnit(length.unit, field);
  const unit = meant.kind === 'none' ? 'mm' : meant.kind === 'unit' ? meant.unit : undefined;
  const turns = count.number.value;
  if (unit === undefined || unit === 'tpi') return undefined;
  if (!Number.isInteger(turns) || turns < 1)
    return refuse(`${count.figures} is no number of threads.`, field);
  return readFigure(length.number.value / turns, unit, field, `${length.figures} over ${count.figures}`);
}

/** The last number that a cable or winding is asked for by. */
const FINEST_GAUGE = 40;

function wireGauge(text: string, field: Field): QuantityReading | undefined {
  const typed = /^(?:awg ?)?#?(?<n>\d{1,2}|0{2,4}|[1-4]\/0)(?: ?awg)?$/iu.exec(text)?.groups?.['n'] ?? '';
  if (typed === '' || !/awg|\/0|^0{2,4}$/iu.test(text)) return undefined;
  const oughts = /^0+$/u.test(typed) ? typed.length : Number(/^([1-4])\/0$/u.exec(typed)?.[1] ?? 0);
  const gauge = oughts > 0 ? 1 - oughts : Number(typed);
  if (gauge > FINEST_GAUGE)
    return refuse('American wire gauges run from 4/0, the thickest, to 40 here.', field);
  return /awg/iu.test(text)
    ? readFigure(gauge, 'AWG', field, text)
    : ask('American wire gauge?', [valued(gauge, 'AWG', field)]);
}

/** IEC 60062: the letter of the multiplier stands where the point would. */
function letterForPoint(text: string, field: Field): QuantityReading | undefined {
  const [, whole, letter = '', rest] = /^(\d+)([rRkKM])(\d+)$/u.exec(text) ?? [];
  if (whole === undefined) return undefined;
  const unit = letter === 'M' ? 'Mohm' : letter.toLowerCase() === 'k' ? 'kohm' : 'ohm';
  return readFigure(Number(`${whole}.${rest}`), unit, field, text);
}

function openCircuit(text: string): QuantityReading | undefined {
  return /^(?:ol|o\.l\.?|open|open circuit|overload|1\.)$/iu.test(text)
    ? {
        verdict: 'ask',
        question: 'That is an open circuit and no figure: is that what was found?',
        options: [],
      }
    : undefined;
}

function viscosityGrade(text: string, field: Field): QuantityReading | undefined {
  const grade = /^(?:iso[ -]?)?vg[ -]?(\d+)$/iu.exec(text)?.[1];
  if (grade !== undefined)
    return ask('A grade is what an oil should have at 40 °C, not what was measured: is it meant?', [
      valued(Number(grade), 'mm2/s', field),
    ]);
  return /^(?:sae )?\d+w?(?:[ -]?\d+)?$/iu.test(text) && /w|sae/iu.test(text)
    ? {
        verdict: 'ask',
        question: 'That is a grade and covers a range: what was measured, at what temperature?',
        options: [],
      }
    : undefined;
}

function clockTime(text: string, field: Field): QuantityReading | undefined {
  const [, first, second, third] = /^(\d{1,3}):(\d{2})(?::(\d{2}))?$/u.exec(text) ?? [];
  if (first === undefined || Number(second) > 59 || Number(third ?? 0) > 59) return undefined;
  const seconds = Number(first) * 3600 + Number(second) * 60 + Number(third ?? 0);
  if (third !== undefined) return readFigure(seconds, 's', field, text);
  return ask('Minutes and seconds, or hours and minutes?', [
    valued(Number(first) * 60 + Number(second), 's', field),
    valued(seconds, 's', field),
  ]);
}

/** `10.5:1`, `14.7 to 1`; of other pairs only the counts of teeth, largest first, say one thing. */
function toOne(text: string, field: Field): QuantityReading | undefined {
  const [, top, bottom] = /^(\d[\d.,]*) ?(?::|to|zu|auf|à|a) ?(\d[\d.,]*)(?: ?afr)?$/iu.exec(text) ?? [];
  if (top === undefined) return undefined;
  const [above, below] = [figure(top), figure(bottom)];
  if (!(below > 0) || Number.isNaN(above)) return refuse('Nothing is divided by zero.', field);
  if (below === 1) return readFigure(above, /afr$/iu.test(text) ? 'AFR' : '1', field, text);
  if (above + below === 100 || above <= below || !text.includes(':'))
    return ask('Which is the one part?', [
      valued(above / below, '1', field),
      valued(below / above, '1', field),
    ]);
  return readFigure(above / below, '1', field, text);
}

function mixture(text: string, field: Field): QuantityReading | undefined {
  const [, top, bottom] = /^(\d+) ?\/ ?(\d+)$/u.exec(text) ?? [];
  const [above, below] = [Number(top), Number(bottom)];
  if (top === undefined || below === 0 || (above !== below && above + below !== 100)) return undefined;
  return ask('A share of the whole, or one against the other?', [
    valued(above / below, '1', field),
    valued(above / (above + below), '1', field),
  ]);
}
