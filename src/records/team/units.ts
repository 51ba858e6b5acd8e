import { BUILT_IN, CHOICES, type OwnUnits } from '../../calc/units/own-units.ts';
import { units } from '../../calc/units/table.ts';

/** The usual mixtures by name; a crew can change each choice afterwards. */
export const MIXTURES = {
  metric: { ...BUILT_IN, power: 'kW' },
  British: { ...BUILT_IN, pressure: 'psi', torque: 'lbf.ft', distance: 'mi' },
  US: {
    pressure: 'psi',
    torque: 'lbf.ft',
    temperature: 'degF',
    length: 'in',
    volume: 'usQt',
    flow: 'lb/h',
    power: 'hp',
    distance: 'mi',
  },
} as const satisfies Readonly<Record<string, OwnUnits>>;

/** What is chosen for itself, in the order it is asked. */
export const CHOSEN = [
  ...(['pressure', 'torque', 'temperature', 'length'] as const),
  ...(['volume', 'flow', 'power', 'distance'] as const),
] as const satisfies readonly (keyof OwnUnits)[];

/** The choices for one, as they are printed: `psi`, `N·m`, `°C`. */
export const signsFor = (what: keyof OwnUnits): readonly string[] =>
  CHOICES[what].map((unit) => units[unit].sign);

/** "psi, lbf·ft, °C, mm, L, cc/min, hp, mi" */
export const sayUnits = (own: OwnUnits): string => CHOSEN.map((what) => units[own[what]].sign).join(', ');

/** The choices by the signs given, the others as they were. */
export function withSigns(
  own: OwnUnits,
  signs: { readonly [What in keyof OwnUnits]?: string | undefined },
): OwnUnits {
  const pick = <What extends keyof OwnUnits>(what: What): OwnUnits[What] => {
    const choices: readonly OwnUnits[What][] = CHOICES[what];
    return choices.find((unit) => units[unit].sign === signs[what]) ?? own[what];
  };
  return {
    pressure: pick('pressure'),
    torque: pick('torque'),
    temperature: pick('temperature'),
    length: pick('length'),
    volume: pick('volume'),
    flow: pick('flow'),
    power: pick('power'),
    distance: pick('distance'),
  };
}
