import { checkAxis } from '../calc/fuelling/axes.ts';
import type { TargetPoint } from '../calc/fuelling/target.ts';
import { toBase } from '../calc/units/convert.ts';
import { UserError } from '../core/user-error.ts';

const ATMOSPHERE_KPA = 101.325;
const GAUGE_AFR = 14.7;
const STEPS = /^([\d.,]+)\s*(?:-|–|to|\.\.|bis)\s*([\d.,]+)\s*(?:in|by|step|steps of|every|\/)\s*([\d.,]+)$/i;

/**
 * The breakpoints of an axis as typed: `20 40 60 80`, `20,40,60`, `500 to 7000 by 500`; a load's also with a unit behind them,
 * `0.2 0.4 0.6 bar`, absolute unless `gauge` stands there.
 *
 * @throws UserError 'bad-input' saying what would be read.
 */
export function readAxis(text: string, field: 'load' | 'speed'): readonly number[] {
  const [, figures = '', unit = '', reference = ''] =
    /^(.*?)\s*(kpa|bar|mbar|psi|rpm|u\/min|1\/min)?\s*(abs(?:olute)?|gauge)?$/i.exec(text.trim()) ?? [];
  const points = breakpoints(figures.trim());
  if (points === undefined || points.length === 0) {
    const example = field === 'load' ? '20 40 60 80 100 kPa' : '800 1200 1600 2000, or 500 to 7000 by 500';
    throw new UserError(
      'bad-input',
      `${field}: “${text}” is no row of breakpoints. What would be read: ${example}.`,
    );
  }
  return checkAxis(
    field === 'load' ? points.map((point) => absolute(point, unit, reference)) : points,
    field,
  );
}

function breakpoints(text: string): readonly number[] | undefined {
  const [, from, to, by] = STEPS.exec(text) ?? [];
  if (from !== undefined && to !== undefined && by !== undefined) {
    const [first, last, step] = [figure(from), figure(to), figure(by)];
    const many = Math.floor((last - first) / step + 1e-6) + 1;
    if (!(many >= 2 && many <= 100)) return undefined;
    return Array.from({ length: many }, (_, index) => round(first + index * step));
  }
  // between spaces a comma is a decimal one; without any it parts the breakpoints
  const parts = /[\s;|]/.test(text.replace(/,\s+/g, ',')) ? text.split(/[\s;|]+|,\s/) : text.split(',');
  const points = parts.filter(Boolean).map(figure);
  return points.some(Number.isNaN) ? undefined : points;
}

const figure = (text: string): number =>
  /^-?[\d.,]+$/.test(text) ? Number(text.replace(',', '.')) : Number.NaN;
const round = (value: number): number => Math.round(value * 1e6) / 1e6;

function absolute(value: number, unit: string, reference: string): number {
  const small = unit.toLowerCase();
  const kPa = toBase(value, small === 'bar' || small === 'mbar' || small === 'psi' ? small : 'kPa');
  return round(reference.toLowerCase() === 'gauge' ? kPa + ATMOSPHERE_KPA : kPa);
}

const POINT = /^([\d.,]+)(?:@([\d.,]+))?[:=](?:λ|l)?([\d.,]+)$/i;

/**
 * λ wanted, as typed: one value for everywhere, or by load in kPa, `60:1 100:0.90 160:0.80`, or by load and speed,
 * `100@2000:0.90 100@6000:0.86`. A value above 3 is an AFR on petrol's scale.
 *
 * @throws UserError 'bad-input' saying what would be read, 'out-of-range' for a λ no engine is run on.
 */
export function readTarget(text: string): readonly TargetPoint[] {
  const parts = text
    .trim()
    .replace(/^λ\s*/, '')
    .split(/[\s;]+|,\s/)
    .filter(Boolean);
  const points = parts.map((part): TargetPoint => {
    const [, load, speed, value] = POINT.exec(part) ?? [];
    const alone = parts.length === 1 ? figure(part.replace(/^λ/, '')) : Number.NaN;
    const lambda = asLambda(value === undefined ? alone : figure(value));
    const loadKPa = load === undefined ? 100 : figure(load);
    if (Number.isNaN(lambda) || Number.isNaN(loadKPa)) {
      throw new UserError(
        'bad-input',
        `target: “${part}” is no λ, nor a load with its λ. What would be read: 0.88, or 60:1 100:0.90 160:0.80 (kPa absolute:λ).`,
      );
    }
    if (lambda < 0.6 || lambda > 1.3) {
      throw new UserError(
        'out-of-range',
        `target: λ ${lambda.toFixed(2)} is none an engine is run on. Type one from 0.6 to 1.3.`,
      );
    }
    return { loadKPa, lambda, ...(speed === undefined ? {} : { speedRpm: figure(speed) }) };
  });
  if (points.length === 0)
    throw new UserError('bad-input', 'target: nothing was typed. What would be read: 0.88.');
  return points;
}

const asLambda = (value: number): number => (value > 3 ? value / GAUGE_AFR : value);
