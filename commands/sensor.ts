import { z } from 'zod';
import { defineCommand, subcommand } from '../src/bot/command.ts';
import { quantity, turningSpeed } from '../src/bot/quantity-option.ts';
import { sumAnswer } from '../src/bot/sum-answer.ts';
import { dividerResistance, dividerVoltage } from '../src/calc/electrics/divider.ts';
import { linearReading, linearVoltage } from '../src/calc/electrics/linear-sensor.ts';
import { platinumResistance, platinumTemperature } from '../src/calc/electrics/platinum.ts';
import { thermistorOf } from '../src/calc/electrics/thermistor-sensor.ts';
import { thermocoupleTemperature, thermocoupleVoltage } from '../src/calc/electrics/thermocouple.ts';
import { triggerFrequency } from '../src/calc/electrics/trigger.ts';
import { together } from '../src/calc/together.ts';
import { fromBase } from '../src/calc/units/convert.ts';
import { sayNumber } from '../src/calc/units/say.ts';
import { units } from '../src/calc/units/table.ts';
import { UserError } from '../src/core/user-error.ts';
import { readScaleEnds } from '../src/phrases/scale-ends.ts';
import { readThermistorPoints } from '../src/phrases/thermistor-points.ts';

const LINEAR_ROWS = 9;
const MOST_ROWS = 60;

/** A number as a controller takes it: no grouping, and the minus of the keyboard. */
const plain = (value: number): string => String(Number(value.toFixed(3)));

/** The table as it is typed into a controller: tabs between columns, one row a line. */
const tableDraft = (head: readonly string[], rows: readonly (readonly string[])[]) => [
  { label: 'Table to type in', text: [head, ...rows].map((row) => row.join('\t')).join('\n') },
];

const linear = subcommand({
  description: 'Linear sensor, 0.5 to 4.5 V: reading for a voltage, voltage for a reading, table',
  example: '/sensor linear low:"0 bar" high:"10 bar" voltage:"1.5 V"',
  assumes: ['bottom', 'top', 'supply'],
  input: z.object({
    low: z.string().min(1).max(40).describe('Reading at the lower voltage, e.g. 0 bar, -40 °C'),
    high: z.string().min(1).max(40).describe('Reading at the upper voltage, e.g. 10 bar'),
    voltage: quantity('voltage', 'voltage', 'Voltage measured: gives the reading').optional(),
    reading: z.string().min(1).max(40).optional().describe('Or a reading: gives the voltage'),
    bottom: quantity('bottom', 'voltage', 'Lower voltage, at 5 V supply').prefault('0.5 V'),
    top: quantity('top', 'voltage', 'Upper voltage, at 5 V supply').prefault('4.5 V'),
    supply: quantity('supply', 'voltage', 'Supply there is now; the sensor follows it').prefault('5 V'),
  }),
  run(asked) {
    const { low, high, unit, reading } = readScaleEnds(asked);
    const sensor = {
      lowReading: low,
      highReading: high,
      lowV: asked.bottom,
      highV: asked.top,
      supplyV: asked.supply,
    };
    const rows = Array.from({ length: LINEAR_ROWS }, (_, row) => {
      const at = low + ((high - low) * row) / (LINEAR_ROWS - 1);
      return { voltageV: linearVoltage({ ...sensor, reading: at }).value.voltageV, reading: at };
    });
    const back = reading === undefined ? undefined : linearVoltage({ ...sensor, reading });
    const sum = back ?? linearReading({ ...sensor, voltageV: asked.voltage ?? asked.bottom });
    const voltageV = back?.value.voltageV ?? asked.voltage;
    const shown = 'reading' in sum.value ? sum.value.reading : reading;
    const perVolt = (high - low) / (asked.top - asked.bottom);
    const inUnit = (figure: number): string => `${sayNumber(figure)} ${unit}`.trim();
    const line = `${inUnit(perVolt)} per volt, ${inUnit(low - perVolt * asked.bottom)} at 0 V`;
    return {
      ...sumAnswer({
        subject: 'Sensor',
        result:
          voltageV === undefined
            ? line
            : `${sayNumber(voltageV)} V is ${sayNumber(shown ?? low)} ${unit}`.trimEnd(),
        working: voltageV === undefined ? [] : [line],
        calculation: sum,
        data: {
          kind: 'linear-sensor',
          ...(voltageV === undefined ? {} : { voltageV, reading: shown ?? low }),
          readingUnit: unit,
          perVolt,
          atZeroVolt: low - perVolt * asked.bottom,
          table: rows,
        },
      }),
      drafts: tableDraft(
        ['V', unit === '' ? 'reading' : unit],
        rows.map((row) => [row.voltageV.toFixed(3), plain(row.reading)]),
      ),
    };
  },
});

const thermistor = subcommand({
  description: 'Thermistor from one point and its B value, or two or three points, with the table',
  example: '/sensor thermistor points:"32128 ohm @ 0 C; 9814 ohm @ 25 C; 3542 ohm @ 50 C"',
  assumes: ['pullup', 'supply'],
  input: z.object({
    points: z
      .string()
      .min(3)
      .max(200)
      .describe('Measured points with semicolons: 2500 ohm @ 20 C; 320 ohm @ 80 C'),
    beta: z.number().min(500).max(8000).optional().describe('B value in K, with a single point'),
    voltage: quantity('voltage', 'voltage', 'Voltage at the input: gives the temperature').optional(),
    resistance: quantity('resistance', 'resistance', 'Or the resistance').optional(),
    temp: quantity('temp', 'temperature', 'Or a temperature: gives resistance and voltage').optional(),
    pullup: quantity('pullup', 'resistance', 'Pull-up in the controller').prefault('2490 ohm'),
    supply: quantity('supply', 'voltage', 'Supply of the pull-up').prefault('5 V'),
    from: quantity('from', 'temperature', 'Table from').prefault('-40 °C'),
    to: quantity('to', 'temperature', 'Table to').prefault('150 °C'),
    step: z.int().min(1).max(50).default(10).describe('Table step, K'),
  }),
  run(asked, { say }) {
    const sensor = thermistorOf(readThermistorPoints(asked.points), asked.beta);
    const pull = { supplyV: asked.supply, pullUpOhm: asked.pullup };
    const rowAt = (temperatureC: number) => {
      const { resistanceOhm } = sensor.resistanceAt(temperatureC);
      return {
        temperatureC,
        resistanceOhm,
        voltageV: dividerVoltage({ ...pull, resistanceOhm }).value.voltageV,
      };
    };
    // the table is typed into a controller that counts as the crew does
    const unit = say.unitOf('temperature', 0);
    const count = Math.floor((asked.to - asked.from) / asked.step) + 1;
    if (count < 2 || count > MOST_ROWS) {
      throw new UserError(
        'out-of-range',
        `The table has ${Math.max(count, 0)} rows; it takes 2 to ${MOST_ROWS}: change from, to or step.`,
      );
    }
    const table = Array.from({ length: count }, (_, row) => rowAt(asked.from + row * asked.step));
    const at = temperatureAsked(asked, pull, sensor);
    const point = at === undefined ? undefined : rowAt(at);
    return {
      ...sumAnswer({
        subject: 'Thermistor',
        result:
          point === undefined
            ? sensor.words
            : `${say.one('temperature', point.temperatureC, 3)}: ${sayNumber(point.resistanceOhm)} Ω, ${point.voltageV.toFixed(3)} V`,
        working: [
          ...(point === undefined ? [] : [sensor.words]),
          `best from ${say.range('temperature', sensor.coldestC, sensor.hottestC)}, ${asked.beta === undefined ? 'where it was measured' : 'where B values are usually given for'}`,
        ],
        calculation: together(sensor.notes, {
          assumptions: [
            `pull-up ${sayNumber(asked.pullup)} Ω to ${sayNumber(asked.supply)} V: take what the controller has`,
          ],
          sources: ['DEFINITION'],
        }),
        data: { kind: 'thermistor', ...sensor.data, ...(point ?? {}), table },
      }),
      drafts: tableDraft(
        [units[unit].sign, 'Ω', 'V'],
        table.map((row) => [
          plain(Number(fromBase(row.temperatureC, unit).toFixed(3))),
          row.resistanceOhm.toFixed(row.resistanceOhm < 100 ? 1 : 0),
          row.voltageV.toFixed(3),
        ]),
      ),
    };
  },
});

/** The temperature the person asked about, by whichever of the three was given. */
function temperatureAsked(
  asked: {
    readonly voltage?: number | undefined;
    readonly resistance?: number | undefined;
    readonly temp?: number | undefined;
  },
  pull: { readonly supplyV: number; readonly pullUpOhm: number },
  sensor: ReturnType<typeof thermistorOf>,
): number | undefined {
  const { voltage, resistance, temp } = asked;
  if ([voltage, resistance, temp].filter((given) => given !== undefined).length > 1) {
    throw new UserError('bad-input', 'Give one of voltage, resistance and temp, not several.');
  }
  if (voltage !== undefined) {
    const { resistanceOhm } = dividerResistance({ ...pull, voltageV: voltage }).value;
    return sensor.temperatureAt(resistanceOhm).temperatureC;
  }
  return resistance === undefined ? temp : sensor.temperatureAt(resistance).temperatureC;
}

const platinum = subcommand({
  description: 'Pt100 or Pt1000: resistance for a temperature, or temperature for a resistance',
  example: '/sensor platinum resistance:"1194 ohm"',
  assumes: ['type'],
  input: z.object({
    temp: quantity('temp', 'temperature', 'Temperature').optional(),
    resistance: quantity('resistance', 'resistance', 'Or resistance, less that of the wires').optional(),
    type: z.enum(['pt100', 'pt1000']).default('pt1000').describe('Which sensor'),
  }),
  run({ temp, resistance, type }, { say }) {
    const zeroOhm = type === 'pt100' ? 100 : 1000;
    if ((temp === undefined) === (resistance === undefined)) {
      throw new UserError(
        'bad-input',
        'Give either temp or resistance: temp:"90 °C", or resistance:"1347 ohm".',
      );
    }
    const sum =
      temp === undefined
        ? platinumTemperature({ resistanceOhm: resistance ?? 0, zeroOhm })
        : platinumResistance({ temperatureC: temp, zeroOhm });
    const temperatureC = 'temperatureC' in sum.value ? sum.value.temperatureC : (temp ?? 0);
    const resistanceOhm = 'resistanceOhm' in sum.value ? sum.value.resistanceOhm : (resistance ?? 0);
    return sumAnswer({
      subject: 'Sensor',
      result: `${say.both('temperature', temperatureC, 4)} is ${resistanceOhm.toFixed(zeroOhm === 100 ? 2 : 1)} Ω`,
      calculation: sum,
      data: { kind: 'platinum', temperatureC, resistanceOhm },
    });
  },
});

const thermocouple = subcommand({
  description: 'Type K thermocouple: millivolts for a temperature, or temperature for millivolts',
  example: '/sensor thermocouple temp:"850 °C"',
  assumes: ['cold'],
  input: z.object({
    temp: quantity('temp', 'temperature', 'Temperature of the tip').optional(),
    voltage: quantity('voltage', 'voltage', 'Or the voltage, e.g. 33.3 mV').optional(),
    cold: quantity('cold', 'temperature', 'Where it meets copper').prefault('25 °C'),
  }),
  run({ temp, voltage, cold }, { say }) {
    if ((temp === undefined) === (voltage === undefined)) {
      throw new UserError('bad-input', 'Give either temp or voltage: temp:"850 °C", or voltage:"33.3 mV".');
    }
    const sum =
      temp === undefined
        ? thermocoupleTemperature({ voltageMv: (voltage ?? 0) * 1000, coldJunctionC: cold })
        : thermocoupleVoltage({ temperatureC: temp, coldJunctionC: cold });
    const temperatureC = 'temperatureC' in sum.value ? sum.value.temperatureC : (temp ?? 0);
    const voltageMv = 'voltageMv' in sum.value ? sum.value.voltageMv : (voltage ?? 0) * 1000;
    return sumAnswer({
      subject: 'Sensor',
      result: `${say.both('temperature', temperatureC)} is ${voltageMv.toFixed(3)} mV`,
      calculation: sum,
      data: {
        kind: 'thermocouple',
        temperatureC,
        voltageV: voltageMv / 1000,
        coldJunctionC: cold,
      },
    });
  },
});

const trigger = subcommand({
  description: 'Frequency of a trigger wheel, missing teeth counted as if they were there',
  example: '/sensor trigger teeth:60 speed:7000rpm',
  input: z.object({
    teeth: z.int().min(1).max(720).describe('Tooth positions per turn: 60 for a 60-2 wheel'),
    speed: turningSpeed('speed', 'Speed of the wheel'),
  }),
  run({ teeth, speed }) {
    const sum = triggerFrequency({ positions: teeth, speedRpm: speed });
    const { frequencyHz, angleDeg } = sum.value;
    return sumAnswer({
      subject: 'Trigger',
      result: `${sayNumber(frequencyHz)} Hz at ${sayNumber(speed)} rpm`,
      working: [`${sayNumber(angleDeg)}° a tooth`],
      calculation: sum,
      data: { kind: 'trigger', frequencyHz, angleDeg, speedRpm: speed },
    });
  },
});

export default defineCommand({
  description: 'Scales sensors: linear, thermistor, platinum, thermocouple, trigger wheel',
  subcommands: { linear, thermistor, platinum, thermocouple, trigger },
});
