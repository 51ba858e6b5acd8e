import { ComponentType } from 'discord.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Answer, Button } from '../../src/core/reply.ts';
import { cardOf } from '../../src/discord/card.ts';
import { HOSTILE_WORDS } from '../support/hostile-words.ts';
import { shownAs } from '../support/platform-markup.ts';

const parameters = {
  numRuns: Number(process.env['FC_RUNS'] ?? 150),
  seed: Number(process.env['FC_SEED'] ?? 20261124),
};

/** Documentation of the platform, component reference: components nested ones counted, all text together, lengths. */
const LIMIT = {
  components: 40,
  text: 4_000,
  customId: 100,
  label: 80,
  rowButtons: 5,
  option: 100,
  pinged: 100,
};

const words = (most: number) =>
  fc
    .oneof(
      { weight: 3, arbitrary: fc.string({ minLength: 1, maxLength: Math.min(most, 60), unit: 'grapheme' }) },
      { weight: 2, arbitrary: fc.constantFrom(...HOSTILE_WORDS) },
      {
        weight: 1,
        arbitrary: fc.string({ minLength: most, maxLength: most, unit: fc.constantFrom('a', '*', ' ', '<') }),
      },
    )
    .map((text) => text.slice(0, most))
    .filter((text) => text.isWellFormed() && text.trim() !== '');

const button: fc.Arbitrary<Button> = fc.record({
  label: words(120),
  does: fc.record({
    command: fc.constantFrom('order', 'undo'),
    action: fc.constantFrom('arrived', 'partly', 'this'),
    args: fc.record({ order: fc.integer({ min: 1, max: 10_000 }) }),
  }),
  weight: fc.constantFrom('main', 'plain', 'grave'),
});
const buttons = (most: number) => fc.array(button, { maxLength: most });
const texts = (most: number, length: number) => fc.array(words(length), { maxLength: most });

const given = <Value>(value: fc.Arbitrary<Value>) => fc.option(value, { nil: undefined });

const anyAnswer = fc
  .record({
    subject: words(300),
    result: words(2_500),
    tone: given(fc.constantFrom('plain', 'late', 'soon', 'done')),
    certainty: given(words(600)),
    working: given(texts(20, 300)),
    facts: given(fc.array(fc.tuple(words(80), words(400)), { maxLength: 20 })),
    items: given(
      fc.array(fc.record({ text: words(500), note: words(1_500), buttons: buttons(8) }), { maxLength: 60 }),
    ),
    menu: given(
      fc.record({
        prompt: words(300),
        does: fc.constant({ command: 'order', action: 'show', args: { notice: 1 } }),
        arg: fc.constant('order'),
        choices: fc
          .array(fc.record({ label: words(300), note: words(300) }), { minLength: 1, maxLength: 40 })
          .map((choices) => choices.map((choice, index) => ({ ...choice, value: String(index) }))),
      }),
    ),
    drafts: given(fc.array(fc.record({ label: words(100), text: words(2_000) }), { maxLength: 6 })),
    caution: given(words(950)),
    smallPrint: given(texts(10, 400)),
    buttons: given(buttons(25)),
    notify: given(fc.array(fc.bigInt({ min: 10n ** 16n, max: 10n ** 19n }).map(String), { maxLength: 60 })),
    inPlace: fc.boolean(),
  })
  .map((parts): Answer => {
    const known = Object.fromEntries(Object.entries(parts).filter(([, value]) => value !== undefined));
    // only members that may be absent were taken out
    return { ...(known as typeof parts), kind: 'answer', audience: 'crew', data: {} } as Answer;
  });

interface Part {
  readonly type: number;
  readonly content?: string;
  readonly custom_id?: string;
  readonly label?: string;
  readonly placeholder?: string;
  readonly options?: readonly { label: string; value: string; description?: string }[];
  readonly components?: readonly Part[];
}

/** Every component of a card, nested ones too. */
function flat(parts: readonly Part[]): readonly Part[] {
  return parts.flatMap((part) => [part, ...flat(part.components ?? [])]);
}

// the client's component types are a union of thirty; a card is read here as the wire has it
const partsOf = (answer: Answer): readonly Part[] => flat(cardOf(answer).components as readonly Part[]);
const textsOf = (answer: Answer): readonly string[] =>
  partsOf(answer).flatMap(({ content }) => content ?? []);

const holdsFor = (law: (answer: Answer) => void): void => fc.assert(fc.property(anyAnswer, law), parameters);

describe('any answer becomes a card that', () => {
  it('fits one message', () => {
    holdsFor((answer) => {
      expect(partsOf(answer).length).toBeLessThanOrEqual(LIMIT.components);
      expect(textsOf(answer).join('').length).toBeLessThanOrEqual(LIMIT.text);
      for (const content of textsOf(answer)) expect(content.trim()).not.toBe('');
    });
  });

  it('has buttons and menus the platform takes', () => {
    holdsFor((answer) => {
      const all = partsOf(answer);
      const ids = all.flatMap(({ custom_id: id }) => id ?? []);
      expect(new Set(ids).size).toBe(ids.length);
      for (const id of ids) expect(id.length).toBeLessThanOrEqual(LIMIT.customId);
      for (const { type, label, components, options } of all) {
        if (label !== undefined) expect(label.length).toBeLessThanOrEqual(LIMIT.label);
        if (type === ComponentType.ActionRow) {
          expect(components?.length).toBeGreaterThan(0);
          expect(components?.length).toBeLessThanOrEqual(LIMIT.rowButtons);
        }
        for (const option of options ?? []) expect(option.label.length).toBeLessThanOrEqual(LIMIT.option);
        expect(options?.length ?? 1).toBeLessThanOrEqual(25);
      }
    });
  });

  it('never loses its caution, its buttons or its menu', () => {
    holdsFor((answer) => {
      const all = partsOf(answer);
      const shown = textsOf(answer).map((content) => shownAs(content).words);
      if (answer.caution) {
        const caution = answer.caution.replace(/\s*\n\s*/g, ' ').trim();
        expect(shown.some((text) => text.replace(/@\u200b/g, '@').includes(caution))).toBe(true);
      }
      const ids = all.flatMap(({ custom_id: id }) => id ?? []);
      for (const { does } of answer.buttons ?? []) {
        expect(ids).toContain(`${does.command}/${does.action}?order=${String(does.args['order'])}`);
      }
      if (answer.menu) expect(ids).toContain('order/show?notice=1&_menu=order');
    });
  });

  it('always says what it is about and what came of it', () => {
    holdsFor((answer) => {
      const [subject = '', result = ''] = textsOf(answer).filter((content) => !content.startsWith('<@'));
      expect(subject.startsWith('### ')).toBe(true);
      const seen = shownAs(result)
        .words.replace(/@\u200b/g, '@')
        .trim();
      expect(
        seen.startsWith(
          answer.result
            .replace(/\s*\n\s*/g, ' ')
            .trim()
            .slice(0, 300),
        ),
      ).toBe(true);
    });
  });

  it('shows no element but the headings, the bold names, the quoted caution and the texts to copy that are its own', () => {
    const ours = new Set(['h2', 'h3', 'strong', 'blockquote', 'code']);
    holdsFor((answer) => {
      const elements = textsOf(answer).flatMap((content) => shownAs(content).elements);
      for (const element of elements) expect(ours).toContain(element);
      const bold = elements.filter((element) => element === 'strong').length;
      const most = (answer.items?.length ?? 0) + (answer.facts?.length ?? 0) + (answer.caution ? 1 : 0);
      expect(bold).toBeLessThanOrEqual(most);
    });
  });

  it('may ping those it names, and nobody else', () => {
    holdsFor((answer) => {
      const { allowedMentions } = cardOf(answer);
      expect(allowedMentions.parse).toEqual([]);
      expect(answer.notify ?? []).toEqual(expect.arrayContaining([...allowedMentions.users]));
      expect(allowedMentions.users.length).toBeLessThanOrEqual(LIMIT.pinged);
      const mentioned = textsOf(answer).flatMap((content) => [...content.matchAll(/(?<!\\)<@[!&]?(\d+)>/g)]);
      const fenced = (answer.drafts ?? []).map(({ text }) => text).join('');
      for (const [mention, id] of mentioned) {
        expect(fenced.includes(mention) || allowedMentions.users.includes(id ?? '')).toBe(true);
      }
    });
  });

  it('says so when something was left out', () => {
    const items = Array.from({ length: 60 }, (_, index) => ({ text: `order ${index}` }));
    const answer: Answer = {
      kind: 'answer',
      subject: 'On order',
      result: '60 open',
      items,
      audience: 'crew',
      data: {},
    };
    expect(textsOf(answer).at(-1)).toContain('More did not fit here');
    expect(textsOf({ ...answer, items: items.slice(0, 20) }).at(-1)).toContain('order 19');
  });
});
