import cases from '../../data/reference/engine/readings-limits.json' with { type: 'json' };
import { judgeOilPressure } from '../../src/calc/fluids/oil-pressure.ts';
import { matchInjectors } from '../../src/calc/fuel/match.ts';
import { compressionAtBarometer, compressionSpread } from '../../src/calc/readings/compression.ts';
import { leakDown } from '../../src/calc/readings/leak-down.ts';
import { judgeReading, limitInBase } from '../../src/calc/readings/limit.ts';
import { pressureFall } from '../../src/calc/readings/pressure-fall.ts';
import { convert, fromBase, toBase } from '../../src/calc/units/convert.ts';
import type { UnitId } from '../../src/calc/units/table.ts';
import { readingLimit, readingLimits } from '../../src/tables/reading-limits.ts';
import { checkEngineCases } from '../support/engine-cases.ts';

/** The one row whose item is this, or those whose items begin so where the case counts two limits in one. */
function limitCalled(item: string) {
  const row = readingLimits.find((each) => each.item === item);
  if (row !== undefined) return row;
  throw new Error(`no limit is called ${item}`);
}

function limitOf(item: string) {
  if (item === 'gasoline oxygen and ethanol limits, EN 228 table 2 (E5)') {
    return { oxygenMax: readingLimit('petrol-oxygen').max, ethanolMax: readingLimit('petrol-ethanol').max };
  }
  const { min, max, at, unit } = limitCalled(item);
  return {
    min,
    max,
    value: at,
    // the trade says 0.7 bar
    ...(min !== undefined && unit === 'psi' ? { minBar: Number(convert(min, 'psi', 'bar').toFixed(1)) } : {}),
  };
}

const kPa = (figure: number | undefined, unit: UnitId): number => toBase(figure ?? Number.NaN, unit);

const hotOil = (unit: 'psi' | 'bar', speedRpm = 0, pressure = 0) => {
  const { wantedKpa, enough } = judgeOilPressure({
    readKpa: kPa(pressure, unit),
    speedRpm,
    temperatureC: 100,
    perThousandKpa: limitInBase(readingLimit('oil-pressure-speed')).min ?? Number.NaN,
  }).value;
  return { limit: fromBase(wantedKpa, unit), ok: enough };
};

checkEngineCases('readings and their limits', cases, 57, {
  limit: (_, { item = '' }) => limitOf(item),
  'rd.comp': ({ limit = 0 }, _, { readings = [] }) => {
    // spread and verdict are the same in every unit; the mean is handed back in the case's own
    const scale = Math.max(...readings) > 30 ? 'psi' : 'bar';
    const { spreadRatio, meanKpa, weakest, withinLimit } = compressionSpread({
      readingsKpa: readings.map((each) => kPa(each, scale)),
      limitRatio: limit / 100,
    }).value;
    return { spread: spreadRatio * 100, mean: fromBase(meanKpa, scale), weakest, withinLimit };
  },
  'rd.leak': ({ supply, cylinder }) => ({
    leak:
      leakDown({ supplyKpa: kPa(supply, 'psi'), cylinderKpa: kPa(cylinder, 'psi') }).value.leakRatio * 100,
  }),
  'rd.oil': ({ rpm, pressure }) => hotOil('psi', rpm, pressure),
  'rd.oilbar': ({ rpm, pressure }) => hotOil('bar', rpm, pressure),
  'rd.range': ({ reading = 0, low, high }) => ({
    status: judgeReading(reading, {
      ...(low === undefined ? {} : { min: low }),
      ...(high === undefined ? {} : { max: high }),
      unit: '1',
    }).value.standing,
  }),
  'rd.bal': (_, __, { flows = [] }) => {
    const { meanCcMin, spreadRatio } = matchInjectors(flows, { matchedRatio: 0.02, usableRatio: 0.05 }).value;
    return { mean: meanCcMin, spread: spreadRatio * 100 };
  },
  'rd.fall': ({ start, end, minutes = 0 }) => ({
    fall:
      pressureFall({
        startKpa: kPa(start, 'bar'),
        endKpa: kPa(end, 'bar'),
        minutes,
        overMinutes: minutes,
      }).value.fallRatio * 100,
  }),
  'rd.compAlt': ({ reading, patm = 0 }) => ({
    expected:
      compressionAtBarometer({ readingKpa: kPa(reading, 'bar'), fromKpa: 101.325, toKpa: patm }).value
        .expectedKpa / 100,
  }),
});
