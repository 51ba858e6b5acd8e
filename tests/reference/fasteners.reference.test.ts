import { describe, expect, it } from 'vitest';
import cases from '../../data/reference/engine/fasteners.json' with { type: 'json' };
import { classFor, loadAtStress } from '../../src/calc/fasteners/bolt-class.ts';
import { torqueByFriction, torqueOfScrew } from '../../src/calc/fasteners/by-friction.ts';
import { serviceStress } from '../../src/calc/fasteners/joint.ts';
import { stressArea } from '../../src/calc/fasteners/stress-area.ts';
import { advanceOfAngle, boltStretch } from '../../src/calc/fasteners/stretch.ts';
import { clampOfTorque, torqueAfterChange, torqueForShare } from '../../src/calc/fasteners/tightening.ts';
import { wrenchSetting } from '../../src/calc/fasteners/wrench.ts';
import { threadCatalogue } from '../../src/calc/threads/catalogue.ts';
import { fromBase, toBase } from '../../src/calc/units/convert.ts';
import { boltClasses, frictions, headMeans, publishedAreas } from '../../src/tables/fasteners.ts';
import { threadTables } from '../../src/tables/threads.ts';
import { checkEngineCases, type Given } from '../support/engine-cases.ts';

const INCH = 25.4;
const LBF = 4.4482216152605;
const MPA_PER_KSI = 6.894757293168361;
const threads = threadCatalogue(threadTables);

/** A millimetre on the safe side of the diameters a case speaks of. */
const DIAMETERS: Readonly<Record<string, number>> = {
  'd <= 16 mm': 16,
  'd > 16 mm': 18,
  all: 10,
  '1/4 to 1 in': INCH,
  'over 1 to 1-1/2 in': 1.25 * INCH,
  '1/4 to 3/4 in': 0.75 * INCH,
  '1/4 to 1-1/2 in': INCH,
};

function diameterIn(range: string): number {
  const mm = DIAMETERS[range];
  if (mm === undefined) throw new Error(`which diameters are ${range}?`);
  return mm;
}

const NUT_FACTORS: Readonly<Record<string, string>> = {
  'non-plated, black finish': 'dry-black',
  'zinc-plated': 'dry',
  lubricated: 'oiled',
  'cadmium-plated': 'cadmium',
  'with an anti-seize compound': 'moly',
};

const vdi = ({ d = 0, P = 0, Rp02 = 0, mu = 0, DKm = 0, utilisation = 0 }: Given) => {
  const { clampN, torqueNm } = torqueByFriction({
    majorMm: d,
    pitchMm: P,
    yieldMpa: Rp02,
    friction: mu,
    headMeanMm: DKm,
    utilisationRatio: utilisation,
  }).value;
  return { preload: clampN / 1000, torque: torqueNm };
};

checkEngineCases('fasteners', cases, 155, {
  'property-class': (_, { propertyClass = '', diameterRange = '' }) => {
    const row = classFor(propertyClass, diameterIn(diameterRange), boltClasses);
    return {
      tensile: row.tensileMpa,
      proofStress02: row.yieldMpa,
      stressUnderProofLoad: row.proofMpa ?? Number.NaN,
    };
  },
  'j429-strength': (_, { grade = '', range = '' }) => {
    const row = classFor(`grade ${grade}`, diameterIn(range), boltClasses);
    return {
      proof: (row.proofMpa ?? Number.NaN) / MPA_PER_KSI,
      tensile: row.tensileMpa / MPA_PER_KSI,
      yield: row.yieldMpa / MPA_PER_KSI,
    };
  },
  'fas.area': ({ d = 0, P = 0 }) => {
    const { stressAreaMm2, pitchDiameterMm, rootDiameterMm } = stressArea({ majorMm: d, pitchMm: P }).value;
    return { area: stressAreaMm2, d2: pitchDiameterMm, d3: rootDiameterMm };
  },
  'fas.areaUN': ({ d = 0, tpi = 1 }) => ({
    area: stressArea({ majorMm: d * INCH, pitchMm: INCH / tpi, sharp: true }).value.stressAreaMm2 / INCH ** 2,
  }),
  'fas.load': ({ area = 0, stress = 0 }) => ({
    load: loadAtStress({ stressAreaMm2: area, stressMpa: stress }).value.loadN,
  }),
  'fas.loadUS': ({ area = 0, stress = 0 }) => {
    const { loadN } = loadAtStress({
      stressAreaMm2: area * INCH ** 2,
      stressMpa: (stress / 1000) * MPA_PER_KSI,
    }).value;
    return { loadN, load: loadN / LBF };
  },
  'k-table': (_, { condition = '' }) => {
    const found = frictions.find(({ id }) => id === NUT_FACTORS[condition]);
    return { K: found?.nutFactor ?? Number.NaN };
  },
  'fas.torque': ({ d = 0, area = 0, proofStress = 0, fraction = 0, K = 0 }) => {
    const { clampN, torqueNm } = torqueForShare({
      majorMm: d,
      stressAreaMm2: area,
      proofMpa: proofStress,
      shareRatio: fraction,
      nutFactor: K,
    }).value;
    return { preload: clampN / 1000, torque: torqueNm, torqueUS: fromBase(torqueNm, 'lbf.ft') };
  },
  'fas.torqueUS': ({ d = 0, area = 0, proofStress = 0, fraction = 0, K = 0 }) => {
    const { clampN, torqueNm } = torqueForShare({
      majorMm: d * INCH,
      stressAreaMm2: area * INCH ** 2,
      proofMpa: (proofStress / 1000) * MPA_PER_KSI,
      shareRatio: fraction,
      nutFactor: K,
    }).value;
    return { preload: clampN / LBF, torque: fromBase(torqueNm, 'lbf.ft') };
  },
  'fas.preload': ({ torque = 0, d = 0, K = 0 }) => ({
    preload: clampOfTorque({ torqueNm: torque, majorMm: d, nutFactor: K }).value.clampN / 1000,
  }),
  'fas.lub': ({ torque1 = 0, K1 = 0, K2 = 0 }) => ({
    torque2: torqueAfterChange({ torqueNm: torque1, fromNutFactor: K1, toNutFactor: K2 }).value.torqueNm,
  }),
  'fas.vdi': vdi,
  'fas.shig83a': ({ At = 0, Fi = 0, P = 0, kb = 0, km = 0 }) => {
    const { boltShareRatio, clampMpa, serviceMpa } = serviceStress({
      clampN: Fi * 1000 * LBF,
      loadN: P * 1000 * LBF,
      stressAreaMm2: At * INCH ** 2,
      boltKnPerMm: (kb * 1000 * LBF) / INCH,
      partsKnPerMm: (km * 1000 * LBF) / INCH,
    }).value;
    return {
      C: boltShareRatio,
      preloadStress: clampMpa / MPA_PER_KSI,
      serviceStress: serviceMpa / MPA_PER_KSI,
    };
  },
  'fas.shig83c': ({ Fi = 0, d = 0, tpi = 1, Ar = 0, f = 0 }) => ({
    torque: fromBase(
      torqueOfScrew({
        clampN: Fi * LBF,
        majorMm: d * INCH,
        rootMm: Math.sqrt((4 * Ar) / Math.PI) * INCH,
        pitchMm: INCH / tpi,
        friction: f,
      }).value.torqueNm,
      'lbf.in',
    ),
  }),
  'fas.ftlb2nm': ({ torque = 0 }) => ({ torque: toBase(torque, 'lbf.ft') }),
  'fas.nm2ftlb': ({ torque = 0 }) => ({ ftlb: fromBase(torque, 'lbf.ft'), inlb: fromBase(torque, 'lbf.in') }),
  'fas.kgfm': ({ torque = 0 }) => ({ torque: toBase(torque, 'kgf.m') }),
  'fas.ext': ({ torque = 0, wrench = 0, extension = 0 }) => ({
    setting: wrenchSetting({ torqueNm: torque, wrenchMm: wrench, extensionMm: extension }).value.settingNm,
  }),
  'fas.stretch': ({ force = 0, length = 0, area = 0, E = 0 }) => ({
    stretch: boltStretch({ clampN: force * 1000, lengthMm: length, areaMm2: area, modulusGpa: E }).value
      .stretchMm,
  }),
  'fas.angle': ({ angle = 0, P = 0 }) => ({
    advance: advanceOfAngle({ angleDeg: angle, pitchMm: P }).value.advanceMm,
  }),
});

describe('the published stress areas (ISO 898-1; Shigley table 8-2)', () => {
  it('are there', () => expect(publishedAreas.size).toBeGreaterThan(50));

  it.each([...publishedAreas])('%s is %d mm², as worked out', (threadId, areaMm2) => {
    const thread = threads.find(({ id }) => id === threadId);
    expect(thread).toBeDefined();
    const ours = stressArea({
      majorMm: thread?.basic.majorMm ?? 0,
      pitchMm: thread?.pitchMm ?? 0,
      sharp: thread?.family === 'unified',
    }).value.stressAreaMm2;
    // half the last of the three figures printed
    expect(Math.abs(ours - areaMm2)).toBeLessThanOrEqual(0.006 * areaMm2);
  });
});

describe('the mean diameter under a hexagon head (ISO 4014, ISO 273)', () => {
  const byCase = cases.filter(({ calc, group }) => calc === 'fas.vdi' && group !== 'vdi2230-friction');

  it('is known for the bolts of the cases', () => expect(byCase.length).toBeGreaterThan(20));

  it.each(byCase)('$id', ({ inputs }) => {
    const { d, DKm } = inputs;
    if (d === undefined || DKm === undefined) throw new Error('a case without its diameters');
    expect(Math.abs((headMeans.get(d.value) ?? 0) - DKm.value)).toBeLessThanOrEqual(0.001);
  });
});
