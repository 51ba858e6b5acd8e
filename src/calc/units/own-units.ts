import type { UnitId } from './table.ts';

/** What a crew counts in; each can be chosen for itself, since trades mix them. */
export interface OwnUnits {
  readonly pressure: 'bar' | 'psi' | 'kPa';
  readonly torque: 'N.m' | 'lbf.ft';
  readonly temperature: 'degC' | 'degF';
  /** Decides areas, engine volumes and flow speeds too. */
  readonly length: 'mm' | 'in';
  /** Of oil, coolant and fuel in a can. */
  readonly volume: 'L' | 'usQt' | 'usGal' | 'impPt' | 'impGal';
  /** Of injectors; decides whether air is weighed in grams or pounds. */
  readonly flow: 'cc/min' | 'lb/h';
  readonly power: 'kW' | 'hp' | 'PS';
  /** Decides road speeds and heights too. */
  readonly distance: 'km' | 'mi';
}

/** Where no crew has said otherwise. */
export const BUILT_IN: OwnUnits = {
  pressure: 'bar',
  torque: 'N.m',
  temperature: 'degC',
  length: 'mm',
  volume: 'L',
  flow: 'cc/min',
  power: 'hp',
  distance: 'km',
};

/** The choices for each, the built-in one first. */
export const CHOICES: { readonly [What in keyof OwnUnits]: readonly OwnUnits[What][] } = {
  pressure: ['bar', 'psi', 'kPa'],
  torque: ['N.m', 'lbf.ft'],
  temperature: ['degC', 'degF'],
  length: ['mm', 'in'],
  volume: ['L', 'usQt', 'usGal', 'impPt', 'impGal'],
  flow: ['cc/min', 'lb/h'],
  power: ['hp', 'kW', 'PS'],
  distance: ['km', 'mi'],
};

/** From a size on, in the unit it is given in, the unit that is said. */
type Steps = readonly [readonly [from: number, unit: UnitId], ...(readonly [from: number, unit: UnitId])[]];

/** One way of saying a quantity. */
export interface Way {
  readonly steps: Steps;
  /** Who types one of these counts this way. */
  readonly typed: readonly UnitId[];
  /** What is said beside it. */
  readonly beside: string;
}

/** A quantity that is said: the unit sums work it out in, whose choice decides, and the ways there are by that choice. */
export interface Said {
  readonly given: UnitId;
  readonly by: keyof OwnUnits;
  readonly ways: ReadonlyMap<string, Way>;
}

function said<Choice extends keyof OwnUnits>(
  given: UnitId,
  by: Choice,
  ways: Readonly<Record<OwnUnits[Choice], Way>>,
): Said {
  return { given, by, ways: new Map(Object.entries<Way>(ways)) };
}

const way = (
  unit: UnitId | Steps,
  beside: string,
  typed: readonly UnitId[] = typeof unit === 'string' ? [unit] : unit.map(([, each]) => each),
): Way => ({ steps: typeof unit === 'string' ? [[0, unit]] : unit, typed, beside });

/** A volume flow as large as an engine's oil and coolant, in litres or gallons. */
const LIQUID_LITRES: Steps = [
  [0, 'cc/min'],
  [1000, 'L/min'],
];
const IMPERIAL_FLOW: Steps = [[0, 'impGpm']];
const US_FLOW: Steps = [[0, 'usGpm']];

/** Everything that is said in a unit of somebody's choice. */
export const sayings = {
  pressure: said('kPa', 'pressure', {
    bar: way(
      [
        [0, 'bar'],
        [1e-9, 'mbar'],
        [10, 'bar'],
      ],
      'psi',
    ),
    psi: way('psi', 'bar'),
    kPa: way('kPa', 'psi', ['kPa', 'Pa', 'hPa', 'MPa']),
  }),
  torque: said('N.m', 'torque', {
    'N.m': way('N.m', 'lbf.ft', ['N.m', 'N.cm', 'cN.m']),
    'lbf.ft': way(
      [
        [0, 'lbf.in'],
        [13, 'lbf.ft'],
      ],
      'N.m',
    ),
  }),
  temperature: said('degC', 'temperature', {
    degC: way('degC', 'degF', ['degC', 'K']),
    degF: way('degF', 'degC'),
  }),
  length: said('mm', 'length', {
    mm: way(
      [
        [0, 'mm'],
        [1000, 'm'],
      ],
      'in',
      ['mm', 'cm', 'm', 'um', 'hundredthMm', 'tenthMm'],
    ),
    in: way(
      [
        [0, 'in'],
        [915, 'ft'],
      ],
      'mm',
      ['in', 'ft', 'thou', 'tenthThou', 'tpi'],
    ),
  }),
  /** Between parts that were measured: to the micrometre, or a tenth of a thou. */
  clearance: said('mm', 'length', {
    mm: way('mm', 'in', ['mm', 'cm', 'um', 'hundredthMm', 'tenthMm']),
    in: way('in', 'mm', ['in', 'thou', 'tenthThou']),
  }),
  area: said('mm2', 'length', {
    mm: way('mm2', 'in', ['mm2', 'cm2', 'mm', 'cm']),
    in: way('in2', 'mm', ['in2', 'in', 'thou']),
  }),
  /** Of cylinders and chambers. */
  capacity: said('cc', 'length', {
    mm: way('cc', 'in', ['cc', 'mL', 'L', 'mm', 'cm']),
    in: way('in3', 'mm', ['in3', 'in', 'thou']),
  }),
  /** Of liquids in lines, air in an intake, and pistons. */
  velocity: said('m/s', 'length', {
    mm: way('m/s', 'in', ['m/s', 'mm', 'cm', 'm']),
    in: way('ft/s', 'mm', ['ft/s', 'ft/min', 'in', 'ft', 'thou']),
  }),
  pistonSpeed: said('m/s', 'length', {
    mm: way('m/s', 'in', ['m/s', 'mm']),
    in: way('ft/min', 'mm', ['ft/min', 'ft/s', 'in']),
  }),
  volume: said('L', 'volume', {
    L: way('L', 'usQt', ['L', 'mL', 'cc', 'cL', 'dL']),
    usQt: way('usQt', 'L'),
    usGal: way('usGal', 'L'),
    impPt: way('impPt', 'L', ['impPt', 'impQt']),
    impGal: way('impGal', 'L'),
  }),
  /** Of oil and coolant. */
  liquidFlow: said('cc/min', 'volume', {
    L: way(LIQUID_LITRES, 'usGal', ['L/min', 'L/h', 'cc/min', 'L/s', 'm3/h']),
    usQt: way(US_FLOW, 'L', ['usGpm']),
    usGal: way(US_FLOW, 'L', ['usGpm', 'usGph']),
    impPt: way(IMPERIAL_FLOW, 'L', ['impGpm']),
    impGal: way(IMPERIAL_FLOW, 'L', ['impGpm', 'impGph']),
  }),
  /** What a fuel pump brings. */
  pumpFlow: said('cc/min', 'volume', {
    L: way('L/h', 'usGal', ['L/h', 'L/min', 'cc/min']),
    usQt: way('usGph', 'L', []),
    usGal: way('usGph', 'L', ['usGph', 'usGpm']),
    impPt: way('impGph', 'L', []),
    impGal: way('impGph', 'L', ['impGph', 'impGpm']),
  }),
  airFlow: said('g/s', 'flow', {
    'cc/min': way('g/s', 'lb/h', ['g/s', 'kg/h', 'kg/s', 'kg/min', 'g/min']),
    'lb/h': way('lb/min', 'cc/min', ['lb/min', 'lb/h', 'lb/s']),
  }),
  /** Fuel by mass, as an engine burns it. */
  burn: said('g/s', 'flow', {
    'cc/min': way('kg/h', 'lb/h', ['kg/h', 'g/s', 'cc/min', 'L/h', 'kg/min', 'g/min']),
    'lb/h': way('lb/h', 'cc/min', ['lb/h', 'lb/min']),
  }),
  power: said('kW', 'power', {
    hp: way('hp', 'kW'),
    kW: way('kW', 'hp', ['kW', 'W']),
    PS: way('PS', 'kW'),
  }),
  force: said('N', 'torque', {
    'N.m': way(
      [
        [0, 'N'],
        [1000, 'kN'],
      ],
      'lbf.ft',
      ['N', 'kN', 'N.m'],
    ),
    'lbf.ft': way('lbf', 'N.m', ['lbf', 'lbf.ft', 'lbf.in']),
  }),
  distance: said('km', 'distance', {
    km: way('km', 'mi'),
    mi: way('mi', 'km'),
  }),
  speed: said('km/h', 'distance', {
    km: way('km/h', 'mi'),
    mi: way('mph', 'km'),
  }),
  /** Above the sea. In km, as distances are. */
  height: said('m', 'distance', {
    km: way('m', 'mi', ['m', 'km']),
    mi: way('ft', 'km', ['ft', 'mi']),
  }),
} as const;

export type Saying = keyof typeof sayings;
