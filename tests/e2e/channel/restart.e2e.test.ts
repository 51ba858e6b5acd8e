import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { ButtonBuilder, ButtonStyle, type Client, ComponentType, type TextChannel } from 'discord.js';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { connectedClient, HandClock, onInteraction, testChannel } from '../../support/channel.ts';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'channel-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

const answerButtons = (client: Client) =>
  onInteraction(client, async (interaction) => {
    if (interaction.isButton()) await interaction.update({ content: 'arrived', components: [] });
  });

it('keeps history, files, buttons, ids and nonces over a restart', async () => {
  const file = path.join(folder, 'channel.sqlite');
  const clock = new HandClock();
  const send = {
    content: 'the gasket is late',
    files: [{ attachment: Buffer.from('1,2'), name: 'late.csv' }],
    components: [
      {
        type: ComponentType.ActionRow as const,
        components: [
          new ButtonBuilder({ customId: 'arrived', label: 'Arrived', style: ButtonStyle.Success }),
        ],
      },
    ],
    nonce: 'late-1',
    enforceNonce: true,
  };
  const first = await testChannel({ file, clock });
  const placeId = first.channels[0]?.id ?? '';
  const cleo = first.hands('Cleo').id;
  const before = await connectedClient(first);
  await before.application.commands.set([{ name: 'do', description: 'Do it' }]);
  const commandIds = (await before.application.commands.fetch()).map(({ id }) => id);
  const sent = await ((await before.channels.fetch(placeId)) as TextChannel).send(send);
  await before.destroy();
  await first.close();

  await using second = await testChannel({ file, clock });
  expect(second.guildId).toBe(first.guildId);
  expect(second.channels).toEqual(first.channels);
  expect(second.hands('cleo').id).toBe(cleo);
  await using after = await connectedClient(second);
  answerButtons(after);
  expect((await after.application.commands.fetch()).map(({ id }) => id)).toEqual(commandIds);
  const place = (await after.channels.fetch(placeId)) as TextChannel;
  const kept = await place.messages.fetch(sent.id);
  expect(await (await fetch(kept.attachments.first()?.url ?? '')).text()).toBe('1,2');
  expect((await place.send(send)).id).toBe(sent.id);
  expect(await second.hands('Cleo').press(sent.id, 'arrived')).toMatchObject({
    kind: 'changed',
    message: { content: 'arrived' },
  });
  expect(BigInt((await place.send('next')).id)).toBeGreaterThan(BigInt(sent.id));
});
