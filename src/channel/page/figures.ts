/** Finds the units in a result, so that the figure can stand large and its unit smaller beside it. */

/** Units the trade writes after a figure, longest first where one begins another. */
const UNITS = [
  ['cc/min', 'kg/h', 'lb/h', 'l/h', 'L/h', 'g/s', 'kg/min', 'lb/min', 'km/h', 'mph'],
  [
    'N·m',
    'Nm',
    'lb·ft',
    'lb-ft',
    'ft·lb',
    'kPa',
    'MPa',
    'hPa',
    'mbar',
    'bar',
    'psi',
    'mm²',
    'mm',
    'cm',
    'µm',
  ],
  ['kWh', 'kW', 'hp', 'kΩ', 'mΩ', 'Ω', 'mV', 'V', 'mA', 'Ah', 'A', '°C', '°F', '°', 'K', 'rpm', 'TPI', 'tpi'],
  [
    'litres',
    'litre',
    'ml',
    'cc',
    'kg',
    'km',
    'miles',
    'in',
    'ms',
    'min',
    'AFR',
    'days',
    'day',
    'hours',
    'hour',
  ],
  ['l', 'L', 'g', 'm', 's', 'h', '%', '″', 'λ'],
].flat();

const FIGURE = new RegExp(
  `(?<=\\d)([\\u00A0\\u202F ]?(?:${UNITS.map((unit) => unit.replaceAll(/[.*+?^${}()|[\]\\]/gu, '\\$&')).join('|')}))(?![\\p{L}\\p{N}])`,
  'gu',
);

export interface Run {
  readonly text: string;
  readonly unit: boolean;
}

/** `Torque 22 N·m, dry` → `Torque 22`, unit ` N·m`, `, dry`. The runs joined give the text back. */
export function runsOf(text: string): readonly Run[] {
  const runs: Run[] = [];
  let from = 0;
  for (const match of text.matchAll(FIGURE)) {
    if (match.index > from) runs.push({ text: text.slice(from, match.index), unit: false });
    runs.push({ text: match[0], unit: true });
    from = match.index + match[0].length;
  }
  if (from < text.length) runs.push({ text: text.slice(from), unit: false });
  return runs;
}
