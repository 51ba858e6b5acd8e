import {
  type APIActionRowComponent,
  type APIButtonComponentWithCustomId,
  type APIStringSelectComponent,
  ButtonStyle,
  ComponentType,
} from 'discord.js';
import { writeActionRef } from '../bot/action-ref.ts';
import type { Button, Menu } from '../core/reply.ts';
import { shorten } from './as-typed.ts';

const WEIGHT = {
  main: ButtonStyle.Primary,
  plain: ButtonStyle.Secondary,
  grave: ButtonStyle.Danger,
} as const;

const ROW_BUTTONS = 5;

type ButtonRow = APIActionRowComponent<APIButtonComponentWithCustomId>;

/**
 * Lays buttons out in rows of five. The platform takes each reference once in a message, and a second button of the
 * same reference would do the same thing, so it is left out: `seen` holds those already in the message.
 */
export function buttonRows(buttons: readonly Button[], seen: Set<string>): readonly ButtonRow[] {
  const parts = buttons.flatMap((button) => buttonPart(button, seen) ?? []);
  return Array.from({ length: Math.ceil(parts.length / ROW_BUTTONS) }, (_, row) => ({
    type: ComponentType.ActionRow,
    components: parts.slice(row * ROW_BUTTONS, (row + 1) * ROW_BUTTONS),
  }));
}

function buttonPart(
  { label, does, weight }: Button,
  seen: Set<string>,
): APIButtonComponentWithCustomId | undefined {
  const ref = writeActionRef(does);
  if (seen.has(ref)) return undefined;
  seen.add(ref);
  return {
    type: ComponentType.Button,
    style: WEIGHT[weight ?? 'plain'],
    label: shorten(label, 80),
    custom_id: ref,
  };
}

/** A menu's chosen value goes under the name that its own reference carries as `_menu`. */
export function menuRow({
  prompt,
  does,
  arg,
  choices,
}: Menu): APIActionRowComponent<APIStringSelectComponent> {
  const menu: APIStringSelectComponent = {
    type: ComponentType.StringSelect,
    custom_id: writeActionRef({ ...does, args: { ...does.args, _menu: arg } }),
    placeholder: shorten(prompt, 150),
    options: choices.slice(0, 25).map(({ label, note, value }) => ({
      label: shorten(label, 100),
      value,
      ...(note === undefined ? {} : { description: shorten(note, 100) }),
    })),
  };
  return { type: ComponentType.ActionRow, components: [menu] };
}
