import type { Calculation } from '../../core/calculation.ts';
import { UserError } from '../../core/user-error.ts';
import { ccMinFromGs, gPerKwhFromLbPerHpH } from './fuel-units.ts';
import { type Aspiration, expectedFuelUse } from './fuel-use.ts';
import { type FuelFacts, type KnownFuel, knownFuel, oxygenFuel, type PetrolSaid } from './known-fuel.ts';

/** A fuel as it was read from what somebody typed. */
export type FuelRead =
  | {
      readonly verdict: 'blend';
      readonly parts: readonly { readonly id: string; readonly volumeRatio: number }[];
      readonly restIsPetrol: boolean;
    }
  | { readonly verdict: 'oxygen'; readonly oxygenRatio: number }
  | { readonly verdict: 'ask'; readonly options: readonly string[]; readonly why: string }
  | { readonly verdict: 'refuse'; readonly why: string };

/**
 * The fuel that was meant, with its properties; or the refusal or question that the reading came to.
 *
 * @throws UserError 'bad-input' or 'which-one' as the reading was; and as knownFuel.
 */
export function typedFuel(
  read: FuelRead,
  facts: ReadonlyMap<string, FuelFacts>,
  asked: { readonly field: string; readonly accepted: string; readonly petrol?: PetrolSaid },
): Calculation<KnownFuel> {
  const { field, accepted, petrol = {} } = asked;
  switch (read.verdict) {
    case 'blend': {
      const known = knownFuel(facts, read.parts, petrol);
      if (!read.restIsPetrol) return known;
      return { ...known, assumptions: ['the rest is petrol', ...known.assumptions] };
    }
    case 'oxygen':
      return oxygenFuel(facts, read.oxygenRatio, petrol);
    case 'ask':
      throw new UserError('which-one', read.why, {
        field,
        choices: read.options.map((option) => ({ label: option, value: option })),
      });
    case 'refuse':
      throw new UserError('bad-input', `${field}: ${read.why} What would be read: ${accepted}.`);
  }
}

/**
 * A liquid fuel that was meant, with the density said instead of the table's where one was.
 *
 * @throws UserError as typedFuel, and 'out-of-range' for methane, hydrogen and the like.
 */
export function typedLiquid(
  read: FuelRead,
  facts: ReadonlyMap<string, FuelFacts>,
  asked: Parameters<typeof typedFuel>[2] & { readonly densityKgM3?: number | undefined },
): Calculation<KnownFuel> {
  const known = typedFuel(read, facts, asked);
  const { name, liquid } = known.value;
  if (!liquid) {
    throw new UserError(
      'out-of-range',
      `${name} is a gas: cc/min of it mean nothing here. This sum is for liquid fuels.`,
    );
  }
  const { densityKgM3 } = asked;
  return densityKgM3 === undefined ? known : { ...known, value: { ...known.value, densityKgM3 } };
}

/** Fuel per work as it was read, or undefined where none was typed. */
export type FuelUseRead =
  | { readonly verdict: 'read'; readonly value: number; readonly unit: 'g/kWh' | 'lb/hp·h' }
  | { readonly verdict: 'refuse'; readonly why: string }
  | undefined;

/**
 * Fuel per work: as typed, or the usual for intake and fuel.
 *
 * @throws UserError 'bad-input' when it was typed and not read.
 */
export function typedFuelUse(
  read: FuelUseRead,
  aspiration: Aspiration,
  fuel: KnownFuel,
): Calculation<{ readonly bsfcGPerKwh: number }> {
  if (read === undefined) return expectedFuelUse({ aspiration, ...fuel });
  if (read.verdict === 'refuse') throw new UserError('bad-input', `bsfc: ${read.why}`);
  const bsfcGPerKwh = read.unit === 'g/kWh' ? read.value : gPerKwhFromLbPerHpH(read.value);
  return { value: { bsfcGPerKwh }, assumptions: [], sources: [], caveats: [] };
}

/** A flow of fuel, by mass or by volume. */
export type TypedFlow = { readonly massGs: number } | { readonly volumeCcMin: number };

/** A flow in cc/min whichever way it was typed. */
export function ccMinOf(flow: TypedFlow, densityKgM3: number): number {
  return 'massGs' in flow ? ccMinFromGs(flow.massGs, densityKgM3) : flow.volumeCcMin;
}

/** Up to this share of alcohol a pound an hour means the same on the bench and in the tank. */
const PETROL_LIKE_RATIO = 0.1;

/**
 * An injector's flow as it is rated. Pounds an hour are a rating with petrol: the volume carries over to another fuel, the
 * mass does not.
 */
export function ratedFlow(
  flow: TypedFlow,
  fuel: KnownFuel,
  petrolKgM3: number,
): Calculation<{ readonly flowCcMin: number }> {
  const asPetrol = 'massGs' in flow && fuel.alcoholRatio > PETROL_LIKE_RATIO;
  return {
    value: { flowCcMin: ccMinOf(flow, asPetrol ? petrolKgM3 : fuel.densityKgM3) },
    assumptions: asPetrol
      ? [
          `the pounds an hour are a rating with petrol, ${petrolKgM3 / 1000} g/cc; cc/min carry over to ${fuel.name}`,
        ]
      : [],
    sources: asPetrol ? ['COMMON'] : [],
    caveats: [],
  };
}
