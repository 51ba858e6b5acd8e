import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { requireRange } from '../require-range.ts';
import { boreAreaMm2, displacement } from './displacement.ts';

const CREVICE = 'the ring-land crevice is left out (it adds 0.5 to 2 cm³)';

export interface CompressionVolumes {
  readonly sweptCm3: number;
  readonly gasketCm3: number;
  readonly deckCm3: number;
  readonly clearanceCm3: number;
  readonly compressionRatio: number;
}

/**
 * Static compression ratio from measured volumes: CR = (V_s + V_c)/V_c, V_c = chamber + gasket + deck + dish.
 *
 * Gasket and deck are discs: π/4·d²·h. The deck is positive with the piston below the face, a dish is positive, a dome
 * negative. Source: definition, Heywood eq. 2.1 (key HEYWOOD). Valid: CR 3 to 25. Not for: late inlet closing, which lowers
 * what the engine sees.
 * @throws UserError 'out-of-range' when no clearance is left or the ratio is none an engine has.
 */
export function compressionRatio(cylinder: {
  readonly boreMm: number;
  readonly strokeMm: number;
  readonly chamberCm3: number;
  readonly gasketBoreMm: number;
  readonly gasketThicknessMm: number;
  readonly deckMm: number;
  readonly dishCm3: number;
}): Calculation<CompressionVolumes> {
  const { boreMm, strokeMm, chamberCm3, gasketBoreMm, gasketThicknessMm, deckMm, dishCm3 } = cylinder;
  requireRange(
    { what: 'The chamber', value: chamberCm3, min: 0, max: 2000, unit: 'cm³' },
    { what: 'The gasket bore', value: gasketBoreMm, min: boreMm * 0.9, max: boreMm * 1.3, unit: 'mm' },
    { what: 'The gasket thickness', value: gasketThicknessMm, min: 0, max: 10, unit: 'mm' },
    { what: 'The deck clearance', value: deckMm, min: -15, max: 15, unit: 'mm' },
    { what: 'The dish', value: dishCm3, min: -500, max: 500, unit: 'cm³' },
  );
  const sweptCm3 = displacement({ boreMm, strokeMm, cylinders: 1 }).value.displacementL * 1000;
  const gasketCm3 = (boreAreaMm2(gasketBoreMm) * gasketThicknessMm) / 1000;
  const deckCm3 = (boreAreaMm2(boreMm) * deckMm) / 1000;
  const clearanceCm3 = chamberCm3 + gasketCm3 + deckCm3 + dishCm3;
  const ratio = ratioOf({ sweptCm3, clearanceCm3 });
  return {
    value: { sweptCm3, gasketCm3, deckCm3, clearanceCm3, compressionRatio: ratio.value.compressionRatio },
    assumptions: ratio.assumptions,
    sources: ratio.sources,
    caveats:
      gasketThicknessMm + deckMm < 0.7
        ? [
            `Piston to head is ${(gasketThicknessMm + deckMm).toFixed(2)} mm: below about 0.7 to 1.0 mm (common practice) they can touch at speed.`,
          ]
        : [],
  };
}

/**
 * Compression ratio of a swept and a clearance volume: CR = (V_s + V_c)/V_c.
 *
 * Source: definition (key HEYWOOD). Valid: CR 3 to 25.
 * @throws UserError 'out-of-range' outside it.
 */
export function ratioOf(volumes: {
  readonly sweptCm3: number;
  readonly clearanceCm3: number;
}): Calculation<{ readonly compressionRatio: number }> {
  const { sweptCm3, clearanceCm3 } = volumes;
  requireRange(
    { what: 'The swept volume', value: sweptCm3, min: 1, max: 50_000, unit: 'cm³' },
    { what: 'The clearance volume', value: clearanceCm3, min: 0.01, max: 10_000, unit: 'cm³' },
  );
  const ratio = (sweptCm3 + clearanceCm3) / clearanceCm3;
  requireRange({ what: 'The compression ratio', value: ratio, min: 3, max: 25, unit: '' });
  return {
    value: { compressionRatio: ratio },
    assumptions: [CREVICE],
    sources: ['HEYWOOD'],
    caveats: [],
  };
}

/**
 * Clearance volume for a wanted ratio: V_c = V_s/(CR − 1).
 *
 * Source: the definition inverted (key HEYWOOD). Valid: CR 3 to 25.
 * @throws UserError 'out-of-range' outside it.
 */
export function clearanceForRatio(wanted: {
  readonly sweptCm3: number;
  readonly compressionRatio: number;
}): Calculation<{ readonly clearanceCm3: number }> {
  const { sweptCm3, compressionRatio: ratio } = wanted;
  requireRange(
    { what: 'The swept volume', value: sweptCm3, min: 1, max: 50_000, unit: 'cm³' },
    { what: 'The compression ratio', value: ratio, min: 3, max: 25, unit: '' },
  );
  return {
    value: { clearanceCm3: sweptCm3 / (ratio - 1) },
    assumptions: [CREVICE],
    sources: ['HEYWOOD'],
    caveats: [],
  };
}

/**
 * What taking metal off the block or head face does: V_c2 = V_c1 − π/4·B²·cut. A negative cut is a thicker gasket.
 *
 * Source: geometry. Valid: where the cut acts over the whole bore; a head with a closed, tapering chamber loses less.
 * @throws UserError 'out-of-range' when nothing would be left of the clearance.
 */
export function deckCut(cylinder: {
  readonly boreMm: number;
  readonly strokeMm: number;
  readonly clearanceCm3: number;
  readonly cutMm: number;
}): Calculation<{
  readonly removedCm3: number;
  readonly ratioBefore: number;
  readonly ratioAfter: number;
}> {
  const { boreMm, strokeMm, clearanceCm3, cutMm } = cylinder;
  requireRange({ what: 'The cut', value: cutMm, min: -5, max: 5, unit: 'mm' });
  const sweptCm3 = displacement({ boreMm, strokeMm, cylinders: 1 }).value.displacementL * 1000;
  const removedCm3 = (boreAreaMm2(boreMm) * cutMm) / 1000;
  return {
    value: {
      removedCm3,
      ratioBefore: ratioOf({ sweptCm3, clearanceCm3 }).value.compressionRatio,
      ratioAfter: ratioOf({ sweptCm3, clearanceCm3: clearanceCm3 - removedCm3 }).value.compressionRatio,
    },
    assumptions: ['the cut acts over the whole bore', CREVICE],
    sources: ['GEOMETRY', 'HEYWOOD'],
    caveats: ['A cut brings valves and head nearer the piston and moves the cam timing: measure both.'],
  };
}

export const compressionRatioSheet: SumSheet = {
  title: 'Static compression ratio, and the clearance volume for one',
  formula: 'CR = (V_s + V_c)/V_c; V_c = chamber + π/4·d_g²·h_g + π/4·B²·deck + dish',
  symbols: {
    V_s: 'swept volume of one cylinder, cm³',
    V_c: 'clearance volume, cm³',
    'd_g, h_g': 'bore and thickness of the gasket, mm',
    B: 'bore, mm',
    deck: 'piston below the face at top dead centre, mm; above is negative',
    dish: 'cm³; a dome is negative',
  },
  sources: ['HEYWOOD', 'GEOMETRY'],
  range: 'CR 3 to 25; ring-land crevice and inlet closing left out',
};
