import { z } from 'zod';
import { defineCommand, subcommand } from '../src/bot/command.ts';
import { cableDropTyped, quantity, runLength } from '../src/bot/quantity-option.ts';
import { sumAnswer } from '../src/bot/sum-answer.ts';
import { classResistance } from '../src/calc/electrics/copper.ts';
import { batteryResistance, crankingCurrent, crankingVoltage } from '../src/calc/electrics/cranking.ts';
import { loadCurrent, windingCurrent } from '../src/calc/electrics/load.ts';
import { areaForDrop, cableDrop } from '../src/calc/electrics/voltage-drop.ts';
import { gaugeName, gaugeOfArea } from '../src/calc/electrics/wire-gauge.ts';
import { together } from '../src/calc/together.ts';
import { sayIn, sayNumber } from '../src/calc/units/say.ts';
import { UserError } from '../src/core/user-error.ts';
import { conductors } from '../src/tables/conductors.ts';

/** What a starter's positive cable may lose while cranking. Common practice, no source. */
const STARTER_DROP_V = 0.5;
/** Largest cross-section with a gauge number: 4/0. */
const THICKEST_GAUGE_MM2 = 107.3;

const length = runLength('length', 'Length of the cable one way, e.g. 4.5 m');
const current = quantity('current', 'current', 'Current, e.g. 300 A');
const back = z.enum(['body', 'cable']).default('body').describe('Returns through the body, or a cable alike');
const temp = quantity('temp', 'temperature', 'Copper of the cable').prefault('20 °C');
const supply = quantity('supply', 'voltage', 'Voltage of the supply').prefault('12 V');

/** A cross-section with the gauge next to it: "25 mm² (between 4 and 3 AWG)". */
function areaWords(areaMm2: number): string {
  if (areaMm2 > THICKEST_GAUGE_MM2) return `${sayNumber(areaMm2, 3)} mm² (thicker than 4/0 AWG)`;
  const { gaugeNumber } = gaugeOfArea({ areaMm2 }).value;
  const near = Math.round(gaugeNumber);
  if (Math.abs(gaugeNumber - near) < 0.05) return `${sayNumber(areaMm2, 3)} mm² (${gaugeName(near)} AWG)`;
  const thick = Math.floor(gaugeNumber);
  return `${sayNumber(areaMm2, 3)} mm² (between ${gaugeName(thick + 1)} and ${gaugeName(thick)} AWG)`;
}

const size = subcommand({
  description: 'Cable size that keeps the voltage drop, next standard size up',
  example: '/cable size length:"4.5 m" current:"300 A"',
  assumes: ['drop', 'back', 'temp', 'supply'],
  input: z.object({
    length,
    current,
    drop: cableDropTyped('drop', 'What it may lose, e.g. 3 %; 0.5 V is usual for a starter').prefault(
      `${STARTER_DROP_V} V`,
    ),
    back,
    temp,
    supply,
  }),
  run(
    { length: mm, current: currentA, drop: said, back: returns, temp: temperatureC, supply: supplyV },
    { say },
  ) {
    const ways = returns === 'cable' ? 2 : 1;
    const drop = 'dropV' in said ? said.dropV : said.dropRatio * supplyV;
    const run = { lengthM: mm / 1000, currentA, ways, temperatureC } as const;
    const sum = areaForDrop({ ...run, dropV: drop }, conductors);
    const { areaMm2, sizeMm2 } = sum.value;
    const dropV = cableDrop({ ...run, areaMm2: sizeMm2 }).value.dropV;
    return sumAnswer({
      subject: 'Cable',
      result: `${areaWords(sizeMm2)}: loses ${dropV.toFixed(2)} V at ${sayNumber(currentA, 3)} A over ${say.one('length', mm)}`,
      working: [
        `${sayNumber(areaMm2, 3)} mm² would lose ${sayNumber(drop, 3)} V; ${sayNumber(sizeMm2, 3)} mm² is the next standard size`,
        `${sayIn(dropV / supplyV, 'percent', 3)} of ${sayNumber(supplyV, 3)} V`,
      ],
      calculation: together(
        {
          assumptions: [`may lose ${sayNumber(drop, 3)} V (common practice unless said)`],
          sources: ['COMMON'],
        },
        sum,
      ),
      data: {
        kind: 'cable-size',
        areaMm2,
        sizeMm2,
        dropV,
        currentA,
        lengthMm: mm,
      },
    });
  },
});

const drop = subcommand({
  description: 'Voltage a cable loses, out and back or with the body as return',
  example: '/cable drop length:"5 m" current:"15 A" area:"2.5 mm2" back:cable',
  assumes: ['back', 'temp', 'supply'],
  input: z.object({
    length,
    current,
    area: quantity('area', 'area', 'Cross-section: 25 mm², 4 AWG, 2/0 AWG'),
    back,
    temp,
    supply,
  }),
  run({ length: mm, current: currentA, area, back: returns, temp: temperatureC, supply: supplyV }) {
    const ways = returns === 'cable' ? 2 : 1;
    const sum = cableDrop({ areaMm2: area, lengthM: mm / 1000, currentA, ways, temperatureC });
    const { dropV, resistanceOhm, heatW } = sum.value;
    if (dropV >= supplyV) {
      throw new UserError(
        'out-of-range',
        `${sayNumber(currentA, 3)} A would lose ${sayNumber(dropV, 3)} V, and there are only ${sayNumber(supplyV, 3)} V: through this cable at most ${sayNumber(supplyV / resistanceOhm, 3)} A can flow. Take a thicker or shorter cable.`,
      );
    }
    return sumAnswer({
      subject: 'Cable',
      result: `Loses ${dropV.toFixed(2)} V, ${sayIn(dropV / supplyV, 'percent', 3)} of ${sayNumber(supplyV, 3)} V`,
      working: [
        areaWords(area),
        `${sayNumber(resistanceOhm * 1000, 3)} mΩ, ${sayNumber(heatW, 3)} W of heat in the cable`,
        ...mostByStandard(area, mm / 1000, { currentA, ways, temperatureC }),
      ],
      calculation: sum,
      data: {
        kind: 'cable-drop',
        dropV,
        dropRatio: dropV / supplyV,
        resistanceOhm,
        areaMm2: area,
        lengthMm: mm,
        currentA,
      },
    });
  },
});

/** A bought cable of a standard size may have more resistance than its copper alone. */
function mostByStandard(
  areaMm2: number,
  lengthM: number,
  run: { readonly currentA: number; readonly ways: 1 | 2; readonly temperatureC: number },
): readonly string[] {
  const { temperatureC, currentA, ways } = run;
  const standard = conductors.some((row) => Math.abs(row.areaMm2 - areaMm2) < 1e-9);
  if (!standard || temperatureC < 0 || temperatureC > 120) return [];
  const { resistanceOhm } = classResistance({ areaMm2, lengthM, temperatureC }, conductors).value;
  return [
    `up to ${(resistanceOhm * currentA * ways).toFixed(2)} V for the worst flexible cable IEC 60228 allows`,
  ];
}

const crank = subcommand({
  description: 'Cranking current and what the starter then sees, with the battery far from it',
  example: '/cable crank length:"4.5 m" area:"50 mm2" starter:"1.4 kW"',
  assumes: ['cca', 'rest', 'efficiency', 'return', 'joints'],
  input: z.object({
    length,
    area: quantity('area', 'area', 'Cross-section: 50 mm², 1/0 AWG'),
    current: quantity('current', 'current', 'Cranking current, if measured').optional(),
    starter: quantity('starter', 'power', 'Or the power of the starter, e.g. 1.4 kW').optional(),
    cca: quantity('cca', 'current', 'Cold-cranking current on the battery').prefault('600 A'),
    rest: quantity('rest', 'voltage', 'Battery at rest').prefault('12.6 V'),
    efficiency: quantity('efficiency', 'percent', 'Of the starter').prefault('55 %'),
    return: quantity('return', 'resistance', 'Way back: body and earth straps').prefault('0.5 mohm'),
    joints: quantity('joints', 'resistance', 'Lugs, isolator, relay together').prefault('0.5 mohm'),
  }),
  run(asked) {
    const { area, length: mm, current: measured, starter, rest, efficiency, joints } = asked;
    if ((measured === undefined) === (starter === undefined)) {
      throw new UserError(
        'bad-input',
        'Give either current or starter: current:"250 A", or starter:"1.4 kW".',
      );
    }
    const inner = batteryResistance({ coldCrankingA: asked.cca });
    const cable = cableDrop({ areaMm2: area, lengthM: mm / 1000, currentA: 1, ways: 1 });
    const source = {
      restV: rest,
      ...inner.value,
      cableOhm: cable.value.resistanceOhm + asked.return + joints,
    };
    const sum =
      starter === undefined
        ? crankingVoltage({ ...source, currentA: measured ?? 0 })
        : crankingCurrent({ ...source, powerKw: starter, efficiencyRatio: efficiency });
    const { currentA, starterV, batteryV, cableDropV } = sum.value;
    const positiveV = currentA * cable.value.resistanceOhm;
    return sumAnswer({
      subject: 'Cranking',
      result: `Starter sees ${starterV.toFixed(1)} V at ${Math.round(currentA)} A`,
      working: [
        `battery falls to ${batteryV.toFixed(1)} V, cable, joints and return lose ${cableDropV.toFixed(2)} V`,
        `the positive cable alone ${positiveV.toFixed(2)} V${positiveV > STARTER_DROP_V ? ': more than the usual 0.5 V, take it thicker' : ''}`,
        areaWords(area),
      ],
      calculation: together(
        {
          assumptions: [
            `battery ${sayNumber(rest, 3)} V at rest and ${Math.round(asked.cca)} A cold-cranking`,
            `${sayNumber(asked.return * 1000, 3)} mΩ for the way back and ${sayNumber(joints * 1000, 3)} mΩ for joints (common practice unless measured)`,
          ],
          sources: ['COMMON'],
        },
        sum,
        inner,
        { sources: cable.sources, caveats: cable.caveats, assumptions: ['copper at 20 °C'] },
      ),
      data: {
        kind: 'cranking',
        currentA,
        starterV,
        batteryV,
        cableDropV,
        positiveCableDropV: positiveV,
        areaMm2: area,
        lengthMm: mm,
      },
    });
  },
});

const gauge = subcommand({
  description: 'American wire gauge and square millimetres, either way',
  example: '/cable gauge size:"4 AWG"',
  input: z.object({ size: quantity('size', 'area', '4 AWG, 2/0 AWG, 25 mm²') }),
  run({ size: areaMm2 }, { say }) {
    const sum = gaugeOfArea({ areaMm2 });
    const next = conductors.find((row) => row.areaMm2 >= areaMm2 - 1e-9);
    return sumAnswer({
      subject: 'Cable',
      result: areaWords(areaMm2),
      working: [
        `${say.both('length', sum.value.diameterMm)} as one solid wire`,
        ...(next === undefined ? [] : [sizeWords(areaMm2, next.areaMm2)]),
      ],
      calculation: sum,
      data: {
        kind: 'wire-gauge',
        areaMm2,
        gaugeNumber: sum.value.gaugeNumber,
        diameterMm: sum.value.diameterMm,
      },
    });
  },
});

const sizeWords = (areaMm2: number, nextMm2: number): string =>
  Math.abs(areaMm2 - nextMm2) < 1e-6
    ? 'a standard metric size'
    : `next standard metric size up: ${sayNumber(nextMm2, 3)} mm²`;

const load = subcommand({
  description: 'Current a load draws, from its power or its resistance',
  example: '/cable load power:"60 W"',
  assumes: ['supply'],
  input: z.object({
    power: quantity('power', 'power', 'Power of the load, e.g. 60 W').optional(),
    resistance: quantity(
      'resistance',
      'resistance',
      'Or its resistance, e.g. an injector of 12 Ω',
    ).optional(),
    supply: quantity('supply', 'voltage', 'Voltage at the load, engine running').prefault('13.8 V'),
  }),
  run({ power, resistance, supply: supplyV }) {
    if ((power === undefined) === (resistance === undefined)) {
      throw new UserError(
        'bad-input',
        'Give either power or resistance: power:"60 W", or resistance:"12 ohm".',
      );
    }
    const sum =
      power === undefined
        ? windingCurrent({ supplyV, resistanceOhm: resistance ?? 0 })
        : loadCurrent({ powerW: power * 1000, supplyV });
    const { currentA } = sum.value;
    const resistanceOhm = 'resistanceOhm' in sum.value ? sum.value.resistanceOhm : (resistance ?? 0);
    const powerW = 'powerW' in sum.value ? sum.value.powerW : (power ?? 0) * 1000;
    return sumAnswer({
      subject: 'Load',
      result: `${sayNumber(currentA, 3)} A at ${sayNumber(supplyV, 3)} V`,
      working: [`${sayNumber(powerW, 3)} W, ${sayNumber(resistanceOhm, 3)} Ω`],
      calculation: sum,
      data: {
        kind: 'load',
        currentA,
        powerKW: powerW / 1000,
        resistanceOhm,
        supplyV,
      },
    });
  },
});

export default defineCommand({
  description: 'Cable size and drop, cranking current and what the starter sees, wire gauge',
  subcommands: { size, drop, crank, gauge, load },
});
