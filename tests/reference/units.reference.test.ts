import { evaluate } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import raw from '../../data/reference/engine/units.json' with { type: 'json' };
import { convertFigure, type Wanted } from '../../src/calc/units/conversion.ts';
import { convert, differenceToBase, toBase } from '../../src/calc/units/convert.ts';
import { dimensions, type UnitId, unitIds, units } from '../../src/calc/units/table.ts';

/** The units of the published cases by our names, with what else the case says. */
const CASE_UNITS: Readonly<Record<string, UnitId>> = {
  psi: 'psi',
  bar: 'bar',
  atm: 'atm',
  kPa: 'kPa',
  'kgf/cm2': 'at',
  'inHg vacuum': 'inHg',
  mmHg: 'mmHg',
  in: 'in',
  mm: 'mm',
  'thou (0.001 in)': 'thou',
  um: 'um',
  ft: 'ft',
  m: 'm',
  km: 'km',
  mi: 'mi',
  'lbf ft': 'lbf.ft',
  'N m': 'N.m',
  'kgf m': 'kgf.m',
  'hp (mechanical)': 'hp',
  kW: 'kW',
  'PS (metric)': 'PS',
  'US gal': 'usGal',
  L: 'L',
  'imp gal': 'impGal',
  in3: 'in3',
  cm3: 'cc',
  'US qt': 'usQt',
  'imp pint': 'impPt',
  mL: 'mL',
  lb: 'lb',
  kg: 'kg',
  grain: 'grain',
  g: 'g',
  lbf: 'lbf',
  kN: 'kN',
  kgf: 'kgf',
  N: 'N',
  'lbf/in': 'lbf/in',
  'N/mm': 'N/mm',
  mph: 'mph',
  'km/h': 'km/h',
  'm/s': 'm/s',
  'ft/min': 'ft/min',
  cfm: 'cfm',
  'm3/h': 'm3/h',
  'L/h': 'L/h',
  'US gal/h': 'usGph',
  'lb/h': 'lb/h',
  'cc/min (density 0.745 g/cc)': 'cc/min',
  cSt: 'cSt',
  'mm2/s': 'mm2/s',
  cP: 'cP',
  'mPa s': 'mPa.s',
  'g/cm3': 'g/cc',
  'kg/m3': 'kg/m3',
  'lb/US gal': 'lb/usGal',
  'Btu(IT)/lb': 'Btu/lb',
  'MJ/kg': 'MJ/kg',
  ksi: 'ksi',
  MPa: 'MPa',
  'mpg (US)': 'usMpg',
  'km/L': 'km/L',
  rev: 'turn',
  deg: 'deg',
  rpm: 'rpm',
  'rad/s': 'rad/s',
  degF: 'degF',
  degC: 'degC',
  K: 'K',
  'mpg (imp)': 'impMpg',
  'L/100 km': 'L/100km',
  'bar gauge': 'bar',
  'kPa absolute (at 101.325 kPa)': 'kPa',
};

const Case = z.object({
  id: z.string(),
  topic: z.string(),
  inputs: z.object({ value: z.object({ value: z.number(), unit: z.string() }), to: z.string() }),
  expected: z.object({ value: z.object({ value: z.number(), unit: z.string() }) }),
  tolerance: z.object({ type: z.literal('rel'), value: z.number() }),
  source: z.string().min(3),
});
const cases = z.array(Case).parse(raw);

function named(text: string): UnitId {
  const unit = CASE_UNITS[text];
  if (unit === undefined) throw new Error(`the case's unit "${text}" has no name of ours`);
  return unit;
}

/** Works a case with the public function a person's question goes through. */
function worked({ inputs: { value, to } }: z.output<typeof Case>): number {
  if (value.unit === 'degF (difference)') return differenceToBase(value.value, 'degF', 0);
  const wanted: Wanted = {
    from: named(value.unit),
    to: named(to),
    ...(to.includes('density 0.745') ? { densityKgM3: 745 } : {}),
    ...(value.unit.endsWith('gauge') ? { reference: 'gauge', wantedReference: 'absolute' } : {}),
  };
  return convertFigure(value.value, wanted).value.figure;
}

describe('units against the published cases', () => {
  it('has the 51 cases', () => expect(cases).toHaveLength(51));

  it.each(cases)('$id: $topic ($source)', (each) => {
    const { value, unit } = each.expected.value;
    expect(Math.abs(worked(each) - value), unit).toBeLessThanOrEqual(Math.abs(value) * each.tolerance.value);
  });
});

/** Ours in mathjs 15.2.0's names, or made of them where it has none: it knows no kgf/cm², imperial gallon, PS or cSt. */
const MATHJS: Readonly<Partial<Record<UnitId, string>>> = {
  mm: 'mm',
  um: 'um',
  cm: 'cm',
  m: 'm',
  km: 'km',
  in: 'inch',
  thou: 'mil',
  tenthThou: '0.1 mil',
  ft: 'ft',
  yd: 'yard',
  mi: 'mile',
  tenthMm: '0.1 mm',
  hundredthMm: '0.01 mm',
  tpi: '1/inch',
  mm2: 'mm^2',
  cm2: 'cm^2',
  m2: 'm^2',
  in2: 'inch^2',
  ft2: 'ft^2',
  kcmil: '250 * pi * mil^2',
  deg: 'deg',
  arcmin: 'arcmin',
  arcsec: 'arcsec',
  rad: 'rad',
  gon: 'grad',
  turn: 'cycle',
  s: 's',
  ms: 'ms',
  us: 'us',
  min: 'minute',
  h: 'hour',
  day: 'day',
  week: 'week',
  'km/h': 'km/hour',
  'm/s': 'm/s',
  mph: 'mi/hour',
  'ft/s': 'ft/s',
  'ft/min': 'ft/minute',
  rpm: 'cycle/minute',
  'rad/s': 'rad/s',
  Hz: 'cycle/s',
  kg: 'kg',
  g: 'g',
  mg: 'mg',
  t: 'tonne',
  lb: 'lbm',
  oz: 'oz',
  grain: 'grain',
  stone: 'stone',
  shortTon: 'ton',
  longTon: '2240 lbm',
  N: 'N',
  daN: 'daN',
  kN: 'kN',
  lbf: 'lbf',
  kgf: 'kgf',
  'N/mm': 'N/mm',
  'lbf/in': 'lbf/inch',
  'kgf/mm': 'kgf/mm',
  'N.m': 'N m',
  'N.cm': 'N cm',
  'N.mm': 'N mm',
  'cN.m': 'cN m',
  'daN.m': 'daN m',
  'kN.m': 'kN m',
  'lbf.ft': 'lbf ft',
  'lbf.in': 'lbf inch',
  'ozf.in': 'lbf inch / 16',
  'kgf.m': 'kgf m',
  'kgf.cm': 'kgf cm',
  kPa: 'kPa',
  Pa: 'Pa',
  hPa: 'hPa',
  MPa: 'MPa',
  bar: 'bar',
  mbar: 'mbar',
  atm: 'atm',
  at: 'kgf/cm^2',
  'kgf/mm2': 'kgf/mm^2',
  mmH2O: 'mmH2O',
  inH2O: '25.4 mmH2O',
  kW: 'kW',
  W: 'W',
  MW: 'MW',
  PS: '75 kgf m/s',
  kJ: 'kJ',
  kWh: 'kWh',
  L: 'l',
  dL: 'dl',
  cL: 'cl',
  mL: 'ml',
  cc: 'cc',
  mm3: 'mm^3',
  m3: 'm3',
  in3: 'cuin',
  ft3: 'cuft',
  usGal: 'gallon',
  usQt: 'quart',
  usPt: 'gallon / 8',
  usFlOz: 'floz',
  impGal: '4.54609 l',
  impQt: '4.54609/4 l',
  impPt: '4.54609/8 l',
  impFlOz: '4.54609/160 l',
  'cc/min': 'cc/minute',
  'cc/h': 'cc/hour',
  'cc/s': 'cc/s',
  'L/h': 'l/hour',
  'L/min': 'l/minute',
  'L/s': 'l/s',
  'm3/h': 'm3/hour',
  'm3/min': 'm3/minute',
  'm3/s': 'm3/s',
  cfm: 'cuft/minute',
  usGph: 'gallon/hour',
  usGpm: 'gallon/minute',
  impGph: '4.54609 l/hour',
  impGpm: '4.54609 l/minute',
  'g/s': 'g/s',
  'g/min': 'g/minute',
  'kg/h': 'kg/hour',
  'kg/min': 'kg/minute',
  'kg/s': 'kg/s',
  'lb/h': 'lbm/hour',
  'lb/s': 'lbm/s',
  'lb/min': 'lbm/minute',
  'kg/m3': 'kg/m3',
  'g/cc': 'g/cc',
  'lb/usGal': 'lbm/gallon',
  'mm2/s': 'mm^2/s',
  cSt: 'mm^2/s',
  St: 'cm^2/s',
  'm2/s': 'm^2/s',
  'mPa.s': 'mPa s',
  'Pa.s': 'Pa s',
  cP: 'mPa s',
  'L/100km': 'l/(100 km)',
  'km/L': 'km/l',
  usMpg: 'mile/gallon',
  impMpg: 'mile/(4.54609 l)',
  'MJ/kg': 'MJ/kg',
  'Btu/lb': 'BTU/lbm',
  degC: 'degC',
  degF: 'degF',
  K: 'K',
  degR: 'degR',
  V: 'V',
  mV: 'mV',
  kV: 'kV',
  A: 'A',
  mA: 'mA',
  uA: 'uA',
  ohm: 'ohm',
  mohm: 'mohm',
  kohm: 'kohm',
  Mohm: 'Mohm',
  kA: 'kA',
  mAh: 'mA hour',
  Ah: 'A hour',
};

/**
 * Where mathjs itself is off, and by how much: it takes 133.322 Pa for a mmHg and for a torr (SP 811: 133.322387415 Pa and
 * 101 325/760 Pa), and its psi and hp are rounded to eleven figures.
 */
const OFF_IN_MATHJS: Readonly<Partial<Record<UnitId, { readonly name: string; readonly by: number }>>> = {
  torr: { name: 'torr', by: 3e-6 },
  psi: { name: 'psi', by: 6e-11 },
  ksi: { name: '1000 psi', by: 6e-11 },
  hp: { name: 'hp', by: 6e-11 },
  mmHg: { name: 'mmHg', by: 3e-6 },
  cmHg: { name: '10 mmHg', by: 3e-6 },
  inHg: { name: '25.4 mmHg', by: 3e-6 },
};

/** No unit at all, or none that mathjs has a word for. */
const UNKNOWN_TO_MATHJS: readonly UnitId[] = ['AWG', '1', 'percent', 'permille', 'AFR', 'lambda', 'cc/turn'];

const FIGURE = 37.5;

/** What mathjs makes of a figure in a unit, in the base unit of its dimension. */
function byMathjs(name: string, unit: UnitId): number {
  const { dimension, scale } = units[unit];
  const base = MATHJS[dimensions[dimension].base];
  if (base === undefined) throw new Error(`mathjs has no base for ${unit}`);
  // a scale with a zero of its own is converted; anything else is divided, which takes compound units too
  if (dimension === 'temperature') return numberOf(`number(${FIGURE} ${name}, ${base})`);
  const one = scale.kind === 'reciprocal' ? `(1 / (${FIGURE} * (${name})))` : `(${FIGURE} * (${name}))`;
  return numberOf(`number(${one} / (1 * (${base})))`);
}

const numberOf = (expression: string): number => z.number().parse(evaluate(expression));

describe('every factor against mathjs 15.2.0', () => {
  it('leaves no unit out', () => {
    const known = [...Object.keys(MATHJS), ...Object.keys(OFF_IN_MATHJS), ...UNKNOWN_TO_MATHJS];
    expect(known.toSorted()).toEqual([...unitIds].toSorted());
  });

  it.each(unitIds.flatMap((unit) => (MATHJS[unit] === undefined ? [] : [{ unit, name: MATHJS[unit] }])))(
    '$unit is $name',
    ({ unit, name }) => {
      expect(toBase(FIGURE, unit) / byMathjs(name, unit)).toBeCloseTo(1, 12);
    },
  );

  it.each(Object.entries(OFF_IN_MATHJS))(
    '%s is off in mathjs by no more than is known',
    (unit, { name, by }) => {
      const id = unitIds.find((each) => each === unit);
      if (id === undefined) throw new Error(`${unit} is gone`);
      const off = Math.abs(toBase(FIGURE, id) / byMathjs(name, id) - 1);
      expect(off).toBeGreaterThan(1e-12);
      expect(off).toBeLessThan(by);
    },
  );
});

/** Figures printed in the definitions themselves. */
describe('published definitions', () => {
  it.each([
    { where: 'NIST SP 811 B.8: pound-force', unit: 'lbf', base: 4.4482216152605 },
    { where: 'NIST SP 811 B.8: torr, 133.3224 Pa', unit: 'torr', base: 0.1333224, within: 5e-8 },
    { where: 'NIST SP 811 B.8: psi, 6.894757 kPa', unit: 'psi', base: 6.894757, within: 5e-7 },
    {
      where: 'NIST SP 811 B.8: horsepower (550 ft·lbf/s), 745.6999 W',
      unit: 'hp',
      base: 0.7456999,
      within: 5e-8,
    },
    { where: 'NIST SP 811 B.8: horsepower, metric, 735.4988 W', unit: 'PS', base: 0.7354988, within: 5e-8 },
    {
      where: 'NIST SP 811 B.8: inch of mercury, conventional, 3386.389 Pa',
      unit: 'inHg',
      base: 3.386389,
      within: 5e-7,
    },
    { where: 'NIST Handbook 44: US gallon, 3.785411784 L', unit: 'usGal', base: 3.785411784 },
    { where: 'ASTM B258: 10 AWG, 5.26 mm²', unit: 'AWG', figure: 10, base: 5.26, within: 5e-3 },
  ] as const)('$where', ({ unit, base, ...row }) => {
    const figure = 'figure' in row ? row.figure : 1;
    const within = 'within' in row ? row.within : base * 1e-12;
    expect(Math.abs(toBase(figure, unit) - base)).toBeLessThanOrEqual(within + 1e-12);
  });

  it('converts by way of the base unit', () => expect(convert(1, 'impGal', 'usGal')).toBeCloseTo(1.20095, 5));
});
