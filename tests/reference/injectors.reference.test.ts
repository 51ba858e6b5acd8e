import cases from '../../data/reference/engine/injectors.json' with { type: 'json' };
import { thermalEfficiency } from '../../src/calc/air/air-power.ts';
import { blendByVolume } from '../../src/calc/fuel/blend.ts';
import { deadTimeError, deliveredFlow } from '../../src/calc/fuel/dead-time.ts';
import { fuelChange, lambdaIfUnchanged } from '../../src/calc/fuel/fuel-change.ts';
import {
  ccMinFromGs,
  densityOfShortcut,
  gPerKwhFromLbPerHpH,
  gsFromCcMin,
  lbPerHpHFromGPerKwh,
} from '../../src/calc/fuel/fuel-units.ts';
import { injectorDuty, longestPulse } from '../../src/calc/fuel/injector-duty.ts';
import {
  flowAtPressure,
  flowOfFluid,
  pressureAcrossInjector,
  pressureForFlow,
} from '../../src/calc/fuel/injector-pressure.ts';
import { fuelForCharge, pulseForFuel } from '../../src/calc/fuel/injector-pulse.ts';
import { injectorForPower, powerFromInjectors } from '../../src/calc/fuel/injector-size.ts';
import { pumpNeed } from '../../src/calc/fuel/pump.ts';
import { fromBase, toBase } from '../../src/calc/units/convert.ts';
import { checkEngineCases, type Given } from '../support/engine-cases.ts';

const KPA_PER_BAR = 100;
const lbHFromGs = (flowGs: number): number => fromBase(flowGs, 'lb/h');

/** The change from petrol to its blend with so much alcohol, same injectors. */
function changeOver(given: Given) {
  const { rhoGasoline = 0, rhoAlcohol = 0, afrGasoline = 0, afrAlcohol = 0, volFractionAlcohol = 0 } = given;
  const fuel = (densityKgM3: number, stoichiometricAfr: number) => ({
    densityKgM3,
    stoichiometricAfr,
    oxygenRatio: 0,
    calorificKjPerKg: 40_000,
    alcoholRatio: 0,
  });
  const after = blendByVolume([
    { volumeRatio: volFractionAlcohol, fuel: fuel(rhoAlcohol, afrAlcohol) },
    { volumeRatio: 1 - volFractionAlcohol, fuel: fuel(rhoGasoline, afrGasoline) },
  ]).value;
  return fuelChange(
    { flowCcMin: 440, densityKgM3: rhoGasoline, stoichiometricAfr: afrGasoline },
    { flowCcMin: 440, ...after },
  ).value;
}
const dutyAt = (injection: 'sequential' | 'each-turn', { pulseWidth = 0, rpm = 0 }: Given) => {
  const { periodS, dutyRatio } = injectorDuty({ pulseS: pulseWidth / 1000, speedRpm: rpm, injection }).value;
  return { cycle: periodS * 1000, period: periodS * 1000, duty: dutyRatio * 100 };
};
const pumped = (crankPowerKw: number, bsfcGPerKwh: number, density: number, marginRatio: number) => {
  const need = pumpNeed({ crankPowerKw, bsfcGPerKwh, densityKgM3: density * 1000, marginRatio }).value;
  return {
    fuelMass: need.fuelFlowGs * 3.6,
    flow: fromBase(need.flowCcMin, 'L/h'),
    flowWithMargin: fromBase(need.withMarginCcMin, 'L/h'),
  };
};

checkEngineCases('injectors and pump', cases, 75, {
  'inj.sizeSI': ({ power = 0, bsfc = 0, injectors = 0, duty = 0 }) => {
    const { fuelFlowGs, flowGs, flowCcMin } = injectorForPower({
      powerKw: power,
      injectors,
      dutyRatio: duty,
      bsfcGPerKwh: bsfc,
      densityKgM3: 745,
    }).value;
    return { fuelFlow: fuelFlowGs * 3.6, perInjector: flowGs, perInjectorVol: flowCcMin };
  },
  'inj.sizeUS': ({ power = 0, bsfc = 0, injectors = 0, duty = 0 }) => {
    const { fuelFlowGs, flowGs } = injectorForPower({
      powerKw: toBase(power, 'hp'),
      injectors,
      dutyRatio: duty,
      bsfcGPerKwh: gPerKwhFromLbPerHpH(bsfc),
      densityKgM3: 745,
    }).value;
    return { totalFuel: lbHFromGs(fuelFlowGs), perInjector: lbHFromGs(flowGs), perInjectorMass: flowGs };
  },
  'inj.power': ({ flow = 0, density = 0, injectors = 0, duty = 0, bsfc = 0 }) => {
    const { crankPowerKw, flowGs } = powerFromInjectors({
      flowCcMin: flow,
      injectors,
      dutyRatio: duty,
      bsfcGPerKwh: gPerKwhFromLbPerHpH(bsfc),
      densityKgM3: density * 1000,
    }).value;
    return { flowMass: lbHFromGs(flowGs), power: fromBase(crankPowerKw, 'hp') };
  },
  'inj.lb2cc': ({ flow = 0, density = 0 }) => ({
    flowVol: ccMinFromGs(toBase(flow, 'lb/h'), density * 1000),
    flowMass: toBase(flow, 'lb/h'),
  }),
  'inj.cc2lb': ({ flow = 0, density = 0 }) => {
    const flowMass = gsFromCcMin(flow, density * 1000);
    return { flowLb: lbHFromGs(flowMass), flowMass };
  },
  'inj.rule105': ({ factor = 0 }) => ({ density: densityOfShortcut(factor) / 1000 }),
  'inj.sqrt': ({ flow1 = 0, dp1 = 0, dp2 = 0 }) => ({
    flow2: flowAtPressure({
      flowCcMin: flow1,
      // Given in bar or in psi: only the ratio counts.
      ratedKpa: dp1 * 10,
      acrossKpa: dp2 * 10,
    }).value.flowCcMin,
  }),
  'inj.unref': ({ flowRef = 0, dpRef = 0, rail = 0, manifold = 0 }) => {
    const { acrossKpa } = pressureAcrossInjector({
      baseKpa: rail * KPA_PER_BAR,
      manifoldKpa: manifold * KPA_PER_BAR,
      referenced: false,
    }).value;
    const { flowCcMin } = flowAtPressure({
      flowCcMin: flowRef,
      ratedKpa: dpRef * KPA_PER_BAR,
      acrossKpa,
    }).value;
    return { dp: acrossKpa / KPA_PER_BAR, flow: flowCcMin };
  },
  'inj.dpFor': ({ flow1 = 0, dp1 = 0, flow2 = 0 }) => ({
    dp2:
      pressureForFlow({ flowCcMin: flow1, ratedKpa: dp1 * KPA_PER_BAR, wantedCcMin: flow2 }).value.acrossKpa /
      KPA_PER_BAR,
  }),
  'inj.duty': (given) => dutyAt('sequential', given),
  'inj.dutyBatch': (given) => dutyAt('each-turn', given),
  'inj.maxPw': ({ rpm = 0, dutyMax = 0 }) => ({
    pw: 1000 * longestPulse({ speedRpm: rpm, dutyRatio: dutyMax, injection: 'sequential' }).value.pulseS,
  }),
  'inj.dead': ({ pulseWidth = 0, deadTime = 0, rpm = 0, staticFlow = 0 }) => {
    const { effectiveS, effectiveDutyRatio, meanFlowCcMin } = deliveredFlow({
      pulseS: pulseWidth / 1000,
      deadTimeS: deadTime / 1000,
      speedRpm: rpm,
      staticFlowCcMin: staticFlow,
      injection: 'sequential',
    }).value;
    return { effective: effectiveS * 1000, effectiveDuty: effectiveDutyRatio * 100, meanFlow: meanFlowCcMin };
  },
  'inj.deadErr': ({ pulseWidth = 0, deadTime1 = 0, deadTime2 = 0 }) => ({
    error:
      100 *
      deadTimeError({
        pulseS: pulseWidth / 1000,
        assumedDeadTimeS: deadTime1 / 1000,
        trueDeadTimeS: deadTime2 / 1000,
      }).value.errorRatio,
  }),
  'inj.pwAir': (given) => {
    const { cylVolume = 0, map = 0, chargeT = 0, ve = 0, lambda = 0, afrStoich = 0, deadTime = 0 } = given;
    const { airG, fuelG } = fuelForCharge({
      cylinderL: cylVolume,
      manifoldKpa: map,
      chargeC: chargeT - 273.15,
      veRatio: ve,
      lambdaRatio: lambda,
      stoichiometricAfr: afrStoich,
    }).value;
    const staticFlowGs = gsFromCcMin(given['staticFlow'] ?? 0, (given['fuelDensity'] ?? 0) * 1000);
    const { pulseS } = pulseForFuel({ fuelG, staticFlowGs, deadTimeS: deadTime / 1000 }).value;
    return { airMass: airG * 1000, fuelMass: fuelG * 1000, pulseWidth: pulseS * 1000 };
  },
  'inj.pumpUS': ({ power = 0, bsfc = 0, density = 0, margin = 0 }) =>
    pumped(toBase(power, 'hp'), gPerKwhFromLbPerHpH(bsfc), density, margin),
  'inj.pumpSI': ({ power = 0, bsfc = 0, density = 0 }) => pumped(power, bsfc, density, 0),
  'inj.railRef': ({ base = 0, boost = 0 }) => ({
    rail:
      pressureAcrossInjector({
        baseKpa: base * KPA_PER_BAR,
        manifoldKpa: boost * KPA_PER_BAR,
        referenced: true,
      }).value.railKpa / KPA_PER_BAR,
  }),
  'inj.bsfcUS2SI': ({ bsfc = 0 }) => ({ bsfc: gPerKwhFromLbPerHpH(bsfc) }),
  'inj.bsfcSI2US': ({ bsfc = 0 }) => ({ bsfc: lbPerHpHFromGPerKwh(bsfc) }),
  'inj.eta': ({ bsfc = 0, lhv = 0 }) => ({
    efficiency:
      100 *
      thermalEfficiency({ powerKw: 100, fuelFlowGs: (100 * bsfc) / 3600, calorificKjPerKg: lhv * 1000 }).value
        .efficiencyRatio,
  }),
  'inj.change': (given) => {
    const { volumeRatio, massRatio } = changeOver(given);
    return { volumeFactor: volumeRatio, massFactor: massRatio };
  },
  'inj.noChange': (given) => ({ lambdaNew: lambdaIfUnchanged(given['lambdaOld'] ?? 0, changeOver(given)) }),
  'inj.changeDuty': (given) => ({
    dutyNew: 100 * (given['dutyOld'] ?? 0) * changeOver(given).openTimeRatio,
  }),
  'inj.fluid': ({ flow1 = 0, rho1 = 0, rho2 = 0 }) => {
    const { flowCcMin, massRatio } = flowOfFluid({
      flowCcMin: flow1,
      testDensityKgM3: rho1 * 1000,
      fuelDensityKgM3: rho2 * 1000,
    }).value;
    return { flow2: flowCcMin, massRatio };
  },
  'inj.pulk23': ({ p = 0, V: volumeM3 = 0, T: kelvin = 0, AF: afr = 0, cyl = 0, rpm = 0, power = 0 }) => {
    // The charge at bottom dead centre holds air and fuel, so the air is AF/(1 + AF) of it: that is the VE here.
    const { fuelG } = fuelForCharge({
      cylinderL: volumeM3 * 1000,
      manifoldKpa: p,
      chargeC: kelvin - 273.15,
      veRatio: afr / (1 + afr),
      lambdaRatio: 1,
      stoichiometricAfr: afr,
    }).value;
    const fuelFlowGs = (fuelG * cyl * rpm) / 120;
    return { fuelFlow: fuelFlowGs / 1000, bsfc: (fuelFlowGs * 3600) / power };
  },
});
