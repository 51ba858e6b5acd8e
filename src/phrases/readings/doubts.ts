import { readQuantity } from '../quantity/read-quantity.ts';
import { aboveAir, gaugeOf } from './above-air.ts';
import type { KindSpec } from './kind-spec.ts';
import { doubt, refusal, withAmount } from './outcome.ts';
import type { LineAmount, Piece } from './take-apart.ts';
import { PETROL_AFR } from './values.ts';

/** A short word right behind a figure stands where a unit does: "5 l" is no pressure. @throws NotRead for one. */
export function refuseStrangeUnit(
  values: readonly LineAmount[],
  pieces: readonly Piece[],
  { name }: KindSpec,
  text: string,
): void {
  for (const amount of values) {
    const next = pieces[pieces.indexOf(amount) + 1];
    const word = next?.type === 'unknown' ? text.slice(next.start, next.end) : '';
    if (amount.unit === '' && /^\p{L}{1,3}$/u.test(word) && (next?.start ?? 0) <= amount.end + 1) {
      throw refusal(`${amount.figures} ${word} is no ${name}.`);
    }
  }
}

/** Words of a pressure that is counted from nothing on most instruments, and from the air on some. */
const FROM_NOTHING: readonly string[] = ['map', 'manifold pressure'];

/** A manifold pressure whose zero nobody said: above the air, or above nothing? */
export function refuseUnsaidZero(
  kind: KindSpec,
  amounts: readonly LineAmount[],
  pieces: readonly Piece[],
  text: string,
): void {
  const word = pieces.find((piece) => piece.type === 'kind' && FROM_NOTHING.includes(piece.word));
  const [amount] = amounts;
  if (kind.name !== 'boost' || word === undefined || amount === undefined) return;
  const read = readQuantity(`${amount.figures} ${amount.unit}`, 'pressure');
  if (read.verdict !== 'read' || read.reference === 'gauge') return;
  const [first, second] = word.start < amount.start ? [amount, word] : [word, amount];
  const instead = (figure: string): string =>
    withAmount(
      withAmount(text, first, first === word ? 'boost' : figure),
      second,
      second === word ? 'boost' : figure,
    );
  const typed = `${amount.figures} ${amount.unit}`;
  if (read.reference === 'absolute') throw aboveAir(read, instead);
  throw doubt(`Is ${typed} counted from nothing, or above the air outside?`, [
    instead(gaugeOf(read)),
    instead(typed),
  ]);
}

/** Fuels whose own scale is so near to petrol's that one figure does for both. */
const LIKE_PETROL = /^(?:petrol|E0?[0-9]|E10)$/;

/** An air–fuel ratio beside another fuel than petrol: on whose scale? */
export function refuseOtherScales(
  lambdas: readonly number[],
  isAfr: boolean,
  fuel: string | undefined,
  pieces: readonly Piece[],
  text: string,
  afrOf: (fuel: string) => number | undefined,
): void {
  const [lambda] = lambdas;
  if (!isAfr || fuel === undefined || LIKE_PETROL.test(fuel) || lambda === undefined) return;
  const afr = lambda * PETROL_AFR;
  const own = afrOf(fuel);
  const rest = pieces
    .filter(({ type }) => type !== 'kind' && type !== 'amount')
    .map(({ start, end }) => text.slice(start, end));
  const conditions = pieces.flatMap((piece) =>
    piece.type === 'amount' && piece.fields.length > 0 && !piece.fields.includes('ratio')
      ? [text.slice(piece.start, piece.end)]
      : [],
  );
  const as = (value: number): string =>
    ['lambda', value.toFixed(3).replace(/0$/u, ''), ...rest, ...conditions].join(' ');
  throw doubt(`${Number(afr.toFixed(2))} on petrol's scale, as most gauges show it, or on that of ${fuel}?`, [
    as(lambda),
    ...(own === undefined ? [] : [as(afr / own)]),
  ]);
}
