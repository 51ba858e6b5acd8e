import type { Calculation } from '../../core/calculation.ts';
import { UserError } from '../../core/user-error.ts';
import { blendByVolume, type FuelProperties, oxygenatedPetrol } from './blend.ts';
import { stoichiometryOfFormula } from './stoichiometric.ts';

/** A pure fuel as the table has it. */
export interface FuelFacts {
  readonly id: string;
  readonly name: string;
  readonly carbon: number;
  readonly hydrogen: number;
  readonly oxygen: number;
  readonly nitrogen: number;
  readonly density_kg_m3: number;
  readonly calorific_kj_per_kg: number;
  readonly viscosity_mm2_s?: number | undefined;
  readonly alcohol: boolean;
  readonly liquid: boolean;
  readonly printed_afr?: number | undefined;
  readonly printed_afr_source?: readonly string[] | undefined;
  readonly source: readonly string[];
  readonly note?: string | undefined;
}

/** What is in the tank. */
export interface KnownFuel extends FuelProperties {
  /** "E85", "petrol", "90 % ethanol, 10 % toluene". */
  readonly name: string;
  readonly viscosityMm2S: number | undefined;
  readonly liquid: boolean;
}

/** What may be said of the petrol in a blend instead of the table's. */
export interface PetrolSaid {
  readonly stoichiometricAfr?: number | undefined;
  readonly densityKgM3?: number | undefined;
}

type Facts = ReadonlyMap<string, FuelFacts>;
interface Share {
  readonly id: string;
  readonly volumeRatio: number;
}

/**
 * Properties of one fuel or a blend by volume, from the table: a printed ratio outranks the one from composition.
 *
 * Sources: those of the rows, and HEYWOOD for balance and blend. Valid: blends of liquids.
 * @throws UserError 'out-of-range' for a blend with a gas, or shares that do not add up; 'not-found' for an unknown id.
 */
export function knownFuel(
  facts: Facts,
  shares: readonly Share[],
  petrol: PetrolSaid = {},
): Calculation<KnownFuel> {
  const parts = shares.map(({ id, volumeRatio }) => {
    const row = rowOf(facts, id);
    return { row, volumeRatio, worked: pureFuel(row, petrol) };
  });
  const gas = parts.find(({ row }) => !row.liquid);
  if (gas !== undefined && parts.length > 1) {
    throw new UserError('out-of-range', `${gas.row.name} is a gas: it has no share of a liquid by volume.`);
  }
  const blend = blendByVolume(parts.map(({ volumeRatio, worked }) => ({ volumeRatio, fuel: worked.value })));
  const { massRatios, ...properties } = blend.value;
  const petrolIn = parts.some(({ row }) => row.id === 'petrol');
  return {
    value: {
      ...properties,
      name: nameOf(parts),
      viscosityMm2S: viscosityOf(parts),
      liquid: gas === undefined,
    },
    assumptions: [
      ...blend.assumptions,
      ...(petrolIn
        ? parts.flatMap(({ row, worked }) => (row.id === 'petrol' ? worked.assumptions : []))
        : []),
    ],
    sources: [...new Set([...parts.flatMap(({ worked }) => worked.sources), ...blend.sources])],
    caveats: [],
  };
}

/**
 * Petrol of which the oxygen content by mass is known, as race fuels state it; the oxygen is taken to come from ethanol.
 *
 * @throws UserError as oxygenatedPetrol and knownFuel.
 */
export function oxygenFuel(
  facts: Facts,
  oxygenRatio: number,
  petrol: PetrolSaid = {},
): Calculation<KnownFuel> {
  const [base, ethanol] = [
    knownFuel(facts, [{ id: 'petrol', volumeRatio: 1 }], petrol),
    rowOf(facts, 'ethanol'),
  ];
  const carrier = pureFuel(ethanol, petrol).value;
  const worked = oxygenatedPetrol({
    oxygenRatio,
    petrolAfr: base.value.stoichiometricAfr,
    oxygenateAfr: carrier.stoichiometricAfr,
    oxygenateOxygenRatio: carrier.oxygenRatio,
  });
  const { oxygenateMassRatio, stoichiometricAfr } = worked.value;
  const volumeRatio =
    oxygenateMassRatio /
    carrier.densityKgM3 /
    (oxygenateMassRatio / carrier.densityKgM3 + (1 - oxygenateMassRatio) / base.value.densityKgM3);
  const blend = knownFuel(
    facts,
    [
      { id: 'ethanol', volumeRatio },
      { id: 'petrol', volumeRatio: 1 - volumeRatio },
    ],
    petrol,
  );
  return {
    value: {
      ...blend.value,
      stoichiometricAfr,
      oxygenRatio,
      name: `petrol with ${tidyPercent(oxygenRatio)} oxygen`,
    },
    assumptions: [...base.assumptions, ...worked.assumptions],
    sources: blend.sources,
    caveats: [],
  };
}

function rowOf(facts: Facts, id: string): FuelFacts {
  const row = facts.get(id);
  if (row === undefined) throw new UserError('not-found', `There is no fuel called ${id} here.`);
  return row;
}

function pureFuel(row: FuelFacts, petrol: PetrolSaid): Calculation<FuelProperties> {
  const balance = stoichiometryOfFormula(row);
  const said = row.id === 'petrol' ? petrol : {};
  const stoichiometricAfr = said.stoichiometricAfr ?? row.printed_afr ?? balance.value.stoichiometricAfr;
  const densityKgM3 = said.densityKgM3 ?? row.density_kg_m3;
  return {
    value: {
      densityKgM3,
      stoichiometricAfr,
      oxygenRatio: balance.value.oxygenRatio,
      calorificKjPerKg: row.calorific_kj_per_kg,
      alcoholRatio: row.alcohol ? 1 : 0,
    },
    assumptions: [
      `${row.name} ${Number(stoichiometricAfr.toFixed(2))} : 1, ${Number((densityKgM3 / 1000).toFixed(4))} g/cc`,
    ],
    sources: [...row.source, ...(row.printed_afr_source ?? ['HEYWOOD', 'IUPAC'])],
    caveats: [],
  };
}

/** E85 where it is ethanol in petrol, else the shares. */
function nameOf(parts: readonly { readonly row: FuelFacts; readonly volumeRatio: number }[]): string {
  const [first, second] = parts;
  if (first !== undefined && second === undefined) return first.row.name;
  const alcohol = parts.find(({ row }) => row.id === 'ethanol' || row.id === 'methanol');
  if (parts.length === 2 && alcohol !== undefined && parts.some(({ row }) => row.id === 'petrol')) {
    const letter = alcohol.row.id === 'ethanol' ? 'E' : 'M';
    return `${letter}${Number((alcohol.volumeRatio * 100).toFixed(1))}`;
  }
  return parts.map(({ row, volumeRatio }) => `${tidyPercent(volumeRatio)} ${row.name}`).join(', ');
}

/** Of a blend the logarithms mix by volume (Arrhenius), near enough for a pressure drop. */
function viscosityOf(
  parts: readonly { readonly row: FuelFacts; readonly volumeRatio: number }[],
): number | undefined {
  let logarithm = 0;
  for (const { row, volumeRatio } of parts) {
    if (row.viscosity_mm2_s === undefined) return undefined;
    logarithm += volumeRatio * Math.log(row.viscosity_mm2_s);
  }
  return Math.exp(logarithm);
}

const tidyPercent = (ratio: number): string => `${Number((ratio * 100).toFixed(1))} %`;
