import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { UserError } from '../../core/user-error.ts';
import { requireRange } from '../require-range.ts';
import { waterBoiling } from './water-boiling.ts';

/** Water at 20 °C, kg/m³. */
const WATER_KG_M3 = 998.2;

/** Halvings that bring a pressure or a share to its twelfth digit. */
const HALVINGS = 50;

interface Curve {
  /** What the shares of the points are of. */
  readonly basis: 'mass' | 'volume';
  readonly points: readonly { readonly shareRatio: number; readonly temperatureC: number }[];
  readonly source: readonly string[];
}

export interface Glycol {
  readonly id: string;
  readonly name: string;
  readonly densityKgM3: number;
  readonly freezing: Curve;
  /** At the pressure where its first point is water's boiling point. */
  readonly boiling: Curve;
}

/**
 * Share by mass of a share by volume: w = v·ρ_g/(v·ρ_g + (1 − v)·ρ_w), at 20 °C.
 *
 * Source: balance of masses (key DEFINITION), densities CRC. Valid: 0 to 1. Not for: the contraction on mixing.
 * @throws UserError 'out-of-range' outside it.
 */
export function massShare(mix: {
  readonly volumeRatio: number;
  readonly densityKgM3: number;
}): Calculation<{ readonly massRatio: number }> {
  const { volumeRatio, densityKgM3 } = mix;
  requireRange({
    what: 'The share by volume',
    value: volumeRatio,
    min: 0,
    max: 1,
    unit: '',
    shown: 'percent',
  });
  const glycol = volumeRatio * densityKgM3;
  return {
    value: { massRatio: glycol / (glycol + (1 - volumeRatio) * WATER_KG_M3) },
    assumptions: [],
    sources: ['DEFINITION', 'CRC'],
    caveats: [],
  };
}

/** The inverse of massShare. @throws UserError 'out-of-range' outside 0 to 1. */
export function volumeShare(mix: {
  readonly massRatio: number;
  readonly densityKgM3: number;
}): Calculation<{ readonly volumeRatio: number }> {
  const { massRatio, densityKgM3 } = mix;
  requireRange({ what: 'The share by mass', value: massRatio, min: 0, max: 1, unit: '', shown: 'percent' });
  const glycol = massRatio / densityKgM3;
  return {
    value: { volumeRatio: glycol / (glycol + (1 - massRatio) / WATER_KG_M3) },
    assumptions: [],
    sources: ['DEFINITION', 'CRC'],
    caveats: [],
  };
}

/**
 * Freezing point of glycol and water, from a published table by straight lines between its rows.
 *
 * Source: the table's (keys ASHRAE, LANGE). Valid: from water to the last row, about 58 % by volume; beyond, more glycol makes
 * it freeze sooner. Not for: what the maker's inhibitors change, 1 to 3 K.
 * @throws UserError 'out-of-range' beyond the table.
 */
export function glycolFreezing(mix: {
  readonly volumeRatio: number;
  readonly glycol: Glycol;
}): Calculation<{ readonly freezingC: number }> {
  const { volumeRatio, glycol } = mix;
  return {
    value: { freezingC: along(glycol.freezing, volumeRatio, glycol) },
    assumptions: [`${glycol.name} and water, shares by volume, before the maker's inhibitors (1 to 3 K)`],
    sources: [...glycol.freezing.source],
    caveats: ["The maker's table and a refractometer outrank this."],
  };
}

/**
 * Share by volume that stays liquid down to a temperature: glycolFreezing solved for the share by halving.
 *
 * Source and limits: as there.
 * @throws UserError 'out-of-range' above the freezing point of water, or below that of the table's last row.
 */
export function glycolForFreezing(wanted: {
  readonly freezingC: number;
  readonly glycol: Glycol;
}): Calculation<{ readonly volumeRatio: number }> {
  const { freezingC, glycol } = wanted;
  const at = (volumeRatio: number) => glycolFreezing({ volumeRatio, glycol });
  let [low, high] = [0, mostVolumeRatio(glycol.freezing, glycol.densityKgM3)];
  requireRange({
    what: 'The freezing point',
    value: freezingC,
    min: at(high).value.freezingC,
    max: at(low).value.freezingC,
    unit: '°C',
  });
  for (let pass = 0; pass < HALVINGS; pass += 1) {
    const middle = (low + high) / 2;
    if (at(middle).value.freezingC > freezingC) low = middle;
    else high = middle;
  }
  return { ...at(high), value: { volumeRatio: high } };
}

/**
 * Boiling point of glycol and water under pressure: that of water, and the published difference at the pressure of the sea.
 *
 * Source: waterBoiling and the table (key ASHRAE, from memory). Valid: as they are. The difference grows a little with
 * pressure, so that the real mixture boils rather later.
 * @throws UserError 'out-of-range' beyond the table.
 */
export function glycolBoiling(mix: {
  readonly volumeRatio: number;
  readonly glycol: Glycol;
  readonly pressureKpa: number;
}): Calculation<{ readonly boilingC: number; readonly waterBoilingC: number }> {
  const { volumeRatio, glycol, pressureKpa } = mix;
  const water = waterBoiling({ pressureKpa });
  const { boilingC: waterBoilingC } = water.value;
  const raised = along(glycol.boiling, volumeRatio, glycol) - along(glycol.boiling, 0, glycol);
  return {
    value: { boilingC: waterBoilingC + raised, waterBoilingC },
    assumptions: ['the mixture boils as much later than water as it does at sea level'],
    sources: [...water.sources, ...glycol.boiling.source],
    caveats: [
      'Never open a hot system: under pressure it is above its open boiling point, and scalds. A hot spot boils before the gauge shows it.',
    ],
  };
}

/** No cap of a car holds more, kPa. */
const MOST_CAP_KPA = 300;

/**
 * Cap that lets a mixture boil no sooner than wanted: glycolBoiling solved for the pressure by halving.
 *
 * Source and limits: as there (key ASHRAE). Valid: caps up to 300 kPa.
 * @throws UserError 'out-of-range' when it boils later without a cap, or no cap is enough.
 */
export function capForBoiling(mix: {
  readonly volumeRatio: number;
  readonly glycol: Glycol;
  readonly boilingC: number;
  readonly atmosphereKpa: number;
}): Calculation<{ readonly capKpa: number }> {
  const { boilingC, atmosphereKpa, ...rest } = mix;
  const under = (capKpa: number) => glycolBoiling({ ...rest, pressureKpa: atmosphereKpa + capKpa });
  const [open, most] = [under(0), under(MOST_CAP_KPA)];
  if (boilingC < open.value.boilingC || boilingC > most.value.boilingC) {
    throw new UserError(
      'out-of-range',
      `It boils at ${open.value.boilingC.toFixed(0)} °C without a cap and at ${most.value.boilingC.toFixed(0)} °C under ${MOST_CAP_KPA} kPa: ask for one between, or change the share.`,
    );
  }
  let [low, high] = [0, MOST_CAP_KPA];
  for (let pass = 0; pass < HALVINGS; pass += 1) {
    const middle = (low + high) / 2;
    if (under(middle).value.boilingC < boilingC) low = middle;
    else high = middle;
  }
  return { ...under(high), value: { capKpa: high } };
}

export const glycolSheet: SumSheet = {
  title: 'Coolant: freezing and boiling point by share of glycol',
  formula: 'w = v·ρ_g/(v·ρ_g + (1 − v)·ρ_w); freezing point from the table; T = T_s(p) + ΔT(w)',
  symbols: {
    v: 'share by volume',
    w: 'share by mass',
    ρ: 'density at 20 °C, kg/m³',
    ΔT: 'how much later than water it boils',
  },
  sources: ['ASHRAE', 'LANGE', 'IF97', 'CRC'],
  range: 'ethylene glycol to 60 % by mass, propylene glycol to 60 % by volume; without inhibitors',
};

/** Share by volume of a table's last row. */
function mostVolumeRatio({ basis, points }: Pick<Curve, 'basis' | 'points'>, densityKgM3: number): number {
  const most = points.at(-1)?.shareRatio ?? 0;
  return basis === 'volume' ? most : volumeShare({ massRatio: most, densityKgM3 }).value.volumeRatio;
}

function along({ basis, points }: Curve, volumeRatio: number, { densityKgM3, name }: Glycol): number {
  const most = points.at(-1)?.shareRatio ?? 0;
  const said = basis === 'volume' ? volumeRatio : massShare({ volumeRatio, densityKgM3 }).value.massRatio;
  // the limit is shown rounded up
  const share = Math.min(said, most);
  const mostVolume = mostVolumeRatio({ basis, points }, densityKgM3);
  requireRange({
    what: `The share of ${name} by volume`,
    value: volumeRatio * 100,
    min: 0,
    max: Math.ceil(mostVolume * 1000) / 10,
    unit: '%',
  });
  const next = Math.max(
    1,
    points.findIndex(({ shareRatio }) => shareRatio >= share),
  );
  const [low, high] = [points[next - 1], points[next]];
  if (low === undefined || high === undefined) throw new RangeError(`the table of ${name} has too few rows`);
  const part = (share - low.shareRatio) / (high.shareRatio - low.shareRatio);
  return low.temperatureC + part * (high.temperatureC - low.temperatureC);
}
