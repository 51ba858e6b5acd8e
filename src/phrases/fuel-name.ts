import { readDecimal } from './quantity/decimal.ts';
import { tidy } from './quantity/tidy.ts';

/** A share of a blend by volume, by the id of the fuel. */
export interface FuelShare {
  readonly id: string;
  readonly volumeRatio: number;
}

/** What a fuel as typed means. */
export type FuelText =
  | { readonly verdict: 'blend'; readonly parts: readonly FuelShare[]; readonly restIsPetrol: boolean }
  /** Petrol of which the oxygen content by mass is known. */
  | { readonly verdict: 'oxygen'; readonly oxygenRatio: number }
  | { readonly verdict: 'ask'; readonly options: readonly string[]; readonly why: string }
  | { readonly verdict: 'refuse'; readonly why: string };

export type FuelNames = ReadonlyMap<string, readonly FuelShare[]>;

/** What could have been typed, for a refusal. */
export const FUEL_EXAMPLES =
  'petrol, E85, M15, LPG, diesel, 70% ethanol, 90% E85 + 10% toluene, petrol 2.7% oxygen';

const NUMBER = String.raw`(?<number>\d[\d.,]*)`;
const OXYGEN = new RegExp(
  `${NUMBER} ?%? ?(?:m/m|by mass|mass)? ?(?:of )?(?:oxygen|o2)\\b|(?:oxygen|o2) ?${NUMBER.replace('number', 'after')} ?%?`,
  'u',
);
const LETTERED = /^(?<kind>[em]) ?(?<share>\d{1,3})$/u;
const SHARE = new RegExp(
  `^${NUMBER} ?(?<unit>%|vol%|l|litres?|liters?|gal|parts?)? ?(?:of )?(?<name>.+)$`,
  'u',
);

/**
 * A fuel as people type it: a name, `E85`, `M15`, `70% ethanol`, `90% E85 + 10% toluene`, `20 L petrol + 5 L ethanol`,
 * `petrol 2.7% oxygen`. Shares are by volume; what is left of one share is petrol.
 */
export function readFuelName(typed: string, names: FuelNames): FuelText {
  const text = tidy(typed);
  if (text === '') return refuse('No fuel typed.');
  if (text.length > 80) return refuse('That is too long for a fuel.');
  if (text === 'gas') return { verdict: 'ask', options: ['petrol', 'LPG', 'methane'], why: 'Which gas?' };
  const oxygen = OXYGEN.exec(text)?.groups;
  if (oxygen !== undefined) return withOxygen(oxygen['number'] ?? oxygen['after'] ?? '');
  const single = named(text, names);
  if (single !== undefined) return { verdict: 'blend', parts: single, restIsPetrol: false };
  return mixed(text, names);
}

/** A name or a lettered blend, as the parts it stands for. */
function named(text: string, names: FuelNames): readonly FuelShare[] | undefined {
  const known = names.get(text) ?? names.get(text.replace(/ fuel$/u, ''));
  if (known !== undefined) return known;
  const lettered = LETTERED.exec(text)?.groups;
  const share = Number(lettered?.['share']) / 100;
  if (lettered === undefined || share > 1) return undefined;
  const id = lettered['kind'] === 'e' ? 'ethanol' : 'methanol';
  return [
    { id, volumeRatio: share },
    { id: 'petrol', volumeRatio: 1 - share },
  ].filter(({ volumeRatio }) => volumeRatio > 0);
}

function withOxygen(number: string): FuelText {
  const value = readDecimal(number)?.value;
  return value === undefined
    ? refuse(`"${number}" is no oxygen content.`)
    : { verdict: 'oxygen', oxygenRatio: value / 100 };
}

function mixed(text: string, names: FuelNames): FuelText {
  const portions: { readonly amount: number; readonly unit: string; readonly parts: readonly FuelShare[] }[] =
    [];
  for (const piece of text.split(/ ?(?:\+|&|;|, (?=\d)| and | in ) ?/u)) {
    const groups = SHARE.exec(piece)?.groups;
    const amount = groups === undefined ? null : readDecimal(groups['number'] ?? '');
    const parts = named(groups?.['name'] ?? piece, names);
    if (parts === undefined) return refuse(`"${groups?.['name'] ?? piece}" is no fuel that is known here.`);
    const unit = (groups?.['unit'] ?? '%')
      .replace(/^vol%$/u, '%')
      .replace(/^lit(?:re|er)s?$/u, 'l')
      .replace(/s$/u, '');
    if (amount === null && groups !== undefined) return refuse(`"${piece}" is no share.`);
    portions.push({ amount: amount?.value ?? Number.NaN, unit, parts });
  }
  return shared(portions);
}

function shared(
  portions: readonly {
    readonly amount: number;
    readonly unit: string;
    readonly parts: readonly FuelShare[];
  }[],
): FuelText {
  const [first, second] = portions;
  if (first === undefined) return refuse('No fuel typed.');
  if (new Set(portions.map(({ unit }) => unit)).size > 1) return refuse('Give all shares in one unit.');
  const open = portions.filter(({ amount }) => Number.isNaN(amount));
  const said = portions.reduce((sum, { amount }) => sum + (Number.isNaN(amount) ? 0 : amount), 0);
  const percent = first.unit === '%';
  if (open.length > 1 || (open.length === 1 && !percent)) return refuse('Give a share for each part.');
  if (percent && said > 100.01) return refuse(`The shares add up to ${Number(said.toFixed(2))} %.`);
  const alone = second === undefined;
  if (percent && open.length === 0 && !alone && Math.abs(said - 100) > 0.01) {
    return refuse(`The shares add up to ${Number(said.toFixed(2))} %, not to 100 %.`);
  }
  if (said <= 0) return refuse('A blend of nothing.');
  const whole = percent ? 100 : said;
  const restIsPetrol = alone && percent && said < 100;
  const all = portions.flatMap(({ amount, parts }) => {
    const volumeRatio = (Number.isNaN(amount) ? whole - said : amount) / whole;
    return parts.map((part) => ({ id: part.id, volumeRatio: part.volumeRatio * volumeRatio }));
  });
  const rest = restIsPetrol ? [{ id: 'petrol', volumeRatio: 1 - said / 100 }] : [];
  return { verdict: 'blend', parts: summed([...all, ...rest]), restIsPetrol };
}

function summed(shares: readonly FuelShare[]): readonly FuelShare[] {
  const byId = Map.groupBy(shares, ({ id }) => id);
  return [...byId].map(([id, same]) => ({
    id,
    volumeRatio: same.reduce((sum, one) => sum + one.volumeRatio, 0),
  }));
}

const refuse = (why: string): FuelText => ({ verdict: 'refuse', why });
