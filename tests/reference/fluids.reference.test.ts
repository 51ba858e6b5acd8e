import cases from '../../data/reference/engine/fluids.json' with { type: 'json' };
import {
  drainAndFill,
  drainNeeded,
  glycolForMassShare,
  mixTwo,
  oldLeft,
} from '../../src/calc/fluids/coolant-change.ts';
import { coolantHeat } from '../../src/calc/fluids/coolant-heat.ts';
import { glycolBoiling, glycolFreezing, massShare, volumeShare } from '../../src/calc/fluids/glycol.ts';
import { hotGrade } from '../../src/calc/fluids/oil-grade.ts';
import { laminarFlow } from '../../src/calc/fluids/oil-line.ts';
import { dynamicViscosity, temperatureAt, viscosityAt } from '../../src/calc/fluids/oil-viscosity.ts';
import { viscosityIndex } from '../../src/calc/fluids/viscosity-index.ts';
import { waterBoiling } from '../../src/calc/fluids/water-boiling.ts';
import { boreForVelocity, lineFlow } from '../../src/calc/fuel/fuel-line.ts';
import { toBase } from '../../src/calc/units/convert.ts';
import { brakeFluids, coolantStandard, glycols, indexRows, oilGrades } from '../../src/tables/fluids.ts';
import { checkEngineCases, type Given, type Runner } from '../support/engine-cases.ts';

const [ethylene, propylene] = glycols;
if (ethylene?.id !== 'ethylene' || propylene?.id !== 'propylene')
  throw new Error('the glycols are in another order');

type Glycol = typeof ethylene;

const byVolume = (glycol: Glycol, percent: number) => {
  const { freezingC } = glycolFreezing({ volumeRatio: percent / 100, glycol }).value;
  return { freezing: freezingC, freezingF: freezingC * 1.8 + 32 };
};
const volumeOf = (glycol: Glycol, massPercent: number) =>
  volumeShare({ massRatio: massPercent / 100, densityKgM3: glycol.densityKgM3 }).value.volumeRatio * 100;
const byMass = (glycol: Glycol, percent: number) => byVolume(glycol, volumeOf(glycol, percent));
/** A row with both shares: they must be each other's within a point, as glycol and water shrink on mixing. */
const byBoth =
  (glycol: Glycol): Runner =>
  ({ massConcentration = 0, volumeConcentration = 0 }) => {
    if (Math.abs(volumeOf(glycol, massConcentration) - volumeConcentration) > 1)
      throw new Error(`${massConcentration} % by mass is not ${volumeConcentration} % by volume`);
    return byMass(glycol, massConcentration);
  };
const boilsAt = (pressureKpa: number) => waterBoiling({ pressureKpa }).value.boilingC;
/** Grade in front of a row's text: "40 (15W-40, 20W-40, 25W-40, 40)". */
const gradeNumber = (text: string) => Number.parseInt(text, 10);
const line = (
  { flow = 0, d = 0 }: Given,
  nu: number,
  rest: { length?: number; rho?: number; roughness?: number } = {},
) =>
  lineFlow({
    flowCcMin: flow * 1000,
    boreMm: d,
    lengthMm: (rest.length ?? 1) * 1000,
    densityKgM3: rest.rho ?? 1000,
    viscosityMm2S: nu,
    ...(rest.roughness === undefined ? {} : { roughnessMm: rest.roughness }),
  }).value;

checkEngineCases('fluids', cases, 121, {
  'pg-freeze-volume': ({ concentration = 0 }) => byVolume(propylene, concentration),
  'eg-freeze-volume-rule': ({ concentration = 0 }) => byVolume(ethylene, concentration),
  'fl.melEG': ({ concentration = 0 }) => byMass(ethylene, concentration),
  'fl.melPG': ({ concentration = 0 }) => byMass(propylene, concentration),
  'eg-freeze-ashrae': byBoth(ethylene),
  'pg-freeze-ashrae': byBoth(propylene),
  'astm-d3306': () => ({
    freezingMax: coolantStandard.freezingMostC,
    boilingMin: coolantStandard.boilingLeastC,
  }),
  'fl.v2m': ({ volume = 0, rhoGlycol = 0 }) => ({
    mass: massShare({ volumeRatio: volume / 100, densityKgM3: rhoGlycol }).value.massRatio * 100,
  }),
  'fl.glycolVol': ({ volume = 0, massFraction = 0, sg = 0 }) => ({
    glycol: glycolForMassShare({ systemL: volume, massRatio: massFraction, relativeDensity: sg }).value
      .glycolL,
  }),
  'fl.drain': ({ system = 0, c1 = 0, drained = 0, refill = 0 }) => ({
    c2:
      drainAndFill({ systemL: system, fromRatio: c1 / 100, drainedL: drained, freshRatio: refill / 100 })
        .value.shareRatio * 100,
  }),
  'fl.drainFor': ({ system = 0, c1 = 0, target = 0, refill = 0 }) => ({
    drain: drainNeeded({
      systemL: system,
      fromRatio: c1 / 100,
      toRatio: target / 100,
      freshRatio: refill / 100,
    }).value.drainL,
  }),
  'fl.repeat': ({ system = 0, drained = 0, times = 0 }) => ({
    old: oldLeft({ systemL: system, drainedL: drained, changes: times }).value.oldRatio * 100,
  }),
  'fl.mix': ({ V1 = 0, c1 = 0, V2 = 0, c2 = 0 }) => ({
    c:
      mixTwo({ volumeL: V1, shareRatio: c1 / 100 }, { volumeL: V2, shareRatio: c2 / 100 }).value.shareRatio *
      100,
  }),
  'fl.tsat': ({ patm = 0, cap = 0 }) => ({ boiling: boilsAt((patm + cap) * 100) }),
  'fl.tsatPsi': ({ patm = 0, cap = 0 }) => {
    const boiling = boilsAt(toBase(patm + cap, 'psi'));
    return { boiling, boilingF: boiling * 1.8 + 32 };
  },
  'fl.tsatOf': ({ pressure = 0 }) => ({ temperature: boilsAt(pressure) }),
  'eg-boiling': ({ concentration = 0 }) => ({
    boiling: glycolBoiling({
      volumeRatio: volumeOf(ethylene, concentration) / 100,
      glycol: ethylene,
      pressureKpa: 100.7,
    }).value.boilingC,
  }),
  'brake-fluid': (_, { grade = '' }) => {
    const fluid = brakeFluids.find(({ id }) => id === grade);
    return { dry: fluid?.dryC ?? Number.NaN, wet: fluid?.wetC ?? Number.NaN };
  },
  'fl.walther': ({ v40 = 0, v100 = 0, temperature = 0 }) => {
    const { a, b, viscosityMm2S } = viscosityAt({
      at40Mm2S: v40,
      at100Mm2S: v100,
      temperatureC: temperature,
    }).value;
    return { A: a, B: b, viscosity: viscosityMm2S };
  },
  'fl.waltherT': ({ v40 = 0, v100 = 0, viscosity = 0 }) => ({
    temperature: temperatureAt({ at40Mm2S: v40, at100Mm2S: v100, viscosityMm2S: viscosity }).value
      .temperatureC,
  }),
  'fl.vi': ({ v40 = 0, v100 = 0 }) => {
    const { l, h, index } = viscosityIndex({ at40Mm2S: v40, at100Mm2S: v100 }, indexRows).value;
    return { L: l, H: h, vi: index };
  },
  'j300-hot': (_, { grade = '' }) => {
    const row = oilGrades.hot.find((each) => each.grade === gradeNumber(grade));
    if (row === undefined) throw new Error(`no grade ${grade}`);
    return {
      v100min: row.leastMm2S,
      v100max: row.belowMm2S,
      hths: grade.includes('15W') ? row.leastHighShearWithThickMpaS : row.leastHighShearMpaS,
    };
  },
  'j300-cold': (_, { grade = '' }) => {
    const row = oilGrades.cold.find((each) => each.grade === gradeNumber(grade));
    if (row === undefined) throw new Error(`no grade ${grade}`);
    return {
      crank: row.crankingMpaS,
      crankT: row.crankingC,
      pump: row.pumpingMpaS,
      pumpT: row.pumpingC,
      v100min: row.leastMm2S,
    };
  },
  'fl.j300': ({ v100 = 0, hths = 0 }) => ({
    grade: hotGrade({ at100Mm2S: v100, highShearMpaS: hths }, oilGrades.hot).value.grade.grade,
  }),
  'fl.dyn': ({ v = 0, rho = 0 }) => ({
    mu: dynamicViscosity({ viscosityMm2S: v, densityKgM3: rho }).value.viscosityMpaS,
  }),
  'fl.vel': (given) => ({ velocity: line(given, 10).velocityMPerS }),
  'fl.dia': ({ flow = 0, velocity = 0 }) => ({
    d: boreForVelocity({ flowCcMin: flow * 1000, velocityMPerS: velocity }).value.boreMm,
  }),
  'fl.re': (given) => {
    const { velocityMPerS, reynolds } = line(given, given['nu'] ?? 0);
    return { velocity: velocityMPerS, re: reynolds, regime: reynolds < 2300 ? 'laminar' : 'turbulent' };
  },
  'fl.hp': (given) => ({ dp: line(given, given['mu'] ?? 0, { length: given['length'] ?? 0 }).dropKpa }),
  'fl.dw': (given) => {
    const { length = 0, rho = 0, nu = 0, roughness = 0 } = given;
    const { reynolds, frictionFactor, dropKpa } = line(given, nu, { length, rho, roughness });
    return { re: reynolds, f: frictionFactor, dp: dropKpa };
  },
  'fl.glycerol': ({ dp = 0, d = 0, length = 0, mu = 0, rho = 0 }) => {
    const { flowLMin, reynolds } = laminarFlow({
      dropKpa: dp,
      boreMm: d,
      lengthMm: length * 1000,
      viscosityMpaS: mu * 1000,
      densityKgM3: rho,
    }).value;
    return { flow: flowLMin / 60_000, re: reynolds };
  },
  'fl.heat': ({ flow = 0, cp = 0, rho = 0, dT = 0 }) => ({
    power: coolantHeat({ flowLMin: flow, riseK: dT, densityKgM3: rho, heatKjKgK: cp }).value.powerKw,
  }),
});
