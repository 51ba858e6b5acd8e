import { writeActionRef } from '../../src/bot/action-ref.ts';
import type { Result } from '../../src/bot/request.ts';
import type { Answer, Button } from '../../src/core/reply.ts';
import type { Asked, CrewBot } from './bot.ts';

/** Every button of a card, those of its items too. */
export function buttonsOf({ buttons = [], items = [] }: Answer): readonly Button[] {
  return [...items.flatMap((item) => item.buttons ?? []), ...buttons];
}

/** Presses a button of a card by its words. @throws when it has none of that name. */
export async function pressed(
  bot: CrewBot,
  card: Answer,
  label: string,
  fields: Readonly<Record<string, string>> = {},
  asked: Asked = {},
): Promise<Result> {
  const found = buttonsOf(card).find((button) => button.label === label);
  if (found === undefined) {
    throw new Error(
      `no button "${label}", only ${buttonsOf(card)
        .map((button) => button.label)
        .join(', ')}`,
    );
  }
  return bot.press(writeActionRef(found.does), fields, asked);
}
