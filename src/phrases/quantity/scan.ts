import { NUMBER_WORD, type NumberPhrase, readNumberPhrase } from './number-phrase.ts';

/** One number with the words behind it. */
export interface Amount {
  readonly number: NumberPhrase;
  readonly sign: '' | '+' | '-';
  /** A `k` stood behind the number for a thousand: `7.2k`. */
  readonly thousand: boolean;
  /** Unit and whatever else stands behind the number, as typed; empty when nothing does. */
  readonly unit: string;
  /** The number alone as typed, with its sign. */
  readonly figures: string;
}

/** A text taken apart into numbers, the words around them, and what joins them. */
export interface Scan {
  /** What stands before the first number. */
  readonly lead: string;
  readonly amounts: readonly Amount[];
  /** What stands between the amounts, one less than there are. */
  readonly joints: readonly Joint[];
}

export type Joint = '' | '±' | 'to' | 'and' | 'or' | '(' | '=' | '/' | 'x' | ':' | '+' | 'over' | 'at' | ',';

const SIGN = String.raw`(?<sign>\+(?! ?\/? ?-)|-|minus |moins |menos |meno |plus )? ?`;
const FIGURES = [
  String.raw`\d+(?: |-| - |\.)\d+ ?\/ ?\d+(?:(?:ths?|rds?)(?!\p{L}))?(?![\d.,]*\d)`,
  String.raw`\d+ ?\/ ?\d+(?:(?:ths?|rds?)(?!\p{L}))?(?![\d.,]*\d)`,
  String.raw`\d{1,3}(?:[ ']\d{3})+(?:[.,]\d+)?(?![\d/])(?:e[+-]?\d{1,3}(?!\w))?`,
  String.raw`(?:\d(?:[\d.,]|'(?=\d{3}(?!\d)))*\d|\d|[.,]\d+)(?:e[+-]?\d{1,3}(?!\w))?`,
  NUMBER_WORD,
].join('|');
const NUMBER = new RegExp(`${SIGN}(?<figures>${FIGURES})(?<thousand> ?k(?![\\p{L}/°]))?`, 'iuy');
const FIRST_NUMBER = new RegExp(`(?<![\\p{L}\\d])(?:${NUMBER_WORD})|(?:\\+|-)?[.,]?\\d`, 'iu');

/** A word joins only before a number that stands apart: the `in` of `lb/in2` does not. */
const NUMBER_APART = String.raw`(?= [+-]? ?[.,]?\d)`;
const NEXT_NUMBER = String.raw`(?= ?[+-]? ?(?:[.,]?\d|\())`;
const JOINTS: readonly (readonly [pattern: string, joint: Joint])[] = [
  [String.raw`±|\+ ?\/? ?-|plus ?(?:\/|or) ?minus`, '±'],
  [String.raw`\.{2,3}|-|~`, 'to'],
  [String.raw`(?:to|till|until|through|bis|hasta|à|a|al)(?!\p{L})`, 'to'],
  [String.raw`(?:and|und|et|y|e|&)(?!\p{L})`, 'and'],
  [String.raw`(?:or|oder|ou|o)(?!\p{L})`, 'or'],
  [String.raw`\(`, '('],
  [`[=≈≙]`, '='],
  [String.raw`(?:over|in|on|auf|sur|en|across|su)(?!\p{L})`, 'over'],
  [String.raw`(?:@|at|bei|at about)(?!\p{L})`, 'at'],
  [String.raw`\/`, '/'],
  [`[x*]`, 'x'],
  [String.raw`:|zu(?!\p{L})`, ':'],
  [String.raw`\+|plus(?!\p{L})`, '+'],
  [`,|;`, ','],
];
const JOINT = JOINTS.map(([pattern, joint]) => ({
  joint,
  pattern: new RegExp(` ?(?:${pattern}) ?${NEXT_NUMBER}`, 'iuy'),
}));
const JOINT_WORDS = String.raw`(?:to|till|until|through|bis|hasta|à|a|al|and|und|et|y|e|or|oder|ou|o|over|in|on|auf|sur|en|across|su|at|bei|zu|x|plus|plus or minus|plus ?\/ ?minus)(?!\p{L})`;
const ATOM = [
  String.raw`(?:mm|cm|dm|km|m|inch|in|ft)\^?[23](?![\d])`,
  String.raw`(?:min|s|sec)(?:\^?-1)(?![\d.,]\d)`,
  `(?:mm|cm|in)?h2o`,
  `1000(?=")`,
  `100 ?km`,
  String.raw`\p{L}[\p{L}\p{M}]*`,
  `["'#%‰°]`,
].join('|');
const UNIT = new RegExp(
  String.raw` ?(?:\/ ?)?(?!${JOINT_WORDS}${NUMBER_APART})(?:${ATOM})(?:(?:\.? ?[\/*^] ?|\. ?|-| |\. ?-)?(?!${JOINT_WORDS}${NUMBER_APART})(?:\((?:${ATOM})\)|${ATOM}))*\.?`,
  'iuy',
);

/** Takes a tidied text apart; null when something stands in it that no quantity has. */
export function scan(text: string): Scan | null {
  const first = FIRST_NUMBER.exec(text);
  if (first === null) return { lead: text, amounts: [], joints: [] };
  const { start, lead } = leadOf(text, first.index);
  const amounts: Amount[] = [];
  const joints: Joint[] = [];
  let at = start;
  let open = 0;
  for (;;) {
    const amount = amountAt(text, at);
    if (amount === null) return null;
    amounts.push(amount.amount);
    at = amount.end;
    if (open > 0 && text[at] === ')') {
      at += 1;
      open -= 1;
    }
    const rest = text.slice(at).trim();
    if (rest === '' || rest === '.' || rest === '!' || rest === '?') {
      return open === 0 ? { lead, amounts, joints } : null;
    }
    const joint = jointAt(text, at);
    if (joint === null) return null;
    if (joint.joint === '(') open += 1;
    joints.push(joint.joint);
    at = joint.end;
  }
}

/** A sign in words before the number belongs to it, not to the lead. */
function leadOf(text: string, firstAt: number): { readonly start: number; readonly lead: string } {
  const before = text.slice(0, firstAt);
  const sign = /(?:^|\s)((?:minus|moins|menos|meno|plus) |[+-] )$/iu.exec(before)?.[1] ?? '';
  return { start: firstAt - sign.length, lead: before.slice(0, before.length - sign.length).trim() };
}

function amountAt(text: string, at: number): { readonly amount: Amount; readonly end: number } | null {
  NUMBER.lastIndex = at;
  const found = NUMBER.exec(text);
  const figures = found?.groups?.['figures'];
  const number = figures === undefined ? null : readNumberPhrase(figures);
  if (found === null || figures === undefined || number === null) return null;
  const said = found.groups?.['sign']?.trim().toLowerCase() ?? '';
  const sign = said === '' ? '' : said === '+' || said === 'plus' ? '+' : '-';
  const behind = at + found[0].length;
  UNIT.lastIndex = behind;
  const unit = UNIT.exec(text)?.[0] ?? '';
  return {
    amount: {
      number,
      sign,
      thousand: found.groups?.['thousand'] !== undefined,
      unit: unit.trim(),
      figures: `${sign}${figures}`,
    },
    end: behind + unit.length,
  };
}

function jointAt(text: string, at: number): { readonly joint: Joint; readonly end: number } | null {
  for (const { joint, pattern } of JOINT) {
    pattern.lastIndex = at;
    const found = pattern.exec(text);
    if (found !== null) return { joint, end: at + found[0].length };
  }
  const gap = /\s*(?=[+-]?[.,]?\d)/uy;
  gap.lastIndex = at;
  const found = gap.exec(text);
  return found === null ? null : { joint: '', end: at + found[0].length };
}
