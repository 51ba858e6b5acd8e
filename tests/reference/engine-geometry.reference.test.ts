import cases from '../../data/reference/engine/engine-geometry.json' with { type: 'json' };
import {
  clearanceForRatio,
  compressionRatio,
  deckCut,
  ratioOf,
} from '../../src/calc/geometry/compression-ratio.ts';
import { boreForDisplacement, displacement, overbore } from '../../src/calc/geometry/displacement.ts';
import { clearanceByFactor, thermalGrowth } from '../../src/calc/geometry/fits.ts';
import {
  meanPistonSpeed,
  pistonAcceleration,
  pistonTravel,
  speedForPistonSpeed,
} from '../../src/calc/geometry/piston-motion.ts';
import {
  meanEffectivePressure,
  powerOfTorque,
  torqueForMeanPressure,
  torqueOfPower,
} from '../../src/calc/geometry/torque.ts';
import { checkEngineCases } from '../support/engine-cases.ts';

const CM3_PER_IN3 = 16.387064;
const NM_PER_LBFT = 1.3558179483314;
const KPA_PER_PSI = 6.894757293168;
const KW_PER_HP = 0.7456998715822702;
const KW_PER_PS = 0.73549875;
const sizes = (boreMm: number, strokeMm: number, cylinders: number) => {
  const { displacementL, perCylinderL } = displacement({ boreMm, strokeMm, cylinders }).value;
  const cm3 = displacementL * 1000;
  return { displacement: cm3, perCylinder: perCylinderL * 1000, displacementIn3: cm3 / CM3_PER_IN3 };
};

checkEngineCases('engine geometry', cases, 63, {
  'geo.disp': ({ bore = 0, stroke = 0, cylinders = 0 }) => sizes(bore, stroke, cylinders),
  'geo.dispIn': ({ bore = 0, stroke = 0, cylinders = 0 }) => sizes(bore * 25.4, stroke * 25.4, cylinders),
  'geo.cr': (given) => {
    const {
      sweptCm3,
      gasketCm3,
      deckCm3,
      clearanceCm3,
      compressionRatio: cr,
    } = compressionRatio({
      boreMm: given['bore'] ?? 0,
      strokeMm: given['stroke'] ?? 0,
      chamberCm3: given['chamber'] ?? 0,
      gasketBoreMm: given['gasketBore'] ?? 0,
      gasketThicknessMm: given['gasketThickness'] ?? 0,
      deckMm: given['deck'] ?? 0,
      dishCm3: given['dish'] ?? 0,
    }).value;
    return { swept: sweptCm3, gasketVolume: gasketCm3, deckVolume: deckCm3, clearance: clearanceCm3, cr };
  },
  'geo.vcFor': ({ swept = 0, cr = 0 }) => ({
    clearance: clearanceForRatio({ sweptCm3: swept, compressionRatio: cr }).value.clearanceCm3,
  }),
  'geo.skim': ({ bore = 0, stroke = 0, clearance1 = 0, cut = 0 }) => {
    const { removedCm3, ratioBefore, ratioAfter } = deckCut({
      boreMm: bore,
      strokeMm: stroke,
      clearanceCm3: clearance1,
      cutMm: cut,
    }).value;
    return { removed: removedCm3, cr1: ratioBefore, cr2: ratioAfter };
  },
  'geo.over': ({ bore = 0, stroke = 0, cylinders = 0, oversize = 0 }) => {
    const { displacementL, gainL } = overbore({
      boreMm: bore,
      strokeMm: stroke,
      cylinders,
      oversizeMm: oversize,
    }).value;
    return { displacement: displacementL * 1000, gain: gainL * 1000 };
  },
  'geo.mps': ({ stroke = 0, rpm = 0 }) => {
    const { speedMs } = meanPistonSpeed({ strokeMm: stroke, speedRpm: rpm }).value;
    return { speed: speedMs, speedFt: (speedMs / 0.3048) * 60 };
  },
  'geo.rpmFor': ({ stroke = 0, speed = 0 }) => ({
    rpm: speedForPistonSpeed({ strokeMm: stroke, speedMs: speed }).value.speedRpm,
  }),
  'geo.acc': ({ stroke = 0, rod = 0, rpm = 0 }) => {
    const { accelerationMs2, rodRatio } = pistonAcceleration({
      strokeMm: stroke,
      rodMm: rod,
      speedRpm: rpm,
    }).value;
    return { acceleration: accelerationMs2, rodRatio };
  },
  'geo.pos': ({ stroke = 0, rod = 0, angle = 0 }) => ({
    position: pistonTravel({ strokeMm: stroke, rodMm: rod, angleDeg: angle }).value.travelMm,
  }),
  'geo.bmep': ({ torque = 0, displacement: litres = 0 }) => ({
    bmep: meanEffectivePressure({ torqueNm: torque, displacementL: litres }).value.bmepKpa / 100,
  }),
  'geo.bmepUS': ({ torque = 0, displacement: cubicInches = 0 }) => ({
    bmep:
      meanEffectivePressure({
        torqueNm: torque * NM_PER_LBFT,
        displacementL: (cubicInches * CM3_PER_IN3) / 1000,
      }).value.bmepKpa / KPA_PER_PSI,
  }),
  'geo.torqueFor': ({ bmep = 0, displacement: litres = 0 }) => ({
    torque: torqueForMeanPressure({ bmepKpa: bmep * 100, displacementL: litres }).value.torqueNm,
  }),
  'geo.power': ({ torque = 0, rpm = 0 }) => {
    const { powerKw } = powerOfTorque({ torqueNm: torque, speedRpm: rpm }).value;
    return { kW: powerKw, hp: powerKw / KW_PER_HP, PS: powerKw / KW_PER_PS };
  },
  'geo.powerUS': ({ torque = 0, rpm = 0 }) => ({
    hp: powerOfTorque({ torqueNm: torque * NM_PER_LBFT, speedRpm: rpm }).value.powerKw / KW_PER_HP,
  }),
  'geo.torque': ({ kW = 0, rpm = 0 }) => {
    const { torqueNm } = torqueOfPower({ powerKw: kW, speedRpm: rpm }).value;
    return { torque: torqueNm, torqueUS: torqueNm / NM_PER_LBFT };
  },
  'geo.factor': ({ diameter = 0, factor = 0 }) => {
    const { clearanceMm } = clearanceByFactor({ diameterMm: diameter, factorRatio: factor }).value;
    return { value: clearanceMm, valueIn: clearanceMm / 25.4 };
  },
  'geo.growth': ({ diameter = 0, alpha = 0, dT = 0 }) => ({
    growth: thermalGrowth({ diameterMm: diameter, expansionPerK: alpha, riseK: dT }).value.growthMm,
  }),
  'geo.pulk21': ({ displacement: litres = 0, cylinders = 0, cr = 0, rpm = 0 }) => {
    const { boreMm, strokeMm } = boreForDisplacement({
      displacementL: litres,
      cylinders,
      strokeRatio: 1,
    }).value;
    const sweptCm3 = (litres * 1000) / cylinders;
    return {
      bore: boreMm / 10,
      meanPistonSpeed: meanPistonSpeed({ strokeMm, speedRpm: rpm }).value.speedMs,
      clearance: clearanceForRatio({ sweptCm3, compressionRatio: cr }).value.clearanceCm3,
    };
  },
  'geo.jisk': ({ bore = 0, stroke = 0, cylinders = 0, clearance = 0 }) => {
    const { displacement: cm3, perCylinder } = sizes(bore, stroke, cylinders);
    return {
      displacement: cm3,
      cr: ratioOf({ sweptCm3: perCylinder, clearanceCm3: clearance }).value.compressionRatio,
    };
  },
});
