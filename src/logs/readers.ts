import { toBase } from '../calc/units/convert.ts';
import type { UnitId } from '../calc/units/table.ts';
import { numberIn, switchIn } from './cell.ts';
import { clockReader } from './clock.ts';
import type { LogUnit } from './unit-words.ts';
import type { Role } from './words.ts';

/** How a column's cells become readings. */
export interface ColumnReader {
  readonly read: (cell: string) => number;
  /** As it was read, in words: `kPa, absolute`. */
  readonly as: string;
  /** Set when the unit was taken from what the values look like. */
  readonly guessed?: true;
}

export interface ReaderContext {
  readonly words: string;
  readonly unit: LogUnit | undefined;
  /** First cells of the column. */
  readonly sample: readonly string[];
  readonly decimalComma: boolean;
  /** What an AFR is divided by. */
  readonly stoichiometricAfr: number;
}

const PRESSURES = ['kPa', 'Pa', 'hPa', 'MPa', 'mbar', 'bar', 'psi', 'inHg', 'mmHg', 'at', 'atm'];

/** Units that a reading can be in; a column in any other unit is something else. An empty list takes them all. */
const FITS: Readonly<Record<Role, readonly string[]>> = {
  timeS: ['s', 'ms', 'us', 'min', 'h', 'clock', 'epoch-s', 'epoch-ms', 'unitless'],
  dateOnly: [],
  speedRpm: ['rpm', 'kilo-rpm', 'unitless'],
  loadKPa: PRESSURES,
  vacuumKPa: PRESSURES,
  barometerKPa: PRESSURES,
  oilKPa: PRESSURES,
  fuelKPa: PRESSURES,
  lambda: ['lambda', 'AFR', 'phi', 'unitless'],
  targetLambda: ['lambda', 'AFR', 'phi', 'unitless'],
  throttleRatio: ['percent', 'deg', 'unitless'],
  trimRatio: ['percent', 'unitless', 'lambda', 'permille'],
  longTrimRatio: ['percent', 'unitless', 'lambda', 'permille'],
  dutyRatio: ['percent', 'unitless'],
  coolantC: ['degC', 'degF', 'K', 'deg'],
  oilC: ['degC', 'degF', 'K', 'deg'],
  chargeC: ['degC', 'degF', 'K', 'deg'],
  sensorC: ['degC', 'degF', 'K', 'deg'],
  pulseMs: ['ms', 'us', 's', 'unitless'],
  batteryV: ['V', 'mV'],
  vehicleKmH: ['km/h', 'mph', 'm/s'],
  gear: ['unitless'],
  knock: [],
  fuelCut: ['unitless', 'percent'],
  sensorFault: ['unitless'],
  enrichmentRatio: ['percent', 'unitless', 'ms'],
  transientFuel: ['percent', 'unitless', 'ms'],
  closedLoop: ['unitless'],
};

export function fits(role: Role, unit: LogUnit | undefined): boolean {
  const allowed = FITS[role];
  return unit === undefined || allowed.length === 0 || allowed.includes(unit.unit);
}

/** Readings further off than these are no readings: a sensor that is open, a register that overflowed. */
const PLAUSIBLE: Readonly<Partial<Record<Role, readonly [number, number]>>> = {
  speedRpm: [0, 20_000],
  loadKPa: [5, 700],
  coolantC: [-45, 320],
  oilC: [-45, 200],
  chargeC: [-45, 250],
  sensorC: [-45, 1300],
  throttleRatio: [-10, 115],
  trimRatio: [0.4, 2],
  longTrimRatio: [0.4, 2],
  targetLambda: [0.5, 1.6],
  dutyRatio: [-0.01, 2],
  oilKPa: [-30, 2000],
  fuelKPa: [-50, 40_000],
  batteryV: [0, 40],
  pulseMs: [0, 200],
  barometerKPa: [50, 115],
  vehicleKmH: [0, 500],
};

export function readerFor(role: Role, context: ReaderContext): ColumnReader {
  const reader = rawReader(role, context);
  const range = PLAUSIBLE[role];
  if (range === undefined) return reader;
  const [least, most] = range;
  return {
    ...reader,
    read(cell) {
      const value = reader.read(cell);
      return value >= least && value <= most ? value : Number.NaN;
    },
  };
}

function rawReader(role: Role, context: ReaderContext): ColumnReader {
  const { decimalComma } = context;
  const plain = (cell: string): number => numberIn(cell, decimalComma);
  switch (role) {
    case 'loadKPa':
      return manifoldReader(context, plain);
    case 'vacuumKPa':
      return vacuumReader(context, plain);
    case 'barometerKPa':
    case 'oilKPa':
    case 'fuelKPa':
      return pressureReader(context, plain);
    case 'coolantC':
    case 'oilC':
    case 'chargeC':
    case 'sensorC':
      return inUnit(
        context.unit?.unit === 'degF' || context.unit?.unit === 'K' ? context.unit.unit : 'degC',
        plain,
      );
    case 'lambda':
    case 'targetLambda':
      return mixtureReader(context, plain);
    case 'trimRatio':
    case 'longTrimRatio':
      return trimReader(context, plain);
    case 'throttleRatio':
    case 'dutyRatio':
      return shareReader(role, context, plain);
    case 'speedRpm':
      return speedReader(context, plain);
    case 'pulseMs':
      return pulseReader(context, plain);
    case 'batteryV':
      return scaled(context.unit?.unit === 'mV' ? 1e-3 : 1, context.unit?.unit ?? 'V', plain);
    case 'vehicleKmH':
      return inUnit(
        context.unit?.unit === 'mph' || context.unit?.unit === 'm/s' ? context.unit.unit : 'km/h',
        plain,
      );
    case 'fuelCut':
    case 'closedLoop':
      return { read: (cell) => switchIn(cell, decimalComma), as: 'a switch' };
    case 'sensorFault':
      return statusReader(context);
    case 'enrichmentRatio':
      return { read: (cell) => (adds(plain(cell)) ? 1.5 : 1), as: 'enrichment at work or not' };
    case 'transientFuel':
      return {
        read: (cell) => (adds(plain(cell)) || switchedOn(cell) ? 1 : 0),
        as: 'enrichment at work or not',
      };
    case 'knock':
      // timing taken out for knock is often written with a minus
      return { read: (cell) => Math.abs(plain(cell)), as: 'a number' };
    case 'timeS':
      return clockReader(context.sample, context.unit, decimalComma);
    case 'gear':
    case 'dateOnly':
      return { read: plain, as: 'a number' };
  }
}

const scaled = (factor: number, as: string, plain: (cell: string) => number): ColumnReader => ({
  read: (cell) => plain(cell) * factor,
  as,
});

const inUnit = (unit: UnitId, plain: (cell: string) => number): ColumnReader => ({
  read: (cell) => toBase(plain(cell), unit),
  as: unit === 'degC' ? '°C' : unit === 'degF' ? '°F' : unit,
});

/** An enrichment that adds nothing stands at 0, 1 or 100, whichever it is counted in. */
const adds = (value: number): boolean =>
  !Number.isNaN(value) &&
  [0, 1, 100].every((neutral) => Math.abs(value - neutral) > 0.005 * Math.max(1, neutral));

const switchedOn = (cell: string): boolean => /^(on|true|yes|active|aktiv|ein|ja)$/i.test(cell.trim());

/** Values of a sample, sorted. */
function valuesOf({ sample }: ReaderContext, plain: (cell: string) => number): readonly number[] {
  return sample
    .map(plain)
    .filter((value) => Number.isFinite(value))
    .sort((a, b) => a - b);
}

const middle = (values: readonly number[]): number => values[values.length >> 1] ?? Number.NaN;

function pressureUnit(
  context: ReaderContext,
  values: readonly number[],
  usual: 'manifold' | 'other',
): UnitId {
  const known = context.unit?.unit;
  if (known !== undefined && PRESSURES.includes(known)) return known as UnitId; // the list holds units of pressure alone
  const most = values.at(-1) ?? 0;
  if (usual === 'manifold') {
    const least = values[0] ?? 0;
    const widest = Math.max(most, -least);
    // no engine idles at 17 psi, nor is the air outside ever below 17 kPa
    if (widest > 30 || (least > 12 && most >= 17)) return 'kPa';
    return widest > 4 ? 'psi' : 'bar';
  }
  return most > 130 ? 'kPa' : most > 13 ? 'psi' : 'bar';
}

function pressureReader(context: ReaderContext, plain: (cell: string) => number): ColumnReader {
  const unit = pressureUnit(context, valuesOf(context, plain), 'other');
  return { ...inUnit(unit, plain), ...(context.unit === undefined ? { guessed: true as const } : {}) };
}

/** Below the air outside: a log begins off boost, so the sign it has there is that of vacuum, and the other is boost. */
function vacuumReader(context: ReaderContext, plain: (cell: string) => number): ColumnReader {
  const base = pressureReader(context, plain);
  const sign = middle(valuesOf(context, plain)) < 0 ? -1 : 1;
  return { ...base, read: (cell) => sign * base.read(cell), as: `${base.as}, below the air outside` };
}

const ATMOSPHERE_KPA = 101.3;

/** Absolute or gauge: as the unit or the name says, else by whether it ever falls below nothing. */
function manifoldReader(context: ReaderContext, plain: (cell: string) => number): ColumnReader {
  const values = valuesOf(context, plain);
  const unit = pressureUnit(context, values, 'manifold');
  const least = toBase(values[0] ?? 50, unit);
  const gauge = isGauge(context, least);
  const base = inUnit(unit, plain);
  return {
    read: gauge ? (cell) => base.read(cell) + ATMOSPHERE_KPA : base.read,
    as: `${unit}, ${gauge ? 'above the air outside' : 'absolute'}`,
    ...(context.unit === undefined ? { guessed: true as const } : {}),
  };
}

function isGauge({ words, unit }: ReaderContext, leastKPa: number): boolean {
  if (unit?.reference !== undefined) return unit.reference === 'gauge';
  if (/\b(abs|absolute|absolut|absolu|absoluta|assoluta|map)\b/.test(words)) return leastKPa < -3;
  if (/\b(gauge|rel|relative|relativ|relatif|relativa|overdruck|uberdruck)\b/.test(words)) return true;
  return leastKPa < 12;
}

function mixtureReader(context: ReaderContext, plain: (cell: string) => number): ColumnReader {
  const values = valuesOf(context, plain).filter((value) => value > 0);
  const known = context.unit?.unit;
  if (known === 'phi' || /\b(phi|equivalence|richesse)\b/.test(context.words)) {
    return { read: (cell) => 1 / plain(cell), as: 'fuel–air equivalence, 1/λ' };
  }
  const typical = middle(values);
  const asAfr = known === 'AFR' || (known !== 'lambda' && typical > 3);
  if (asAfr && !(typical < 3)) {
    const { stoichiometricAfr } = context;
    return { read: (cell) => plain(cell) / stoichiometricAfr, as: `AFR, ${stoichiometricAfr} : 1 at λ 1` };
  }
  return { read: plain, as: 'λ' };
}

/** Fuel added as a ratio: 1.05, 105 %, +5 % and +0.05 are all the same. */
function trimReader(context: ReaderContext, plain: (cell: string) => number): ColumnReader {
  const values = valuesOf(context, plain);
  const typical = middle(values);
  const widest = Math.max(Math.abs(values[0] ?? 0), Math.abs(values.at(-1) ?? 0));
  if (typical > 50) return { read: (cell) => plain(cell) / 100, as: '% of the base fuel' };
  if (context.unit?.unit === 'permille') return { read: (cell) => 1 + plain(cell) / 1000, as: '‰ added' };
  if (context.unit?.unit !== 'percent' && typical > 0.5 && typical < 1.6)
    return { read: plain, as: 'a factor' };
  if (context.unit?.unit !== 'percent' && widest > 0 && widest < 0.35) {
    return { read: (cell) => 1 + plain(cell), as: 'a share added' };
  }
  return { read: (cell) => 1 + plain(cell) / 100, as: '% added' };
}

function shareReader(role: Role, context: ReaderContext, plain: (cell: string) => number): ColumnReader {
  // a throttle is closed while a log begins, and does not yet tell what it is counted in: settle.ts sees all of it
  if (role === 'throttleRatio' && context.unit === undefined) return { read: plain, as: 'by its largest' };
  const most = valuesOf(context, plain).at(-1) ?? 0;
  if (context.unit?.unit === 'deg') return scaled(1 / 90, '° of 90', plain);
  if (context.unit?.unit === 'percent' || most > 1.5) return scaled(0.01, '%', plain);
  return { read: plain, as: 'a share' };
}

function speedReader(context: ReaderContext, plain: (cell: string) => number): ColumnReader {
  const most = valuesOf(context, plain).at(-1) ?? 0;
  const thousands = context.unit?.unit === 'kilo-rpm' || (most > 0.3 && most < 15);
  return scaled(thousands ? 1000 : 1, thousands ? 'thousands of rpm' : 'rpm', plain);
}

function pulseReader(context: ReaderContext, plain: (cell: string) => number): ColumnReader {
  const most = valuesOf(context, plain).at(-1) ?? 0;
  const unit = context.unit?.unit;
  if (unit === 'us' || (unit !== 'ms' && most > 200)) return scaled(1e-3, 'µs', plain);
  return unit === 's' ? scaled(1e3, 's', plain) : { read: plain, as: 'ms' };
}

/** Numbers whose meaning only the whole log can tell are kept from 1000 up; drive-status.ts settles them. */
export const UNSETTLED = 1000;

function statusReader({ words, decimalComma }: ReaderContext): ColumnReader {
  const isFault = /\b(fault|error|err|fehler|defaut|fallo|guasto|falha|storing|fel)\b/.test(words);
  const isReady = /\b(ok|ready|valid|bereit)\b/.test(words);
  return {
    as: 'the sensor’s own word',
    read(cell) {
      const text = cell.trim().toLowerCase();
      const value = numberIn(text, decimalComma);
      if (!Number.isNaN(value))
        return isFault ? Number(value !== 0) : isReady ? Number(value === 0) : UNSETTLED + value;
      if (text === '') return Number.NaN;
      if (
        /^(ok|ready|valid|normal|good|running|run|active|measuring|bereit|gut|none|no fault|no error)$/.test(
          text,
        )
      )
        return 0;
      if (/^(true|yes|on|ja|oui|si)$/.test(text)) return isFault ? 1 : 0;
      if (/^(false|no|off|nein|non)$/.test(text)) return isFault ? 0 : 1;
      return 1;
    },
  };
}
