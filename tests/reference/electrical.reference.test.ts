import cases from '../../data/reference/engine/electrical.json' with { type: 'json' };
import { coilEnergy, dwellTime } from '../../src/calc/electrics/coil.ts';
import {
  classResistance,
  conductorTemperatureFactor,
  copperResistance,
} from '../../src/calc/electrics/copper.ts';
import { crankingVoltage } from '../../src/calc/electrics/cranking.ts';
import { dividerResistance, dividerVoltage } from '../../src/calc/electrics/divider.ts';
import { linearReading } from '../../src/calc/electrics/linear-sensor.ts';
import { loadCurrent, windingCurrent } from '../../src/calc/electrics/load.ts';
import { platinumResistance } from '../../src/calc/electrics/platinum.ts';
import {
  betaOfPoints,
  curveTemperature,
  fitThermistor,
  thermistorResistance,
  thermistorTemperature,
} from '../../src/calc/electrics/thermistor.ts';
import { thermocoupleVoltage } from '../../src/calc/electrics/thermocouple.ts';
import { triggerFrequency } from '../../src/calc/electrics/trigger.ts';
import { areaForDrop, cableDrop, dropOfResistance } from '../../src/calc/electrics/voltage-drop.ts';
import { gaugeOfArea, wireOfGauge } from '../../src/calc/electrics/wire-gauge.ts';
import { conductors } from '../../src/tables/conductors.ts';
import { checkEngineCases, type Given } from '../support/engine-cases.ts';

const milliohm = ({ area = 0, length = 0 }: Given, temperatureC: number) => ({
  resistance: copperResistance({ areaMm2: area, lengthM: length, temperatureC }).value.resistanceOhm * 1000,
});
const ohmPerKm = (areaMm2: number, tinned: boolean) =>
  classResistance({ areaMm2, lengthM: 1, tinned }, conductors).value.ohmPerKm;
const point = (resistanceOhm = 0, temperatureC = 0) => ({ resistanceOhm, temperatureC });

checkEngineCases('electrics', cases, 92, {
  'el.awg': ({ n = 0 }) => {
    const { diameterMm, areaMm2 } = wireOfGauge({ gaugeNumber: n }).value;
    return { diameter: diameterMm, area: areaMm2 };
  },
  'el.awgOf': ({ area = 0 }) => ({ n: gaugeOfArea({ areaMm2: area }).value.gaugeNumber }),
  'iec60228-class5': ({ area = 0 }) => ({ plain: ohmPerKm(area, false), tinned: ohmPerKm(area, true) }),
  'el.kt': ({ temperature = 0 }) => ({
    k: conductorTemperatureFactor({ temperatureC: temperature }).value.factorRatio,
  }),
  'el.R': (given) => milliohm(given, 20),
  'el.Rt': (given) => milliohm(given, given['temperature'] ?? 0),
  'el.dropTable': ({ resistance = 0, length = 0, current = 0, area = 0 }) => {
    if (ohmPerKm(area, false) !== resistance)
      throw new Error(`the table has another resistance for ${area} mm²`);
    return {
      drop: dropOfResistance({ ohmPerKm: resistance, lengthM: length, currentA: current }).value.dropV,
    };
  },
  'el.drop2': ({ area = 0, length = 0, current = 0 }) => {
    const { dropV } = cableDrop({ areaMm2: area, lengthM: length, currentA: current, ways: 2 }).value;
    return { drop: dropV, dropPercent12: (dropV / 12) * 100 };
  },
  'el.areaFor': ({ length = 0, current = 0, drop = 0 }) => ({
    area: areaForDrop({ lengthM: length, currentA: current, dropV: drop, ways: 1 }, conductors).value.areaMm2,
  }),
  'el.sag': ({ u0 = 0, ri = 0, current = 0 }) => ({
    u: crankingVoltage({ restV: u0, internalOhm: ri, cableOhm: 0, currentA: current }).value.starterV,
  }),
  'el.pu': ({ power = 0, voltage = 0 }) => {
    const { currentA, resistanceOhm } = loadCurrent({ powerW: power, supplyV: voltage }).value;
    return { current: currentA, resistance: resistanceOhm };
  },
  'el.ur': ({ voltage = 0, resistance = 0 }) => ({
    current: windingCurrent({ supplyV: voltage, resistanceOhm: resistance }).value.currentA,
  }),
  'el.coil': ({ inductance = 0, current = 0 }) => ({
    energy: coilEnergy({ inductanceMh: inductance, currentA: current }).value.energyMj,
  }),
  'el.dwell': ({ inductance = 0, resistance = 0, current = 0, voltage = 0 }) => ({
    dwell: dwellTime({
      inductanceMh: inductance,
      resistanceOhm: resistance,
      currentA: current,
      supplyV: voltage,
    }).value.dwellMs,
  }),
  'el.ntcR': ({ r25 = 0, beta = 0, temperature = 0 }) => ({
    resistance: thermistorResistance({ at: point(r25, 25), betaK: beta, temperatureC: temperature }).value
      .resistanceOhm,
  }),
  'el.ntcT': ({ r25 = 0, beta = 0, resistance = 0 }) => ({
    temperature: thermistorTemperature({ at: point(r25, 25), betaK: beta, resistanceOhm: resistance }).value
      .temperatureC,
  }),
  'el.beta': ({ r1 = 0, t1 = 0, r2 = 0, t2 = 0 }) => ({
    beta: betaOfPoints(point(r1, t1), point(r2, t2)).value.betaK,
  }),
  'el.shFit': ({ r1 = 0, t1 = 0, r2 = 0, t2 = 0, r3 = 0, t3 = 0 }) => {
    const { a, b, c } = fitThermistor([point(r1, t1), point(r2, t2), point(r3, t3)]).value;
    return { A: a, B: b, C: c };
  },
  'el.sh': ({ A: a = 0, B: b = 0, C: c = 0, resistance = 0 }) => ({
    temperature: curveTemperature({ a, b, c }, { resistanceOhm: resistance }).value.temperatureC,
  }),
  'el.div': ({ vref = 0, pullup = 0, resistance = 0 }) => ({
    voltage: dividerVoltage({ supplyV: vref, pullUpOhm: pullup, resistanceOhm: resistance }).value.voltageV,
  }),
  'el.divR': ({ vref = 0, pullup = 0, voltage = 0 }) => ({
    resistance: dividerResistance({ supplyV: vref, pullUpOhm: pullup, voltageV: voltage }).value
      .resistanceOhm,
  }),
  'el.lin': ({ voltage = 0, fullScale = 0 }) => ({
    value: linearReading({ lowReading: 0, highReading: fullScale, voltageV: voltage }).value.reading,
  }),
  'el.linOff': ({ voltage = 0, low = 0, high = 0 }) => ({
    value: linearReading({ lowReading: low, highReading: high, voltageV: voltage }).value.reading,
  }),
  'el.ratio': ({ voltage = 0, supply = 0, fullScale = 0 }) => ({
    value: linearReading({ lowReading: 0, highReading: fullScale, voltageV: voltage, supplyV: supply }).value
      .reading,
  }),
  'el.pt': ({ temperature = 0 }) => ({
    resistance: platinumResistance({ temperatureC: temperature, zeroOhm: 1000 }).value.resistanceOhm,
  }),
  'type-k': ({ temperature = 0 }) => ({
    emf: thermocoupleVoltage({ temperatureC: temperature, coldJunctionC: 0 }).value.voltageMv,
  }),
  'el.trig': ({ teeth = 0, rpm = 0 }) => {
    const { frequencyHz, angleDeg } = triggerFrequency({ positions: teeth, speedRpm: rpm }).value;
    return { frequency: frequencyHz, degPerTooth: angleDeg };
  },
});
