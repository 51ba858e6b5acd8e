import type { Calculation } from '../../core/calculation.ts';
import type { SumWords } from '../sum-words.ts';
import { together } from '../together.ts';
import { sayNumber } from '../units/say.ts';
import type { Sayer } from '../units/sayer.ts';
import { blendByVolume } from './blend.ts';
import { fuelChange } from './fuel-change.ts';
import type { KnownFuel } from './known-fuel.ts';
import { mixTank, topUpFor } from './tank.ts';

const three = (value: number): string => value.toFixed(3);
const two = (value: number): string => value.toFixed(2);

/** Stoichiometric ratio, density and oxygen of a fuel, and how much more of it than of petrol. */
export function fuelAnswer(tank: Calculation<KnownFuel>, petrol: KnownFuel): SumWords {
  const { name, stoichiometricAfr, densityKgM3, oxygenRatio, alcoholRatio, calorificKjPerKg, liquid } =
    tank.value;
  // the same injectors, so that the change is the fuel's alone
  const sameInjectors = (of: KnownFuel) => ({ ...of, flowCcMin: 100 });
  const change = liquid ? fuelChange(sameInjectors(petrol), sameInjectors(tank.value)) : undefined;
  return {
    result: `${name}: ${two(stoichiometricAfr)} : 1${liquid ? `, ${three(densityKgM3 / 1000)} g/cc` : ' by mass, a gas'}`,
    working: [],
    facts: [
      ['Oxygen in it', `${sayNumber(oxygenRatio * 100, 3)} % by mass`],
      ...(alcoholRatio > 0
        ? [['Alcohol in it', `${sayNumber(alcoholRatio * 100, 3)} % by volume`] as const]
        : []),
      ['Heat in it', `${sayNumber(calorificKjPerKg / 1000, 3)} MJ/kg`],
      ...(change === undefined || Math.abs(change.value.volumeRatio - 1) < 0.001
        ? []
        : [
            [
              'Against petrol',
              `× ${three(change.value.volumeRatio)} by volume for the same air and λ`,
            ] as const,
          ]),
    ],
    calculation: together(tank, { caveats: change?.caveats ?? [] }),
    data: {
      kind: 'fuel',
      fuel: name,
      stoichiometricAfr,
      densityKgM3,
      oxygenRatio,
      alcoholRatio,
      calorificKjPerKg,
      ...(change === undefined
        ? {}
        : { volumeRatio: change.value.volumeRatio, massRatio: change.value.massRatio }),
    },
  };
}

export interface TankQuestion {
  readonly litres: number;
  readonly holds: Calculation<KnownFuel>;
  readonly added: Calculation<KnownFuel>;
  /** How much is added, or the share of alcohol wanted. */
  readonly by: { readonly addL: number } | { readonly wantedAlcoholRatio: number };
}

/** What is in the tank after topping up, or how much to add for a share. @throws UserError as topUpFor and mixTank. */
export function tankAnswer({ litres, holds, added, by }: TankQuestion, say: Sayer): SumWords {
  const inTank = { volumeL: litres, alcoholRatio: holds.value.alcoholRatio };
  const addedAlcoholRatio = added.value.alcoholRatio;
  const addL = 'addL' in by ? by.addL : topUpFor({ inTank, addedAlcoholRatio, ...by }).value.addL;
  const mixed = mixTank(inTank, { volumeL: addL, alcoholRatio: addedAlcoholRatio });
  const { volumeL, alcoholRatio } = mixed.value;
  const shareAdded = addL / volumeL;
  const blend = blendByVolume([
    { volumeRatio: 1 - shareAdded, fuel: holds.value },
    { volumeRatio: shareAdded, fuel: added.value },
  ]);
  const { stoichiometricAfr, densityKgM3 } = blend.value;
  const share = `${sayNumber(alcoholRatio * 100, 3)} % alcohol`;
  const volume = (l: number): string => say.one('volume', l);
  return {
    result:
      'addL' in by
        ? `${share}, ${two(stoichiometricAfr)} : 1, in ${say.both('volume', volumeL)}`
        : `Add ${say.both('volume', addL)} of ${added.value.name} for ${share}`,
    working: [
      `${volume(litres)} of ${holds.value.name} and ${volume(addL)} of ${added.value.name}: ${volume(volumeL)}`,
      `Stoichiometric ${two(stoichiometricAfr)} : 1, ${three(densityKgM3 / 1000)} g/cc`,
    ],
    calculation: together(mixed, blend, holds, added, {
      caveats: ['Fuel vapour burns: no flame, earth the can, fill outdoors.'],
    }),
    data: { kind: 'tank', volumeL, addL, alcoholRatio, stoichiometricAfr, densityKgM3 },
  };
}
