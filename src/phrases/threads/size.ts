import { UserError } from '../../core/user-error.ts';
import { tidy } from '../quantity/tidy.ts';
import { assignRoles } from './roles.ts';
import { foldSpans, type SizeItem } from './spans.ts';
import { type NumberToken, type Token, tokenise } from './tokens.ts';
import { SIZE_EXAMPLES, type ThreadSize } from './typed.ts';
import { isPadding, meaningOf, type WordMeaning } from './words.ts';

const MAX_LENGTH = 100;

/**
 * Reads a thread size as people type it: diameter and pitch in either order and either system, a name, a span over
 * several threads, two diameters for a taper.
 *
 * @throws UserError 'bad-input' with what to type instead; 'out-of-range' for a size no thread has; 'which-one' with
 *   the fair readings when there are several. Never a silent guess.
 */
export function readThreadSize(typed: string): ThreadSize {
  const text = tidy(typed);
  if (text === '') throw new UserError('bad-input', `Nothing to read. ${SIZE_EXAMPLES}`);
  if (text.length > MAX_LENGTH) {
    throw new UserError(
      'bad-input',
      `That is ${text.length} characters; a thread size has a dozen. ${SIZE_EXAMPLES}`,
    );
  }
  const { tokens, stuckAt } = tokenise(text);
  if (stuckAt !== undefined) throw new UserError('bad-input', `I cannot read "${stuckAt}". ${SIZE_EXAMPLES}`);
  const { items, meanings, unused } = sortWords(tokens);
  try {
    return assignRoles(foldSpans(items), meanings, unused);
  } catch (error) {
    throw error instanceof UserError ? withWords(error, items) : error;
  }
}

/** A choice replaces the whole text, so what was said beside the numbers goes with it: "female 1.5 16". */
function withWords(error: UserError, items: readonly SizeItem[]): UserError {
  const words = items.flatMap((item) =>
    item.kind === 'meaning' && item.meaning.role === undefined ? [item.text] : [],
  );
  if (error.question === undefined || words.length === 0) return error;
  const { field, choices } = error.question;
  return new UserError(error.code, error.message, {
    field,
    choices: choices.map(({ label, value }) => ({ label, value: `${value} ${words.join(' ')}` })),
  });
}

/** Parts the words from the numbers; a strange word right behind a number is a unit we do not know. */
function sortWords(tokens: readonly Token[]): {
  items: readonly SizeItem[];
  meanings: readonly WordMeaning[];
  unused: readonly string[];
} {
  const items: SizeItem[] = [];
  const meanings: WordMeaning[] = [];
  const unused: string[] = [];
  for (const [index, token] of tokens.entries()) {
    if (token.kind !== 'word') {
      items.push(token);
      continue;
    }
    const meaning = meaningOf(token.text);
    if (meaning !== undefined) {
      meanings.push(meaning);
      items.push({ kind: 'meaning', meaning, text: token.text });
    } else if (!isPadding(token.text)) {
      const before = tokens[index - 1];
      if (before !== undefined && isBareNumber(before)) {
        throw new UserError('bad-input', `"${token.text}" is no unit of a thread. ${SIZE_EXAMPLES}`);
      }
      unused.push(token.text);
    }
  }
  return { items, meanings, unused };
}

function isBareNumber(token: Token): token is NumberToken {
  return token.kind === 'number';
}
