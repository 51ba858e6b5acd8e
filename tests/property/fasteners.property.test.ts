import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { torqueByFriction, torqueOfScrew } from '../../src/calc/fasteners/by-friction.ts';
import { chosenBolt } from '../../src/calc/fasteners/chosen-bolt.ts';
import { engagementLength } from '../../src/calc/fasteners/engagement.ts';
import { angleForClamp, clampOfAngle, jointStiffness } from '../../src/calc/fasteners/joint.ts';
import { tighteningOrder } from '../../src/calc/fasteners/pattern.ts';
import { stressArea } from '../../src/calc/fasteners/stress-area.ts';
import { boltStretch } from '../../src/calc/fasteners/stretch.ts';
import { clampOfTorque, torqueAfterChange, torqueForShare } from '../../src/calc/fasteners/tightening.ts';
import { wrenchSetting } from '../../src/calc/fasteners/wrench.ts';
import { threadCatalogue } from '../../src/calc/threads/catalogue.ts';
import { boltClasses, headMeans } from '../../src/tables/fasteners.ts';
import { threadTables } from '../../src/tables/threads.ts';

const SETTINGS = {
  seed: Number(process.env['FC_SEED'] ?? 20_261),
  numRuns: Number(process.env['FC_RUNS'] ?? 300),
};
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const check = <Values extends [unknown, ...unknown[]]>(
  arbitraries: { [Key in keyof Values]: fc.Arbitrary<Values[Key]> },
  law: (...values: Values) => void,
) => fc.assert(fc.property(...arbitraries, law), SETTINGS);
const near = (ours: number, theirs: number, relative = 1e-9) =>
  expect(Math.abs(ours - theirs)).toBeLessThanOrEqual(relative * Math.abs(theirs) + 1e-12);

const threads = threadCatalogue(threadTables).filter(({ family }) => family === 'iso-metric');
const anyThread = fc.constantFrom(...threads);
const anyBolt = fc.record({
  majorMm: between(5, 24),
  stressAreaMm2: between(14, 350),
  proofMpa: between(220, 970),
  shareRatio: between(0.1, 0.95),
  nutFactor: between(0.1, 0.35),
});

describe('tightening', () => {
  it('goes to and fro between torque and clamp force', () => {
    check([anyBolt], (bolt) => {
      const { torqueNm, clampN } = torqueForShare(bolt).value;
      fc.pre(torqueNm >= 0.1);
      near(clampOfTorque({ ...bolt, torqueNm }).value.clampN, clampN);
    });
  });

  it('asks for less torque the better it is oiled, and gets it back dry', () => {
    check([between(1, 400), between(0.05, 0.5), between(0.05, 0.5)], (torqueNm, from, to) => {
      const there = torqueAfterChange({ torqueNm, fromNutFactor: from, toNutFactor: to }).value.torqueNm;
      expect(Math.sign(there - torqueNm)).toBe(Math.sign(to - from));
      fc.pre(there >= 0.1);
      near(
        torqueAfterChange({ torqueNm: there, fromNutFactor: to, toNutFactor: from }).value.torqueNm,
        torqueNm,
      );
    });
  });

  it('never clamps past what tension and twist together allow', () => {
    check([anyThread, between(0.05, 0.35), between(0.05, 0.35)], ({ basic, pitchMm }, one, other) => {
      const headMeanMm = headMeans.get(basic.majorMm);
      fc.pre(headMeanMm !== undefined);
      const at = (friction: number) =>
        torqueByFriction({
          majorMm: basic.majorMm,
          pitchMm,
          yieldMpa: 940,
          friction,
          headMeanMm: headMeanMm ?? 0,
        }).value;
      const [slick, rough] = [at(Math.min(one, other)), at(Math.max(one, other))];
      expect(rough.clampN).toBeLessThanOrEqual(slick.clampN);
      expect(rough.torqueNm).toBeGreaterThanOrEqual(slick.torqueNm);
      const { stressAreaMm2 } = stressArea({ majorMm: basic.majorMm, pitchMm }).value;
      expect(slick.clampN).toBeLessThan(0.9 * 940 * stressAreaMm2);
    });
  });

  it('by two formulas for the turning of a screw agrees within 2 %', () => {
    check([anyThread, between(0.08, 0.2)], ({ basic, pitchMm }, friction) => {
      const headMeanMm = headMeans.get(basic.majorMm);
      fc.pre(headMeanMm !== undefined);
      const given = { majorMm: basic.majorMm, pitchMm, friction, headMeanMm: headMeanMm ?? 0 };
      const { clampN, torqueNm } = torqueByFriction({ ...given, yieldMpa: 640 }).value;
      const { rootDiameterMm, pitchDiameterMm } = stressArea(given).value;
      // the screw is given the root that puts its mean on the pitch diameter
      const rootMm = Math.max(2 * pitchDiameterMm - basic.majorMm, rootDiameterMm);
      near(torqueOfScrew({ ...given, clampN, rootMm }).value.torqueNm, torqueNm, 0.02);
    });
  });
});

describe('bolts', () => {
  const upTo39 = fc.constantFrom(...threads.filter(({ basic }) => basic.majorMm <= 39));

  it('break after their proof load, and are stronger the thicker', () => {
    check([upTo39, fc.constantFrom('8.8', '10.9', '12.9')], (thread, id) => {
      const { proofN, breakingN, stressAreaMm2 } = chosenBolt(
        { thread, pitchAssumed: false },
        id,
        boltClasses,
      ).value;
      expect(breakingN).toBeGreaterThan(proofN);
      const thicker = stressArea({ majorMm: thread.basic.majorMm + 1, pitchMm: thread.pitchMm }).value;
      expect(thicker.stressAreaMm2).toBeGreaterThan(stressAreaMm2);
    });
  });

  it('need more thread in a weaker metal', () => {
    check([anyThread, between(100, 400), between(1, 100)], (thread, holeTensileMpa, weaker) => {
      const { majorMm } = thread.basic;
      const given = {
        majorMm,
        pitchMm: thread.pitchMm,
        leastMajorMm: thread.limits.major.minMm,
        mostPitchDiameterMm: thread.limits.femalePitch?.maxMm ?? 0,
        stressAreaMm2: stressArea({ majorMm, pitchMm: thread.pitchMm }).value.stressAreaMm2,
        boltTensileMpa: 800,
      };
      const at = (strength: number) =>
        engagementLength({ ...given, holeTensileMpa: strength }).value.engagementMm;
      fc.pre(holeTensileMpa - weaker >= 80);
      expect(at(holeTensileMpa - weaker)).toBeGreaterThan(at(holeTensileMpa));
    });
  });
});

describe('joints', () => {
  const joint = fc.record({
    majorMm: between(6, 20),
    stressAreaMm2: between(20, 240),
    gripMm: between(20, 110),
    clamped: fc.constantFrom('steel' as const, 'aluminium' as const, 'cast iron' as const),
  });

  it('turn by the angle that their clamp force takes, and the other way round', () => {
    check([joint, between(0, 700), between(0.5, 3)], (given, angleDeg, pitchMm) => {
      const stiffness = { ...jointStiffness(given).value, pitchMm };
      const { addedN } = clampOfAngle({ ...stiffness, angleDeg }).value;
      fc.pre(addedN <= 2e6);
      near(angleForClamp({ ...stiffness, addedN }).value.angleDeg, angleDeg);
    });
  });

  it('have parts stiffer than their bolt, and stiffer in steel than in aluminium', () => {
    check([joint], (given) => {
      fc.pre(given.stressAreaMm2 < 0.7 * given.majorMm ** 2);
      const { boltKnPerMm, partsKnPerMm } = jointStiffness({ ...given, clamped: 'steel' }).value;
      expect(partsKnPerMm).toBeGreaterThan(boltKnPerMm);
      expect(partsKnPerMm).toBeGreaterThan(
        jointStiffness({ ...given, clamped: 'aluminium' }).value.partsKnPerMm,
      );
    });
  });

  it('stretch their bolt in proportion', () => {
    check([between(1, 1e5), between(10, 200), between(10, 300)], (clampN, lengthMm, areaMm2) => {
      const one = boltStretch({ clampN, lengthMm, areaMm2 }).value.stretchMm;
      near(boltStretch({ clampN: 2 * clampN, lengthMm, areaMm2 }).value.stretchMm, 2 * one);
    });
  });
});

describe('the order of bolts', () => {
  const layout = fc.constantFrom('circle' as const, 'rows' as const);

  it('takes each once', () => {
    check([fc.integer({ min: 1, max: 20 }), fc.integer({ min: 2, max: 40 })], (pairs, bolts) => {
      for (const given of [
        { bolts: 2 * pairs, layout: 'rows' as const },
        { bolts, layout: 'circle' as const },
      ]) {
        const { order } = tighteningOrder(given).value;
        const sorted = order.toSorted((one, other) => one - other);
        expect(sorted).toEqual(Array.from({ length: given.bolts }, (_, at) => at + 1));
      }
    });
  });

  it('crosses over, and never ends where it began', () => {
    check([fc.integer({ min: 2, max: 20 }), layout], (pairs, which) => {
      const bolts = 2 * pairs;
      const { order } = tighteningOrder({ bolts, layout: which }).value;
      const [first = 0, second = 0] = order;
      if (which === 'circle') expect(Math.abs(first - second)).toBe(pairs);
      else expect(first <= pairs).not.toBe(second <= pairs);
    });
  });
});

describe('a longer wrench', () => {
  it('is set lower', () => {
    check([between(1, 1000), between(100, 1000), between(1, 500)], (torqueNm, wrenchMm, extensionMm) => {
      const { settingNm } = wrenchSetting({ torqueNm, wrenchMm, extensionMm }).value;
      expect(settingNm).toBeLessThan(torqueNm);
      near(settingNm * (wrenchMm + extensionMm), torqueNm * wrenchMm);
    });
  });
});
