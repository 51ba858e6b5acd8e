import type { UnitId } from '../calc/units/table.ts';

/** What a unit in a log's header stands for. */
export interface LogUnit {
  /** The unit as sums know it. */
  readonly unit: UnitId | 'permille' | 'unitless' | 'phi' | 'clock' | 'epoch-s' | 'epoch-ms' | 'kilo-rpm';
  readonly reference?: 'absolute' | 'gauge';
}

/** As units are written at the head of a column: small letters, no spaces, dots or underscores. */
const SPELLED: Readonly<Record<string, LogUnit>> = {
  ...spelled('kPa', 'kpa'),
  ...spelled('Pa', 'pa'),
  ...spelled('hPa', 'hpa'),
  ...spelled('MPa', 'mpa'),
  ...spelled('mbar', 'mbar mb'),
  ...spelled('bar', 'bar bars'),
  ...spelled('psi', 'psi lb/in2 lbs/in2 lbf/in2'),
  ...spelled('inHg', 'inhg "hg inh'),
  ...spelled('mmHg', 'mmhg'),
  ...spelled('at', 'kg/cm2 kg/cm² kgf/cm2 kgf/cm² at'),
  ...spelled('atm', 'atm'),
  ...referred('kPa', 'kpaa kpaabs', 'kpag kparel kpagauge'),
  ...referred('bar', 'bara barabs', 'barg barrel bargauge barrelativ'),
  ...referred('psi', 'psia psiabs', 'psig psigauge'),
  ...spelled('degC', '°c c degc deg°c celsius gradc ºc oc ℃'),
  ...spelled('degF', '°f f degf fahrenheit ºf ℉'),
  ...spelled('K', 'k kelvin'),
  ...spelled('s', 's sec secs second seconds sek sekunden seg segundos secondi secondes'),
  ...spelled('ms', 'ms msec msecs millis milliseconds millisekunden'),
  ...spelled('us', 'us µs μs usec microseconds'),
  ...spelled('min', 'min minutes'),
  ...spelled('h', 'h hours std'),
  ...spelled('clock', 'hh:mm:ss hh:mm:ssms hh:mm:sszzz hh:mm:ssmmm hms h:m:s'),
  ...spelled('epoch-s', 'unix epoch posix utcs'),
  ...spelled('epoch-ms', 'unixms epochms'),
  ...spelled('percent', '% percent prozent pct pc %tps % /100'),
  ...spelled('permille', '‰'),
  ...spelled(
    'rpm',
    'rpm rpm/min u/min umin rev/min revs/min r/min 1/min min-1 min^-1 tr/min trmin giri/min o/min obr/min v/min omw/min varv/min rot/min tpm',
  ),
  ...spelled('kilo-rpm', 'krpm x1000rpm rpmx1000 1000rpm'),
  ...spelled('lambda', 'lambda λ la'),
  ...spelled('AFR', 'afr a/f :1 x:1 af kg/kg g/g'),
  ...spelled('phi', 'phi φ ϕ eqr'),
  ...spelled('V', 'v volt volts'),
  ...spelled('mV', 'mv'),
  ...spelled('km/h', 'km/h kmh kph kmph'),
  ...spelled('mph', 'mph mi/h'),
  ...spelled('m/s', 'm/s'),
  ...spelled('deg', '° deg degrees degree grad'),
  ...spelled(
    'unitless',
    '- -- 1 none n/a bool boolean flag on/off 0/1 state status bit count counts cnt # raw enum text ratio factor x',
  ),
  ...spelled('g/s', 'g/s'),
  ...spelled('cc/min', 'cc/min'),
};

function spelled(unit: LogUnit['unit'], words: string): Record<string, LogUnit> {
  return Object.fromEntries(words.split(' ').map((word) => [word, { unit }]));
}

function referred(unit: UnitId, absolute: string, gauge: string): Record<string, LogUnit> {
  return Object.fromEntries<LogUnit>([
    ...absolute.split(' ').map((word): [string, LogUnit] => [word, { unit, reference: 'absolute' }]),
    ...gauge.split(' ').map((word): [string, LogUnit] => [word, { unit, reference: 'gauge' }]),
  ]);
}

/** The unit a text stands for; undefined when it is none. */
export function unitOf(text: string): LogUnit | undefined {
  const bare = text.trim().replace(/^[([{<]|[)\]}>]$/g, '');
  const key = bare.toLowerCase().replace(/[\s._]/g, '');
  if (key === '') return undefined;
  if (Object.hasOwn(SPELLED, key)) return SPELLED[key];
  // an AFR is often said to be counted in a fuel's scale
  if (/^(petrol|gasoline|benzin|essence|gasolina|benzina|bensin|benzine)$/.test(key)) return { unit: 'AFR' };
  const parts = /^(kpa|bar|psi|mbar|hpa)(abs|absolute|absolut|gauge|rel|relative|g|a)$/.exec(key);
  return parts === null ? undefined : SPELLED[parts[1] ?? ''];
}

/** Whether a cell of a row of units is one. */
export const isUnit = (text: string): boolean => unitOf(text) !== undefined;
