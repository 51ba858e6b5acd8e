import { INCH_MM } from '../../calc/units/definitions.ts';
import { isInchFraction, readDecimal } from '../quantity/decimal.ts';

export type SizeUnit = 'mm' | 'in' | 'tpi';

/** A number in the text, as typed; lengths are not yet converted. */
export interface NumberToken {
  readonly kind: 'number';
  readonly value: number;
  readonly halfDigit: number;
  readonly unit: SizeUnit | undefined;
  /** The ± beside it, in the same unit. */
  readonly plusMinus: number | undefined;
  /** `11/16`, `1-1/16`: the name of an inch size as well as a length. */
  readonly fraction: string | undefined;
  /** Above and below the stroke of a bare fraction: it could be a length over a number of threads too. */
  readonly parts: readonly [top: number, bottom: number] | undefined;
  readonly text: string;
}

export type Token =
  | NumberToken
  | { readonly kind: 'metric-name'; readonly nominal: number; readonly text: string }
  | { readonly kind: 'number-size'; readonly nominal: number; readonly text: string }
  /** "10 threads": how many pitches a span covers. */
  | { readonly kind: 'count'; readonly pitches: number; readonly text: string }
  | { readonly kind: 'to' | 'over' | 'slash' | 'dash' | 'between'; readonly text: string }
  | { readonly kind: 'word'; readonly text: string };

const INCH = String.raw`in\b\.?|inch(?:es)?\b|"|zoll\b|(?:de )?pulgadas?\b|pouces?\b`;
const MM = String.raw`mm\b|milli?met(?:er|re)s?\b|mil[ií]metros?\b`;
const TPI = String.raw`t\.? ?p\.? ?i\b\.?|tip\b|threads? (?:per|to the|/) ?inch\b|hilos por pulgada\b|filets? par pouce\b|gänge? (?:pro|je|auf den) zoll\b`;
const NUMBER = String.raw`(?:\d+(?:[.,]\d+)*|[.,]\d+)(?:e[+-]?\d{1,2}\b)?`;
const PLUS_MINUS = String.raw`(?: ?(?:±|\+ ?/ ?-|\+-) ?(?<pm>${NUMBER})(?: ?(?<pmUnit>${MM}|${INCH}|${TPI}|thou\b))?)?`;
const UNIT = `(?: ?(?<unit>${MM}|${INCH}|${TPI}))?`;

const MIXED = new RegExp(
  String.raw`(?<whole>[1-4])(?: | ?- ?)(?<top>\d{1,2}) ?/ ?(?<bottom>\d{1,2})(?![\d.,]*\d)(?:ths?\b)?${UNIT}${PLUS_MINUS}`,
  'uy',
);
const FRACTION = new RegExp(
  String.raw`(?<top>\d{1,2}) ?/ ?(?<bottom>\d{1,2})(?![\d.,]*\d)(?:ths?\b)?${UNIT}${PLUS_MINUS}`,
  'uy',
);
const PLAIN = new RegExp(
  `(?<number>${NUMBER})(?: ?(?<early>${MM}|${INCH}|${TPI}))?${PLUS_MINUS}${UNIT}`,
  'uy',
);
const METRIC = /m ?(?<nominal>\d+(?:[.,]\d+)?)(?![\d/])/uy;
const NUMBER_SIZE = /(?:#|no\.? ?|nr\.? ?)(?<nominal>\d{1,2})(?!\d)/uy;
const COUNT =
  /(?<pitches>\d{1,2}) ?(?:threads|pitches|crests?|turns?|gänge?n?|gang|hilos|filets?)\b(?! (?:per|to the|por|par|pro|je)\b)/uy;
/** Names of fittings that have figures in them: no number of theirs is a size. */
const FITTING_NAME = /(?:sae ?45|iso ?6149)(?!\d)/uy;
const WORD = /[\p{L}_](?:[\p{L}\p{M}_.']|-(?!\d))*/uy;

/**
 * Cuts a tidied thread size into numbers, names, joining signs and words.
 *
 * @returns null when a character or number makes no sense there, with the offending piece in `stuckAt`.
 */
export function tokenise(text: string): {
  readonly tokens: readonly Token[];
  readonly stuckAt: string | undefined;
} {
  const tokens: Token[] = [];
  let at = 0;
  while (at < text.length) {
    const step = tokenAt(text, at, tokens.at(-1));
    if (step === undefined) return { tokens, stuckAt: text.slice(at, at + 20) };
    if (step.token !== undefined) tokens.push(step.token);
    at = step.end;
  }
  return { tokens, stuckAt: undefined };
}

interface Step {
  readonly token: Token | undefined;
  readonly end: number;
}

function tokenAt(text: string, at: number, before: Token | undefined): Step | undefined {
  const rest = text.slice(at);
  const space = /^ +/u.exec(rest);
  if (space !== null) return { token: undefined, end: at + space[0].length };
  const sign = signAt(rest, before);
  if (sign !== undefined) return { token: sign, end: at + sign.text.length };
  const matched = (pattern: RegExp) => {
    pattern.lastIndex = at;
    return pattern.exec(text);
  };
  const fitting = matched(FITTING_NAME);
  if (fitting !== null) {
    return { token: { kind: 'word', text: fitting[0].replace(' ', '') }, end: at + fitting[0].length };
  }
  const metric = matched(METRIC);
  if (metric !== null) {
    const nominal = readDecimal(metric.groups?.['nominal'] ?? '')?.value;
    if (nominal === undefined) return undefined;
    return { token: { kind: 'metric-name', nominal, text: metric[0] }, end: at + metric[0].length };
  }
  const numberSize = matched(NUMBER_SIZE);
  if (numberSize !== null) {
    const nominal = Number(numberSize.groups?.['nominal']);
    return { token: { kind: 'number-size', nominal, text: numberSize[0] }, end: at + numberSize[0].length };
  }
  const count = matched(COUNT);
  if (count !== null) {
    const pitches = Number(count.groups?.['pitches']);
    return { token: { kind: 'count', pitches, text: count[0] }, end: at + count[0].length };
  }
  for (const pattern of [MIXED, FRACTION]) {
    const token = fractionToken(matched(pattern));
    if (token !== undefined) return { token, end: at + token.text.length };
  }
  if (/^[\d.,]/u.test(rest)) {
    const token = plainToken(matched(PLAIN));
    return token === undefined ? undefined : { token, end: at + token.text.length };
  }
  const word = matched(WORD);
  if (word !== null) return { token: { kind: 'word', text: word[0] }, end: at + word[0].length };
  return undefined;
}

/** The signs and little words that join numbers. An `x` counts as one only between numbers. */
function signAt(rest: string, before: Token | undefined): Token | undefined {
  const between = /^(?:x(?![\p{L}])|\*|by\b|;|,(?!\d)|@|\||&|with\b|and\b|=|:|\?|!|\(|\))/u.exec(rest);
  if (between !== null) return { kind: 'between', text: between[0] };
  const to = /^(?:to\b|->|→|bis\b|\.\.\.?)/u.exec(rest);
  if (to !== null) return { kind: 'to', text: to[0] };
  const over = /^(?:over\b|auf\b|across\b|along\b|per\b|in\b|on\b|en\b)/u.exec(rest);
  if (over !== null && before !== undefined && before.kind !== 'word') return { kind: 'over', text: over[0] };
  if (rest.startsWith('/')) return { kind: 'slash', text: '/' };
  if (rest.startsWith('-')) return { kind: 'dash', text: '-' };
  return undefined;
}

function unitOf(text: string | undefined): SizeUnit | undefined {
  if (text === undefined) return undefined;
  if (new RegExp(`^(?:${MM})$`, 'u').test(text)) return 'mm';
  return new RegExp(`^(?:${TPI})$`, 'u').test(text) ? 'tpi' : 'in';
}

function fractionToken(match: RegExpExecArray | null): NumberToken | undefined {
  const groups = match?.groups;
  if (match === null || groups === undefined) return undefined;
  const whole = Number(groups['whole'] ?? 0);
  const top = Number(groups['top']);
  const bottom = Number(groups['bottom']);
  // 4/8 is never how an inch size is written: it is 4 mm over 8 threads.
  const inLowestTerms = top % 2 === 1;
  if (!isInchFraction(top, bottom) || !inLowestTerms) return undefined;
  const unit = unitOf(groups['unit']);
  if (unit === 'mm' || unit === 'tpi') return undefined;
  return {
    kind: 'number',
    value: whole + top / bottom,
    halfDigit: 1 / 128,
    unit,
    plusMinus: plusMinusOf(groups, 'in'),
    fraction: `${whole === 0 ? '' : `${whole}-`}${top}/${bottom}`,
    parts: whole === 0 && unit === undefined ? [top, bottom] : undefined,
    text: match[0],
  };
}

function plainToken(match: RegExpExecArray | null): NumberToken | undefined {
  const groups = match?.groups;
  if (match === null || groups === undefined) return undefined;
  const read = readDecimal(groups['number'] ?? '');
  if (read === null) return undefined;
  const unit = unitOf(groups['early'] ?? groups['unit']) ?? unitFromPlusMinus(groups['pmUnit'], read.value);
  return {
    kind: 'number',
    value: read.value,
    halfDigit: read.halfDigit,
    unit,
    plusMinus: plusMinusOf(groups, unit),
    fraction: undefined,
    parts: undefined,
    text: match[0],
  };
}

/** "21.9 ± 0.05 mm" has its unit behind the ±. A ± in thou says inches only beside a size that can be in inches. */
function unitFromPlusMinus(unit: string | undefined, value: number): SizeUnit | undefined {
  if (unit === 'thou') return value < 2.5 ? 'in' : 'mm';
  return unitOf(unit);
}

/** The ± in the unit of the number it stands beside; `±2 thou` is two thousandths of an inch. */
function plusMinusOf(
  groups: Record<string, string | undefined>,
  unit: SizeUnit | undefined,
): number | undefined {
  const typed = groups['pm'] === undefined ? null : readDecimal(groups['pm']);
  if (typed === null) return undefined;
  const own = groups['pmUnit'];
  if (own === undefined) return typed.value;
  const inInches = own === 'thou' ? typed.value / 1000 : unitOf(own) === 'in' ? typed.value : undefined;
  if (inInches !== undefined) return unit === 'in' ? inInches : inInches * INCH_MM;
  return unit === 'in' ? typed.value / INCH_MM : typed.value;
}
