import cases from '../../data/reference/engine/airflow.json' with { type: 'json' };
import { powerFromAir, thermalEfficiency } from '../../src/calc/air/air-power.ts';
import { compressorEfficiency, compressorOutlet, pressureRatio } from '../../src/calc/air/boost.ts';
import { airDensity, compressedDensity } from '../../src/calc/air/density.ts';
import { engineAirFlow, volumetricEfficiency } from '../../src/calc/air/engine-air.ts';
import {
  boostedCharge,
  intercoolerEffectiveness,
  intercoolerOutlet,
} from '../../src/calc/air/intercooler.ts';
import { orificeAirFlow } from '../../src/calc/air/orifice-flow.ts';
import { type CorrectionRule, powerCorrection } from '../../src/calc/air/power-correction.ts';
import { standardAtmosphere } from '../../src/calc/air/standard-atmosphere.ts';
import { displacement } from '../../src/calc/geometry/displacement.ts';
import { meanEffectivePressure, torqueOfPower } from '../../src/calc/geometry/torque.ts';
import { checkEngineCases, type Given, type Runner } from '../support/engine-cases.ts';

const KPA_PER_PSI = 6.894757293168;
const LITRES_PER_IN3 = 0.016387064;
const M3H_PER_CFM = 1.69901082;
const fahrenheit = (celsius: number) => celsius * 1.8 + 32;

const isa = (altitudeM: number, measured: 'geometric' | 'geopotential') => {
  const { pressureKpa, temperatureC, densityKgM3, ...rest } = standardAtmosphere({
    altitudeM,
    measured,
  }).value;
  return { pressure: pressureKpa * 1000, temperature: temperatureC + 273.15, density: densityKgM3, ...rest };
};
const flowOf = (given: Given) =>
  engineAirFlow({
    displacementL: given['displacement'] ?? 0,
    speedRpm: given['rpm'] ?? 0,
    veRatio: given['ve'] ?? 0,
    pressureKpa: given['map'] ?? 0,
    temperatureC: given['temperature'] ?? 0,
  }).value;
const corrected =
  (rule: CorrectionRule, pressure: string, output: string): Runner =>
  (given) => ({
    [output]: powerCorrection({
      rule,
      pressureKpa: given[pressure] ?? 0,
      temperatureC: given['temperature'] ?? 0,
    }).value.factorRatio,
  });
const squeezed =
  (process: 'isothermal' | 'isentropic'): Runner =>
  ({ p1 = 0, p2 = 0, rho1 = 0, V: volumeCm3 = 0 }) => {
    const { densityKgM3, gainRatio } = compressedDensity({
      densityKgM3: rho1,
      fromKpa: p1 / 1000,
      toKpa: p2 / 1000,
      process,
    }).value;
    return { mass: (densityKgM3 * volumeCm3) / 1000, gain: gainRatio * 100 };
  };

checkEngineCases('air and boost', cases, 77, {
  'air.isa': ({ altitude = 0 }) => isa(altitude, 'geopotential'),
  'air.isaGeom': ({ altitude = 0 }) => {
    const { geopotentialM, ...rest } = isa(altitude, 'geometric');
    return { ...rest, geopotential: geopotentialM };
  },
  'air.usft': ({ altitude = 0 }) => {
    const { pressure, temperature } = isa(altitude * 0.3048, 'geopotential');
    return { pressure: pressure / 1000 / KPA_PER_PSI, temperature: fahrenheit(temperature - 273.15) };
  },
  'air.rho': ({ pressure = 0, temperature = 0 }) => ({
    density: airDensity({ pressureKpa: pressure, temperatureC: temperature }).value.densityKgM3,
  }),
  'air.moist': ({ pressure = 0, temperature = 0, rh = 0 }) => {
    const { vapourKpa, dryKpa, densityKgM3 } = airDensity({
      pressureKpa: pressure,
      temperatureC: temperature,
      humidityRatio: rh / 100,
    }).value;
    return { vapour: vapourKpa * 1000, dry: dryKpa * 1000, density: densityKgM3 };
  },
  'air.massflow': (given) => {
    const { massFlowGs } = flowOf(given);
    return {
      massFlow: massFlowGs / 1000,
      massFlowLb: (massFlowGs * 60) / 453.59237,
      massFlowH: massFlowGs * 3.6,
    };
  },
  'air.ve': ({ massFlow = 0, displacement: litres = 0, rpm = 0, pressure = 0, temperature = 0 }) => ({
    ve: volumetricEfficiency({
      massFlowGs: massFlow * 1000,
      displacementL: litres,
      speedRpm: rpm,
      pressureKpa: pressure,
      temperatureC: temperature,
    }).value.veRatio,
  }),
  'air.cfm': ({ displacement: cubicInches = 0, rpm = 0, ve = 0 }) => {
    const { volumeFlowM3h } = engineAirFlow({
      displacementL: cubicInches * LITRES_PER_IN3,
      speedRpm: rpm,
      veRatio: ve,
      pressureKpa: 101.325,
      temperatureC: 15,
    }).value;
    return { flow: volumeFlowM3h / M3H_PER_CFM, flowM3h: volumeFlowM3h };
  },
  'air.power': ({ massFlow = 0, lambda = 0, afrStoich = 0, bsfc = 0 }) => ({
    power: powerFromAir({
      massFlowGs: massFlow * 1000,
      lambdaRatio: lambda,
      stoichiometricAfr: afrStoich,
      bsfcGPerKwh: bsfc,
    }).value.powerKw,
  }),
  'air.pr': ({ patm = 0, boost = 0, inletLoss = 0 }) => ({
    pr: pressureRatio({ atmosphereKpa: patm, boostKpa: boost, inletLossKpa: inletLoss }).value.pressureRatio,
  }),
  'air.prpsi': ({ patm = 0, boost = 0 }) => ({
    pr: pressureRatio({ atmosphereKpa: patm * KPA_PER_PSI, boostKpa: boost * KPA_PER_PSI }).value
      .pressureRatio,
  }),
  'air.t2': ({ t1 = 0, pr = 0, eta = 0, k = 0 }) => {
    const { outletC, isentropicC } = compressorOutlet({
      inletC: t1,
      pressureRatio: pr,
      efficiencyRatio: eta,
      gammaRatio: k,
    }).value;
    return { t2: outletC, t2s: isentropicC };
  },
  'air.eta': ({ t1 = 0, t2 = 0, pr = 0, k = 0 }) => ({
    eta:
      100 *
      compressorEfficiency({ inletC: t1, outletC: t2, pressureRatio: pr, gammaRatio: k }).value
        .efficiencyRatio,
  }),
  'air.ic': ({ tIn = 0, tCool = 0, eps = 0 }) => ({
    tOut: intercoolerOutlet({ inletC: tIn, coolantC: tCool, effectivenessRatio: eps }).value.outletC,
  }),
  'air.eps': ({ tIn = 0, tOut = 0, tCool = 0 }) => ({
    eps:
      100 *
      intercoolerEffectiveness({ inletC: tIn, outletC: tOut, coolantC: tCool }).value.effectivenessRatio,
  }),
  'air.chain': ({ p1 = 0, t1 = 0, pr = 0, eta = 0, eps = 0, dpIc = 0 }) => {
    const { compressorOutC, chargeC, densityRatio } = boostedCharge({
      inletKpa: p1,
      inletC: t1,
      pressureRatio: pr,
      efficiencyRatio: eta,
      effectivenessRatio: eps,
      chargeLossKpa: dpIc,
    }).value;
    return { t2: compressorOutC, t3: chargeC, densityRatio };
  },
  'air.sigma': ({ altitude = 0 }) => {
    const { densityRatio } = isa(altitude, 'geopotential');
    return { sigma: densityRatio, loss: 100 * (1 - densityRatio) };
  },
  'air.iso1585': corrected('iso1585', 'dryPressure', 'alpha'),
  'air.j1349': corrected('j1349', 'dryPressure', 'cf'),
  'air.din': corrected('din70020', 'pressure', 'k'),
  'air.yf_b': squeezed('isothermal'),
  'air.yf_c': squeezed('isentropic'),
  'air.orifice': (given) => {
    const { bore = 0, stroke = 0, cyl = 0, rpm = 0, power = 0, fuel = 0, cv = 0 } = given;
    const { displacementL } = displacement({ boreMm: bore, strokeMm: stroke, cylinders: cyl }).value;
    const { torqueNm } = torqueOfPower({ powerKw: power, speedRpm: rpm }).value;
    const [pressureKpa, temperatureC] = [(given['p'] ?? 0) * 100, (given['T'] ?? 0) - 273.15];
    const { massFlowGs } = orificeAirFlow({
      diameterMm: given['d'] ?? 0,
      dischargeRatio: given['cd'] ?? 0,
      // mm of water as the book takes it: 1000 kg/m³ and 9.81 m/s².
      dropKpa: ((given['head'] ?? 0) * 9.81) / 1000,
      densityKgM3: airDensity({ pressureKpa, temperatureC }).value.densityKgM3,
    }).value;
    return {
      eta: thermalEfficiency({ powerKw: power, fuelFlowGs: fuel / 3.6, calorificKjPerKg: cv }).value
        .efficiencyRatio,
      bmep: meanEffectivePressure({ torqueNm, displacementL }).value.bmepKpa / 100,
      massFlow: massFlowGs / 1000,
      ve: volumetricEfficiency({ massFlowGs, displacementL, speedRpm: rpm, pressureKpa, temperatureC }).value
        .veRatio,
    };
  },
  'air.truck': ({ displacement: litres = 0, rpm = 0, ve = 0, p = 0, tF = 0, factor = 0 }) => {
    const flow = (pressureKpa: number) =>
      engineAirFlow({
        displacementL: litres,
        speedRpm: rpm,
        veRatio: ve,
        pressureKpa,
        temperatureC: (tF - 32) / 1.8,
      }).value.massFlowGs / 1000;
    return { massFlow: flow(p), boosted: flow(p * factor) };
  },
});
