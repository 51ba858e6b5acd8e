import { describe, expect, it } from 'vitest';
import { asTyped, asTypedWithin, shorten } from '../../../src/discord/as-typed.ts';
import { HOSTILE_WORDS } from '../../support/hostile-words.ts';
import { shownAs } from '../../support/platform-markup.ts';

/** The one thing we put into words: a space of no width that keeps `@everyone` from looking like a mention. */
const withoutOurs = (words: string): string => words.replace(/@\u200b(everyone|here)/g, '@$1');

describe('words as they were typed', () => {
  it.each(HOSTILE_WORDS.map((words) => [words.slice(0, 40), words] as const))(
    'shows %j as it stands',
    (_name, words) => {
      const { words: seen, elements } = shownAs(asTyped(words));
      expect(withoutOurs(seen)).toBe(words);
      expect(elements).toEqual([]);
    },
  );

  it('is tried on words that would be shown otherwise', () => {
    const styled = HOSTILE_WORDS.filter((words) => shownAs(words).elements.length > 0);
    expect(styled.length).toBeGreaterThan(15);
  });

  it.each(['@everyone', '@here'])('breaks %s up, so that it does not even look like a mention', (mention) => {
    expect(asTyped(`hello ${mention}`)).not.toContain(mention);
  });

  it.each(['<@1>', '<@!1>', '<@&1>', '<#1>', '<t:0>', '</a:1>', '<:a:1>'])(
    'puts %s behind a backslash',
    (mention) => {
      expect(asTyped(`hello ${mention}`)).toBe(`hello \\${mention}`);
    },
  );

  it.each([
    ['short', 10, 'short'],
    ['exactly', 7, 'exactly'],
    ['one too many', 11, 'one too ma…'],
    ['🏎🏎🏎', 4, '🏎…'],
  ] as const)('shortens %j to %i as %j, never half a character', (words, most, short) => {
    expect(shorten(words, most)).toBe(short);
    expect(shorten(words, most).isWellFormed()).toBe(true);
  });

  it('counts its own backslashes when it has to keep within a length', () => {
    const cut = asTypedWithin('*'.repeat(2_000), 100);
    expect(cut.length).toBeLessThanOrEqual(100);
    expect(shownAs(cut).words).toMatch(/^\*{30,49}…$/);
  });
});
