import { z } from 'zod';
import { defineCommand } from '../src/bot/command.ts';
import { quantity } from '../src/bot/quantity-option.ts';
import { sumAnswer } from '../src/bot/sum-answer.ts';
import { dwellTime } from '../src/calc/electrics/coil.ts';
import { sayNumber } from '../src/calc/units/say.ts';

/** Battery voltages a dwell table of a controller asks for. */
const TABLE_V = [8, 9, 10, 11, 12, 13, 14, 15, 16] as const;

export default defineCommand({
  description: 'Dwell of an ignition coil for a current, over battery voltage, and its energy',
  example: '/coil inductance:4.2 resistance:"0.6 ohm" current:"7.5 A"',
  assumes: ['supply'],
  input: z.object({
    inductance: z.number().min(0.05).max(100).describe('Inductance of the primary, mH'),
    resistance: quantity('resistance', 'resistance', 'Primary winding with driver and wiring'),
    current: quantity('current', 'current', 'Current at the spark'),
    supply: quantity('supply', 'voltage', 'Voltage at the coil').prefault('14 V'),
  }),
  run({ inductance: inductanceMh, resistance: resistanceOhm, current: currentA, supply: supplyV }) {
    const coil = { inductanceMh, resistanceOhm, currentA };
    const sum = dwellTime({ ...coil, supplyV });
    const { dwellMs, energyMj } = sum.value;
    const table = TABLE_V.filter((volts) => volts > currentA * resistanceOhm * 1.01).map((volts) => ({
      supplyV: volts,
      dwellS: dwellTime({ ...coil, supplyV: volts }).value.dwellMs / 1000,
    }));
    const lines = table.map((row) => `${row.supplyV} V\t${(row.dwellS * 1000).toFixed(2)} ms`);
    return {
      ...sumAnswer({
        subject: 'Coil',
        result: `Dwell ${dwellMs.toFixed(2)} ms at ${sayNumber(supplyV, 3)} V, ${sayNumber(energyMj, 3)} mJ`,
        working: [`the winding settles at ${sayNumber(supplyV / resistanceOhm, 3)} A`],
        calculation: sum,
        data: { kind: 'coil', dwellS: dwellMs / 1000, energyKJ: energyMj / 1e6, supplyV, table },
      }),
      drafts: [{ label: 'Dwell table to type in', text: lines.join('\n') }],
    };
  },
});
