import { writeActionRef } from '../../src/bot/action-ref.ts';
import type { Result } from '../../src/bot/request.ts';
import type { Button } from '../../src/core/reply.ts';
import { type Asked, type CrewBot, cardIn } from './bot.ts';

/** Every button of a card, those of its items too. */
export function buttonsIn(result: Result): readonly Button[] {
  const { buttons = [], items = [] } = cardIn(result);
  return [...items.flatMap((item) => item.buttons ?? []), ...buttons];
}

export const labelsIn = (result: Result): readonly string[] => buttonsIn(result).map(({ label }) => label);

/** Presses the button of these words. @throws Error naming the buttons there are. */
export function pressLabel(
  bot: CrewBot,
  result: Result,
  label: string,
  how: Asked & { readonly fields?: Readonly<Record<string, string>> } = {},
): Promise<Result> {
  const button = buttonsIn(result).find((one) => one.label === label);
  if (button === undefined) throw new Error(`no button "${label}", only ${labelsIn(result).join(', ')}`);
  const { fields = {}, ...asked } = how;
  return bot.press(writeActionRef(button.does), fields, asked);
}

/** Presses one button after the other, each on what the one before brought. */
export async function pressAll(bot: CrewBot, first: Result, ...labels: readonly string[]): Promise<Result> {
  let result = first;
  for (const label of labels) result = await pressLabel(bot, result, label);
  return result;
}
