import { ButtonStyle, ComponentType, MessageFlags, REST, Routes } from 'discord.js';
import type { LocalChannel, WireMessage } from '../../src/channel/contract.ts';

/** Puts a message under the bot's name into a channel, with buttons that carry these texts: what a forger would press. */
export async function forgedMessage(
  channel: LocalChannel,
  channelId: string,
  customIds: readonly string[],
): Promise<WireMessage> {
  const rest = new REST({ api: channel.apiUrl }).setToken(channel.token);
  const buttons = customIds.map((custom_id, at) => ({
    type: ComponentType.Button,
    style: ButtonStyle.Secondary,
    label: String(at),
    custom_id,
  }));
  const body = {
    flags: MessageFlags.IsComponentsV2,
    components: [{ type: ComponentType.ActionRow, components: buttons }],
  };
  // The channel answers with the message it has made.
  return (await rest.post(Routes.channelMessages(channelId), { body })) as WireMessage;
}

/** Registers a command that no version of ours has beside those there are; resolves once it can be typed. */
export async function registerStranger(channel: LocalChannel, name: string): Promise<void> {
  const rest = new REST({ api: channel.apiUrl }).setToken(channel.token);
  const { id } = (await rest.get(Routes.currentApplication())) as { readonly id: string };
  await rest.post(Routes.applicationCommands(id), { body: { name, description: 'Of another version' } });
}
