import type { UnitId } from '../../calc/units/table.ts';
import type { Dimension } from '../../calc/units/unit.ts';

/** What a question is about: what a number typed there can mean, and within what limits. */
export type FieldName =
  | 'length'
  | 'pitch'
  | 'pressure'
  | 'torque'
  | 'temperature'
  | 'flow'
  | 'volume'
  | 'mass'
  | 'power'
  | 'speed'
  | 'distance'
  | 'angle'
  | 'voltage'
  | 'current'
  | 'resistance'
  | 'viscosity'
  | 'area'
  | 'force'
  | 'time'
  | 'ratio'
  | 'percent'
  | 'density'
  | 'spring-rate'
  | 'economy';

/** One dimension a field takes: the unit its values come back in, and what can be true of it. */
export interface Admitted {
  readonly dimension: Dimension;
  readonly unit: UnitId;
  readonly min: number;
  readonly max: number;
  /** Nothing at all is fair besides what lies between the limits: a stopped engine. */
  readonly zero?: true;
}

export interface Field {
  /** As a sentence begins: "A pressure". */
  readonly called: string;
  readonly admits: readonly Admitted[];
  /** Units of these dimensions that mean nothing here. */
  readonly without?: readonly UnitId[];
  /** What would be read, as a person types it. */
  readonly examples: string;
  /** A number without a unit: read in this unit, or asked about in these, the likeliest first. */
  readonly bare: UnitId | ((figure: number) => UnitId | readonly UnitId[]);
  /** Words that mean a unit only here: `cc` of an injector is cc/min. */
  readonly here?: Readonly<Record<string, UnitId>>;
  /** Words that mean several things here, and why they are asked about. */
  readonly doubts?: Readonly<Record<string, Doubt>>;
}

export interface Doubt {
  readonly units: readonly UnitId[];
  readonly why: string;
}

const one = (dimension: Dimension, unit: UnitId, min: number, max: number): readonly Admitted[] => [
  { dimension, unit, min, max },
];

const feet = 'foot or inch is missing: which pounds?';
const poundsAlone: Doubt = { units: ['lbf.ft', 'lbf.in'], why: feet };
const wheel: Doubt = {
  units: ['hp'],
  why: 'that is at the wheels, and the crank has more by an unknown loss. Is it the figure you mean?',
};

/** Every field there is, with its limits: beyond them a number is a slip, and is refused. */
export const fields: Readonly<Record<FieldName, Field>> = {
  length: {
    called: 'A length',
    admits: one('length', 'mm', 0, 10_000),
    without: ['tpi'],
    examples: '21.9 mm, 11/16, 0.863 in or 2 thou',
    bare: (figure) => (figure < 1 ? ['in', 'mm'] : ['mm', 'in']),
    doubts: {
      mil: { units: ['thou', 'mm'], why: 'thousandths of an inch, or mm?' },
      mils: { units: ['thou', 'mm'], why: 'thousandths of an inch, or mm?' },
      over: { units: ['thou'], why: 'thousandths of an inch oversize?' },
      oversize: { units: ['thou'], why: 'thousandths of an inch oversize?' },
      under: { units: ['thou'], why: 'thousandths of an inch undersize?' },
      undersize: { units: ['thou'], why: 'thousandths of an inch undersize?' },
      tenths: { units: ['tenthThou', 'tenthMm'], why: 'tenths of a thou, or of a mm?' },
      tenth: { units: ['tenthThou', 'tenthMm'], why: 'tenths of a thou, or of a mm?' },
      hundredths: { units: ['hundredthMm'], why: 'hundredths of a mm?' },
      drill: { units: [], why: 'a drill by its number is a size from a table.' },
    },
  },
  pitch: {
    called: 'A pitch',
    admits: one('length', 'mm', 0.1, 12.7),
    examples: '1.5 mm, 28 tpi, or 15/10 for 15 mm over 10 threads',
    bare: (figure) => (figure <= 3.5 ? 'mm' : figure >= 9 ? 'tpi' : ['tpi', 'mm']),
    here: { threads: 'tpi', thread: 'tpi', '/inch': 'tpi', '/in': 'tpi', '/zoll': 'tpi' },
    doubts: { mil: { units: ['thou', 'mm'], why: 'thousandths of an inch, or mm?' } },
  },
  pressure: {
    called: 'A pressure',
    admits: one('pressure', 'kPa', -101.325, 300_000),
    examples: '58 psi, 4 bar or 400 kPa',
    bare: (figure) => (Math.abs(figure) <= 10 ? ['bar', 'psi'] : ['psi', 'kPa', 'bar']),
    doubts: {
      kilo: { units: ['at'], why: 'kilograms per square centimetre?' },
      kilos: { units: ['at'], why: 'kilograms per square centimetre?' },
      kg: { units: ['at'], why: 'kilograms per square centimetre?' },
      kp: { units: ['kPa'], why: 'kPa with a letter missing, or kilopond, a force?' },
      lb: { units: ['psi'], why: 'pounds per square inch?' },
      lbs: { units: ['psi'], why: 'pounds per square inch?' },
      pound: { units: ['psi'], why: 'pounds per square inch?' },
      pounds: { units: ['psi'], why: 'pounds per square inch?' },
      '#': { units: ['psi'], why: 'pounds per square inch?' },
      in: { units: ['inHg', 'inH2O'], why: 'inches of mercury, or of water?' },
      inch: { units: ['inHg', 'inH2O'], why: 'inches of mercury, or of water?' },
      inches: { units: ['inHg', 'inH2O'], why: 'inches of mercury, or of water?' },
      '"': { units: ['inHg', 'inH2O'], why: 'inches of mercury, or of water?' },
    },
  },
  torque: {
    called: 'A torque',
    admits: one('torque', 'N.m', 0, 3000),
    examples: '85 Nm, 63 lb ft or 120 in-lb',
    bare: () => ['N.m', 'lbf.ft'],
    here: {
      'n/m': 'N.m',
      'lb/ft': 'lbf.ft',
      'lbs/ft': 'lbf.ft',
      'lbf/ft': 'lbf.ft',
      'ft/lb': 'lbf.ft',
      'ft/lbs': 'lbf.ft',
      'ft/lbf': 'lbf.ft',
      'foot/pounds': 'lbf.ft',
      'pounds/foot': 'lbf.ft',
      'lb/in': 'lbf.in',
      'lbs/in': 'lbf.in',
      'in/lb': 'lbf.in',
      'in/lbs': 'lbf.in',
      'kg/m': 'kgf.m',
      'kgf/m': 'kgf.m',
      'm/kg': 'kgf.m',
      'kg/cm': 'kgf.cm',
      'dan/m': 'daN.m',
    },
    doubts: {
      lb: poundsAlone,
      lbs: poundsAlone,
      lbf: poundsAlone,
      pound: poundsAlone,
      pounds: poundsAlone,
      '#': poundsAlone,
      ft: { units: ['lbf.ft'], why: 'is it foot-pounds?' },
      foot: { units: ['lbf.ft'], why: 'is it foot-pounds?' },
      in: { units: ['lbf.in'], why: 'is it inch-pounds?' },
      n: { units: ['N.m'], why: 'newtons are a force: is it newton metres?' },
      newton: { units: ['N.m'], why: 'newtons are a force: is it newton metres?' },
      newtons: { units: ['N.m'], why: 'newtons are a force: is it newton metres?' },
      kg: { units: ['kgf.m'], why: 'is it kilogram-force metres?' },
      kilo: { units: ['kgf.m'], why: 'is it kilogram-force metres?' },
      kilos: { units: ['kgf.m'], why: 'is it kilogram-force metres?' },
    },
  },
  temperature: {
    called: 'A temperature',
    admits: one('temperature', 'degC', -273.15, 1500),
    examples: '90 °C, 195 F or 363 K',
    bare: () => ['degC', 'degF'],
    here: { grad: 'degC' },
    doubts: {
      '°': { units: ['degC', 'degF'], why: 'Celsius or Fahrenheit?' },
      deg: { units: ['degC', 'degF'], why: 'Celsius or Fahrenheit?' },
      degs: { units: ['degC', 'degF'], why: 'Celsius or Fahrenheit?' },
      degree: { units: ['degC', 'degF'], why: 'Celsius or Fahrenheit?' },
      degrees: { units: ['degC', 'degF'], why: 'Celsius or Fahrenheit?' },
      degré: { units: ['degC', 'degF'], why: 'Celsius or Fahrenheit?' },
      degrés: { units: ['degC', 'degF'], why: 'Celsius or Fahrenheit?' },
      grado: { units: ['degC', 'degF'], why: 'Celsius or Fahrenheit?' },
      grados: { units: ['degC', 'degF'], why: 'Celsius or Fahrenheit?' },
      gradi: { units: ['degC', 'degF'], why: 'Celsius or Fahrenheit?' },
      '°r': { units: ['degR'], why: 'Rankine, or Réaumur?' },
      r: { units: ['degR'], why: 'Rankine, or Réaumur?' },
    },
  },
  flow: {
    called: 'A flow',
    admits: [
      { dimension: 'volume-flow', unit: 'cc/min', min: 0, max: 1e8 },
      { dimension: 'mass-flow', unit: 'g/s', min: 0, max: 5000 },
    ],
    examples: '550 cc/min, 255 l/h or 42 lb/h',
    bare: () => ['cc/min', 'lb/h'],
    here: {
      cc: 'cc/min',
      ccs: 'cc/min',
      ccm: 'cc/min',
      cm3: 'cc/min',
      lb: 'lb/h',
      lbs: 'lb/h',
      pound: 'lb/h',
      pounds: 'lb/h',
      '#': 'lb/h',
    },
    doubts: {
      gph: { units: ['usGph', 'impGph'], why: 'US or imperial gallons?' },
      'gal/h': { units: ['usGph', 'impGph'], why: 'US or imperial gallons?' },
      'gal/hr': { units: ['usGph', 'impGph'], why: 'US or imperial gallons?' },
      'gal/hour': { units: ['usGph', 'impGph'], why: 'US or imperial gallons?' },
      'gallons/hour': { units: ['usGph', 'impGph'], why: 'US or imperial gallons?' },
      'gallons/hr': { units: ['usGph', 'impGph'], why: 'US or imperial gallons?' },
      gpm: { units: ['usGpm', 'impGpm'], why: 'US or imperial gallons?' },
      'gal/min': { units: ['usGpm', 'impGpm'], why: 'US or imperial gallons?' },
      'gallons/minute': { units: ['usGpm', 'impGpm'], why: 'US or imperial gallons?' },
      'gallons/min': { units: ['usGpm', 'impGpm'], why: 'US or imperial gallons?' },
      ml: { units: ['cc/min'], why: 'in a minute?' },
      l: { units: ['L/h', 'L/min'], why: 'in an hour, or in a minute?' },
      scfm: { units: ['cfm'], why: 'at standard conditions: which? Is the volume as it flows meant?' },
    },
  },
  volume: {
    called: 'A volume',
    admits: one('volume', 'L', 0, 1000),
    examples: '4.5 L, 500 cc or 1.2 US gal',
    bare: (figure) => (figure < 20 ? ['L', 'cc'] : ['cc', 'L']),
    doubts: {
      ...doubtsOf('gal gals gallon gallons galones galón', ['usGal', 'impGal'], 'US or imperial gallons?'),
      ...doubtsOf('qt qts quart quarts', ['usQt', 'impQt'], 'US or imperial quarts?'),
      ...doubtsOf('pt pts pint pints pinte pintes', ['usPt', 'impPt'], 'US or imperial pints?'),
      ...doubtsOf(
        'floz oz ounce ounces fluidounce fluidounces',
        ['usFlOz', 'impFlOz'],
        'US or imperial fluid ounces?',
      ),
      ...doubtsOf('bottle bottles can cans flasche flaschen tin tins', [], 'how much is in one?'),
      ...doubtsOf('cup cups tasse tassen', [], 'how much is in one?'),
    },
  },
  mass: {
    called: 'A mass',
    admits: one('mass', 'kg', 0, 5000),
    examples: '12 kg, 612 g or 26 lb',
    bare: () => ['kg', 'lb'],
    doubts: {
      gr: { units: ['g', 'grain'], why: 'grams, or grains?' },
      k: { units: ['kg'], why: 'kilograms?' },
      ...doubtsOf('pfund pfd', ['lb'], 'a pound, or the half kilogram it is in German?'),
      ...doubtsOf('ton tons', ['t', 'shortTon', 'longTon'], 'metric, US or imperial tons?'),
    },
  },
  power: {
    called: 'A power',
    admits: one('power', 'kW', 0, 2000),
    examples: '300 kW, 400 hp or 400 PS',
    bare: () => ['hp', 'PS', 'kW'],
    doubts: {
      ...doubtsOf(
        'whp rwhp fwhp awhp wheelhp hpatthewheels wheelhorsepower bhpatthewheels',
        ['hp'],
        wheel.why,
      ),
      hk: { units: ['PS', 'hp'], why: 'metric horsepower?' },
    },
  },
  speed: {
    called: 'A speed',
    admits: [
      { dimension: 'speed', unit: 'km/h', min: 0, max: 600 },
      { dimension: 'rotation', unit: 'rpm', min: 50, max: 300_000, zero: true },
    ],
    examples: '60 mph, 100 km/h or 6500 rpm',
    bare: (figure) => (figure >= 1000 ? 'rpm' : ['km/h', 'mph', 'rpm']),
    doubts: {
      ...doubtsOf('km kms', ['km/h'], 'in an hour?'),
      ...doubtsOf('mile miles', ['mph'], 'in an hour?'),
    },
  },
  distance: {
    called: 'A distance',
    admits: [{ dimension: 'length', unit: 'km', min: 0, max: 2e6 }],
    without: ['tpi'],
    examples: '500 km, 300 miles or 800 m',
    bare: () => ['km', 'mi'],
    doubts: {
      ...doubtsOf('nm nmi nauticalmiles', [], 'a nautical mile is no road distance.'),
      ...doubtsOf('klick klicks', ['km'], 'kilometres?'),
    },
  },
  angle: {
    called: 'An angle',
    admits: one('angle', 'deg', -7200, 7200),
    examples: '90°, 1/2 turn or 12°30′',
    bare: 'deg',
  },
  voltage: {
    called: 'A voltage',
    admits: one('voltage', 'V', -100, 60_000),
    examples: '12.6 V or 850 mV',
    bare: 'V',
    doubts: doubtsOf('vac', ['V'], 'alternating volts?'),
  },
  current: {
    called: 'A current',
    admits: one('current', 'A', -2000, 2000),
    examples: '7.5 A or 250 mA',
    bare: () => ['A', 'mA'],
    doubts: doubtsOf('cca acca ca', ['A'], 'that is a cold-cranking rating: is it what was measured?'),
  },
  resistance: {
    called: 'A resistance',
    admits: one('resistance', 'ohm', 0, 1e9),
    examples: '2.2 kΩ, 470 ohm or 50 mΩ',
    bare: () => ['ohm', 'kohm'],
    doubts: { m: { units: ['mohm', 'Mohm'], why: 'milliohms, or megohms?' } },
  },
  viscosity: {
    called: 'A viscosity',
    admits: one('viscosity', 'mm2/s', 0, 1e6),
    examples: '14.5 cSt or 11.2 mm²/s',
    bare: () => ['cSt'],
    doubts: doubtsOf('sus ssu', [], 'Saybolt seconds are read off a table.'),
  },
  area: {
    called: 'An area',
    admits: one('area', 'mm2', 0, 1e6),
    examples: '2.5 mm², 0.2 sq in or 10 AWG',
    bare: () => ['mm2', 'AWG'],
    doubts: doubtsOf('gauge ga swg', ['AWG'], 'American wire gauge?'),
  },
  force: {
    called: 'A force',
    admits: one('force', 'N', 0, 500_000),
    examples: '450 N, 120 lbf or 45 kgf',
    bare: () => ['N', 'kgf', 'lbf'],
    here: {
      lb: 'lbf',
      lbs: 'lbf',
      pound: 'lbf',
      pounds: 'lbf',
      '#': 'lbf',
      kg: 'kgf',
      kgs: 'kgf',
      kilo: 'kgf',
      kilos: 'kgf',
    },
    doubts: {
      kp: { units: ['kgf'], why: 'kiloponds?' },
      ...doubtsOf(
        'ton tons t tonne tonnes',
        [],
        'which ton, and as a force? Kilonewtons are the same everywhere.',
      ),
      ...doubtsOf('g gram grams gr', [], 'grams are a mass.'),
    },
  },
  time: {
    called: 'A time',
    admits: one('time', 's', 0, 3.2e7),
    examples: '90 s, 5 min, 1h30 or 850 µs',
    bare: () => ['s', 'min', 'h'],
    doubts: {
      m: { units: ['min'], why: 'minutes?' },
      "'": { units: ['min'], why: 'minutes?' },
      '"': { units: ['s'], why: 'seconds?' },
    },
  },
  ratio: {
    called: 'A ratio',
    admits: [
      { dimension: 'ratio', unit: '1', min: 0, max: 1000 },
      { dimension: 'air-fuel-ratio', unit: '1', min: 0, max: 1000 },
      { dimension: 'lambda', unit: '1', min: 0, max: 1000 },
    ],
    examples: '10.5:1, 12.4 AFR, λ 0.88 or 41/11',
    bare: '1',
    doubts: doubtsOf('% percent prozent pct', ['percent'], 'a share, as a ratio?'),
  },
  percent: {
    called: 'A percentage',
    admits: one('ratio', '1', -1, 10),
    examples: '85 % or 62.5%',
    bare: (figure) => (Math.abs(figure) <= 1 ? ['1', 'percent'] : 'percent'),
  },
  density: {
    called: 'A density',
    admits: one('density', 'kg/m3', 0.1, 25_000),
    examples: '0.745 g/cc or 745 kg/m³',
    bare: (figure) => (figure < 25 ? ['g/cc', 'kg/m3'] : ['kg/m3', 'g/cc']),
  },
  'spring-rate': {
    called: 'A spring rate',
    admits: one('spring-rate', 'N/mm', 0, 1e5),
    examples: '17.5 N/mm or 100 lb/in',
    bare: () => ['N/mm', 'lbf/in'],
  },
  economy: {
    called: 'A fuel consumption',
    admits: one('economy', 'L/100km', 0.1, 1000),
    examples: '8.1 L/100 km or 30 US mpg',
    bare: () => ['L/100km', 'usMpg', 'impMpg'],
    doubts: doubtsOf('mpg miles/gallon', ['usMpg', 'impMpg'], 'US or imperial gallons?'),
  },
};

/** Words that some field knows to mean several things: nowhere are they a slip of the pen for something else. */
export const askedSomewhere: ReadonlySet<string> = new Set(
  Object.values(fields).flatMap(({ doubts = {} }) => Object.keys(doubts)),
);

function doubtsOf(words: string, units: readonly UnitId[], why: string): Readonly<Record<string, Doubt>> {
  return Object.fromEntries(words.split(' ').map((word) => [word, { units, why }]));
}

export function isFieldName(name: string): name is FieldName {
  return Object.hasOwn(fields, name);
}
