import { describe, expect, it } from 'vitest';
import type { Answer } from '../../../src/core/reply.ts';
import { cardOf } from '../../../src/discord/card.ts';
import { plainText, pressable } from '../../../src/say/plain-text.ts';
import { HOSTILE_WORDS } from '../../support/hostile-words.ts';

/** A message of the channel with a card in it, as the terminal gets it. */
function messageOf(answer: Answer): Parameters<typeof plainText>[0] {
  const components = JSON.parse(JSON.stringify(cardOf(answer).components)) as unknown;
  // the wire's own form of the card; what else a message carries is not looked at
  return { content: '', components, attachments: [] } as unknown as Parameters<typeof plainText>[0];
}

/** A person of this id there is, so that words which only look like a mention would turn into a name. */
const nameOf = (personId: string): string | undefined => (personId === '1' ? 'Ada' : undefined);

const answer = (changes: Partial<Answer>): Answer => ({
  kind: 'answer',
  subject: 'Order #12',
  result: 'head gasket: due Fri 4 Dec',
  audience: 'crew',
  data: {},
  ...changes,
});

describe('a card in the terminal', () => {
  it('is its words without their markup, then what can be pressed', () => {
    const text = plainText(
      messageOf(
        answer({
          certainty: '“Friday” read as Fri 4 Dec.',
          facts: [['From', 'Norvale']],
          caution: 'Hot oil.',
          smallPrint: ['as published'],
          drafts: [{ label: 'To Norvale', text: 'Good morning,\n- 2 × **gasket**' }],
          buttons: [
            { label: 'Arrived', does: { command: 'order', action: 'arrived', args: { order: 12 } } },
            { label: 'Undo', does: { command: 'undo', action: 'this', args: { change: 1 } } },
          ],
        }),
      ),
      nameOf,
    );
    for (const line of [
      'Order #12',
      'head gasket: due Fri 4 Dec',
      '“Friday” read as Fri 4 Dec.',
      'From Norvale',
      'Good morning,',
      '- 2 × **gasket**',
      'Caution Hot oil.',
      'as published',
      '[Arrived] [Undo]',
    ]) {
      expect(text).toContain(line);
    }
    expect(text).not.toMatch(/^(#|>|-#)/m);
    expect(text).not.toContain('```');
  });

  const oneLine = HOSTILE_WORDS.filter((words) => !/[\n\u200b]/.test(words) && words.length < 900);

  it.each(oneLine.map((words) => [words.slice(0, 40), words] as const))(
    'shows %j as it was typed',
    (_name, words) => {
      expect(plainText(messageOf(answer({ facts: [['Note', words]] })), nameOf)).toContain(`Note ${words}`);
    },
  );

  it('names whom it pings', () => {
    expect(plainText(messageOf(answer({ notify: ['1'] })), nameOf)).toContain('Ada');
  });

  it('lists everything that can be pressed, however nested', () => {
    const does = { command: 'order', action: 'arrived', args: { order: 1 } };
    const { components } = messageOf(
      answer({
        items: [{ text: 'one', buttons: [{ label: 'Arrived', does }] }],
        menu: {
          prompt: 'Open one',
          does: { ...does, action: 'show' },
          arg: 'order',
          choices: [{ label: 'a', value: '1' }],
        },
      }),
    );
    expect(pressable(components).map(({ custom_id: id }) => id)).toEqual([
      'order/arrived?order=1',
      'order/show?order=1&_menu=order',
    ]);
  });
});
