import { once } from 'node:events';
import { request } from 'node:http';
import { ButtonBuilder, ButtonStyle, ComponentType, MessageFlags } from 'discord.js';
import { expect, it } from 'vitest';
import { WebSocket } from 'ws';
import type { LocalChannel } from '../../../src/channel/contract.ts';
import type { LiveFrame, PageState } from '../../../src/channel/page-api.ts';
import { connectedClient, onInteraction, testChannel } from '../../support/channel.ts';

const post = (channel: LocalChannel, path: string, body: object, headers: Record<string, string> = {}) =>
  fetch(new URL(`/page-api/${path}`, channel.pageUrl), {
    method: 'POST',
    headers: { 'content-type': 'application/json', ...headers },
    body: JSON.stringify(body),
  });

/** The status of a request whose Host header names somebody else, which fetch will not send. */
function statusWithHost(channel: LocalChannel, host: string): Promise<number | undefined> {
  return new Promise((resolve, reject) => {
    const asked = request(channel.pageUrl, { headers: { host } }, (response) => {
      response.resume();
      resolve(response.statusCode);
    });
    asked.on('error', reject);
    asked.end();
  });
}

/** Frames as they come, to be waited for one by one. */
async function follow(channel: LocalChannel, as: string) {
  const socket = new WebSocket(`${channel.pageUrl.replace('http', 'ws')}page-api/live?as=${as}`);
  const frames: LiveFrame[] = [];
  let wake = Promise.withResolvers<void>();
  socket.on('message', (data) => {
    // Sent by the server under test, whose side is typed by page-api.ts.
    frames.push(JSON.parse(String(data)) as LiveFrame);
    wake.resolve();
    wake = Promise.withResolvers();
  });
  await once(socket, 'open');
  const until = async (wanted: (frame: LiveFrame) => boolean): Promise<LiveFrame> => {
    for (;;) {
      const found = frames.find(wanted);
      if (found !== undefined) return found;
      await wake.promise;
    }
  };
  return { frames, until, [Symbol.dispose]: () => socket.terminate() };
}

it('sends the page with its types taken out and a policy that lets nothing else run', async () => {
  await using channel = await testChannel();
  const page = await fetch(channel.pageUrl);
  expect(page.status).toBe(200);
  expect(page.headers.get('content-security-policy')).toContain("default-src 'none'");
  expect(await page.text()).toContain('/page/main.ts');
  const script = await fetch(new URL('/page/main.ts', channel.pageUrl));
  expect(script.headers.get('content-type')).toContain('text/javascript');
  expect(await script.text()).not.toContain('import type');
  const library = await fetch(new URL('/page/vendor/markdown-it.js', channel.pageUrl));
  expect(await library.text()).not.toMatch(/^import /m);
  for (const path of ['/page/nothing.ts', '/page/%2e%2e/open.ts', '/page/tsconfig.json']) {
    expect((await fetch(new URL(path, channel.pageUrl))).status, path).toBe(404);
  }
});

it('lets a person join, write, and be seen by the others at once', async () => {
  await using channel = await testChannel();
  using ben = await follow(channel, 'Ben');
  expect(await (await post(channel, 'people', { name: 'Cleo' })).json()).toMatchObject({
    person: { name: 'Cleo' },
  });
  const outcome = await (await post(channel, 'type', { as: 'Cleo', line: 'Gasket is here, @Ben' })).json();
  expect(outcome).toMatchObject({ kind: 'posted', message: { author: { username: 'cleo' } } });
  const frame = await ben.until(({ kind }) => kind === 'added');
  expect(frame).toMatchObject({ entry: { mentions: [{ name: 'Ben', kind: 'person' }], private: false } });
  expect(ben.frames.some(({ kind }) => kind === 'people')).toBe(true);
});

it('gives the newest fifty and the ones before them on asking', async () => {
  await using channel = await testChannel();
  const ada = channel.hands('Ada');
  for (let n = 1; n <= 60; n += 1) await ada.type(`line ${n}`);
  const state = (await (await fetch(new URL('/page-api/state?as=Ada', channel.pageUrl))).json()) as PageState;
  expect(state.entries).toHaveLength(50);
  expect(state.more).toBe(true);
  expect(state.entries[0]?.message.content).toBe('line 11');
  const before = state.entries[0]?.message.id ?? '';
  const older = await fetch(new URL(`/page-api/messages?as=Ada&before=${before}`, channel.pageUrl));
  const { entries, more } = (await older.json()) as Pick<PageState, 'entries' | 'more'>;
  expect(entries.map(({ message }) => message.content)).toEqual(
    Array.from({ length: 10 }, (_, index) => `line ${index + 1}`),
  );
  expect(more).toBe(false);
});

it('takes files and serves them back on the same origin', async () => {
  await using channel = await testChannel();
  const form = new FormData();
  form.set('as', 'Ada');
  form.set('line', 'see this');
  form.append('files', new File(['torque, N·m\n'], 'bolts list.csv', { type: 'text/csv' }));
  const answer = await fetch(new URL('/page-api/type', channel.pageUrl), { method: 'POST', body: form });
  const outcome = (await answer.json()) as { message: { attachments: { url: string; filename: string }[] } };
  const [file] = outcome.message.attachments;
  expect(file).toMatchObject({
    filename: 'bolts_list.csv',
    url: expect.stringMatching(/^\/cdn\/attachments\//) as unknown,
  });
  const served = await fetch(new URL(file?.url ?? '', channel.pageUrl));
  expect(await served.text()).toBe('torque, N·m\n');
  expect(served.headers.get('x-content-type-options')).toBe('nosniff');
});

it('never lets an uploaded page run', async () => {
  await using channel = await testChannel();
  const outcome = await channel.hands('Ada').type('', {
    files: [{ name: 'evil.html', type: 'text/html', bytes: new TextEncoder().encode('<script>1</script>') }],
  });
  if (outcome.kind !== 'posted') throw new Error(`not posted: ${outcome.kind}`);
  const served = await fetch(outcome.message.attachments[0]?.url ?? '');
  expect(served.headers.get('content-disposition')).toContain('attachment');
  expect(served.headers.get('content-security-policy')).toContain('sandbox');
});

it('shows a private answer to the one who asked and to nobody else', async () => {
  await using channel = await testChannel();
  await using client = await connectedClient(channel);
  await client.application.commands.set([{ name: 'mine', description: 'For my eyes' }]);
  onInteraction(client, async (interaction) => {
    if (interaction.isChatInputCommand()) {
      await interaction.deferReply({ flags: MessageFlags.Ephemeral });
      const button = new ButtonBuilder({ customId: 'more', label: 'More', style: ButtonStyle.Primary });
      await interaction.editReply({
        content: 'between us',
        components: [{ type: ComponentType.ActionRow, components: [button] }],
      });
    }
    if (interaction.isButton()) await interaction.update({ content: 'more', components: [] });
  });
  using ada = await follow(channel, 'Ada');
  using ben = await follow(channel, 'Ben');
  const outcome = (await (await post(channel, 'type', { as: 'Ada', line: '/mine' })).json()) as {
    message: { id: string };
  };
  expect(outcome).toMatchObject({ kind: 'answered', private: true, message: { content: 'between us' } });
  const pressed = await post(channel, 'press', {
    as: 'Ada',
    messageId: outcome.message.id,
    customId: 'more',
  });
  expect(await pressed.json()).toMatchObject({ kind: 'changed', message: { content: 'more' } });
  const stolen = await post(channel, 'press', { as: 'Ben', messageId: outcome.message.id, customId: 'more' });
  expect(await stolen.json()).toMatchObject({ kind: 'refused' });
  expect(await ada.until((frame) => frame.kind === 'added')).toMatchObject({
    entry: { private: true, working: true, asked: { by: 'Ada', line: '/mine' } },
  });
  await channel.hands('Ada').type('now everybody');
  await ben.until((frame) => frame.kind === 'added');
  expect(ben.frames.filter(({ kind }) => kind === 'added')).toHaveLength(1);
  expect(channel.messages(channel.channels[0]?.id ?? '').map(({ content }) => content)).toEqual([
    'now everybody',
  ]);
});

it('keeps other sites out', async () => {
  await using channel = await testChannel();
  expect(await statusWithHost(channel, 'evil.example')).toBe(403);
  expect(await statusWithHost(channel, `localhost:${new URL(channel.pageUrl).port}`)).toBe(200);
  const crossed = await post(channel, 'type', { as: 'Ada', line: 'x' }, { origin: 'http://evil.example' });
  expect(crossed.status).toBe(403);
  const socket = new WebSocket(`${channel.pageUrl.replace('http', 'ws')}page-api/live`, {
    origin: 'http://evil.example',
  });
  const [error] = (await once(socket, 'error')) as [Error];
  expect(error.message).toContain('403');
});

it('says what is wrong with a request', async () => {
  await using channel = await testChannel();
  const nobody = await post(channel, 'type', { as: 'Zoe', line: 'x' });
  expect(nobody.status).toBe(400);
  expect(await nobody.json()).toEqual({ problem: 'Nobody called "Zoe" has joined yet.' });
  const unnamed = await post(channel, 'people', { name: ' ' });
  expect(unnamed.status).toBe(400);
});

it('keeps the page told of what the bot last said of its own accord, however it comes to be', async () => {
  await using channel = await testChannel();
  await using client = await connectedClient(channel);
  await client.application.commands.set([{ name: 'ask', description: 'For an answer' }]);
  onInteraction(client, async (interaction) => {
    if (!interaction.isChatInputCommand()) return;
    await interaction.reply('an answer');
    await interaction.followUp('more of it');
  });
  const noticeNow = async (): Promise<string | undefined> => {
    const asked = await fetch(new URL('/page-api/state?as=Ada', channel.pageUrl));
    // The page's own contract, kept by the compiler on the other side.
    return ((await asked.json()) as PageState).notice?.message.content;
  };
  expect(await noticeNow()).toBeUndefined();
  const place = await client.channels.fetch(channel.channels[0]?.id ?? '');
  if (place?.isSendable() !== true) throw new Error('no channel to write in');
  await place.send('first');
  const second = await place.send('second');
  await channel.hands('Ada').type('/ask');
  const line = await channel.hands('Ada').type('and you?');
  if (line.kind !== 'posted') throw new Error(`not posted: ${line.kind}`);
  await place.send({ content: 'a reply', reply: { messageReference: line.message.id } });
  expect(await noticeNow()).toBe('second');
  await second.edit('second, changed');
  expect(await noticeNow()).toBe('second, changed');
  await second.delete();
  expect(await noticeNow()).toBe('first');
});
