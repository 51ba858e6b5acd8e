import { readDecimal } from './quantity/decimal.ts';
import { tidy } from './quantity/tidy.ts';

/** A mixture as typed: what it was counted in, or what it could have been. */
export type MixtureText =
  | { readonly verdict: 'read'; readonly as: 'lambda' | 'afr'; readonly value: number }
  | { readonly verdict: 'ask'; readonly options: readonly string[]; readonly why: string }
  | { readonly verdict: 'refuse'; readonly why: string };

const LAMBDA = /lambda|lamda|λ/u;
const AFR = /\ba\/?f(?:r)?\b|:1$|to 1$/u;
/** Outside these nobody reads it off a running engine. */
const LAMBDA_RANGE = [0.4, 2] as const;
const AFR_RANGE = [3, 30] as const;

/**
 * A reading of λ or air–fuel ratio: `12.4 afr`, `12.4:1`, `λ 0.86`, `.92 lambda`, `0.86`. Without a word the size says which
 * it is; a word and a size that contradict each other are asked about.
 */
export function readMixture(typed: string): MixtureText {
  const text = tidy(typed).replaceAll('=', ' ').replaceAll(' : ', ':');
  const saidLambda = LAMBDA.test(text);
  const saidAfr = AFR.test(text);
  const figures = text
    .replace(LAMBDA, ' ')
    .replace(/\ba\/?fr?\b/gu, ' ')
    .trim()
    .replace(/ ?(?::|to) ?1$/u, '')
    .trim();
  const read = readDecimal(figures);
  if (read === null || (saidLambda && saidAfr)) {
    return { verdict: 'refuse', why: `"${typed.trim()}" is neither a λ nor an air–fuel ratio.` };
  }
  const { value } = read;
  if (saidLambda)
    return inside(value, LAMBDA_RANGE) ? { verdict: 'read', as: 'lambda', value } : lambdaSlip(value);
  if (saidAfr) return inside(value, AFR_RANGE) ? { verdict: 'read', as: 'afr', value } : afrSlip(value);
  if (inside(value, LAMBDA_RANGE)) return { verdict: 'read', as: 'lambda', value };
  if (inside(value, AFR_RANGE)) return { verdict: 'read', as: 'afr', value };
  return lambdaSlip(value);
}

function lambdaSlip(value: number): MixtureText {
  if (inside(value, AFR_RANGE))
    return { verdict: 'ask', options: [`${value} afr`], why: `λ ${value} is an air–fuel ratio?` };
  if (inside(value / 100, LAMBDA_RANGE)) {
    return { verdict: 'ask', options: [`λ ${value / 100}`], why: `λ ${value}: was the point left out?` };
  }
  return {
    verdict: 'refuse',
    why: `λ is ${LAMBDA_RANGE.join(' to ')}, an air–fuel ratio ${AFR_RANGE.join(' to ')}.`,
  };
}

function afrSlip(value: number): MixtureText {
  if (inside(value, LAMBDA_RANGE))
    return { verdict: 'ask', options: [`λ ${value}`], why: `${value} is a λ, not an air–fuel ratio?` };
  if (inside(value / 10, AFR_RANGE)) {
    return { verdict: 'ask', options: [`${value / 10} afr`], why: `${value}: was the point left out?` };
  }
  return { verdict: 'refuse', why: `An air–fuel ratio is ${AFR_RANGE.join(' to ')}.` };
}

const inside = (value: number, [min, max]: readonly [number, number]): boolean =>
  value >= min && value <= max;
