import type { IncomingMessage } from 'node:http';
import { type WebSocket, WebSocketServer } from 'ws';
import type { LiveFrame } from '../page-api.ts';
import type { ChannelState } from '../world/state.ts';
import type { News } from '../world/world.ts';
import { pageChannels, pageEntry, pageJson, pagePerson } from './entries.ts';
import { mayBeNotice, noticeIn } from './notice.ts';

/** Pushes what happens to the pages that are open. */
export class Live {
  readonly server = new WebSocketServer({ noServer: true, maxPayload: 4096 });
  readonly #state: ChannelState;
  readonly #botOnline: () => boolean;

  constructor(state: ChannelState, botOnline: () => boolean) {
    this.#state = state;
    this.#botOnline = botOnline;
    this.server.on('connection', (socket, request) => this.#follow(socket, request));
  }

  close(): void {
    for (const socket of this.server.clients) socket.terminate();
    this.server.close();
  }

  #follow(socket: WebSocket, request: IncomingMessage): void {
    const { world } = this.#state;
    const query = new URL(request.url ?? '/', 'ws://loopback').searchParams;
    const channelId = query.get('channel') ?? world.textChannels()[0]?.id ?? '';
    const personId = world.named(query.get('as') ?? '')?.id ?? '';
    const send = (frame: LiveFrame) => socket.send(pageJson(world, frame));
    const sendNotice = () => send({ kind: 'notice', notice: noticeIn(this.#state, channelId) });
    const stop = world.news.listen((news) => {
      const frame = this.#frameOf(news, channelId, personId);
      if (frame !== undefined) send(frame);
      const concerns = news.kind === 'message' && news.message.channelId === channelId;
      if (concerns && mayBeNotice(this.#state, news.message)) sendNotice();
    });
    socket.on('close', stop);
    socket.on('error', () => socket.terminate());
    const newest = world.storage.page(channelId, { limit: 1 })[0]?.id;
    send({
      kind: 'hello',
      botOnline: this.#botOnline(),
      ...(newest === undefined ? {} : { newestMessageId: newest }),
    });
    sendNotice();
  }

  #frameOf(news: News, channelId: string, personId: string): LiveFrame | undefined {
    const { world } = this.#state;
    switch (news.kind) {
      case 'message': {
        const { message, what } = news;
        const theirs = message.privateTo === undefined || message.privateTo === personId;
        if (message.channelId !== channelId || !theirs) return undefined;
        if (what === 'removed') return { kind: 'removed', messageId: message.id, channelId };
        return { kind: what, entry: pageEntry(this.#state, message) };
      }
      case 'form':
        return news.personId === personId ? { kind: 'form', form: news.form } : undefined;
      case 'typing':
        return news.channelId === channelId
          ? { kind: 'typing', by: world.person(news.personId)?.name ?? '' }
          : undefined;
      case 'people':
        return { kind: 'people', people: world.people().map(pagePerson) };
      case 'channels':
        return { kind: 'channels', channels: pageChannels(world) };
      case 'bot':
        return { kind: 'bot', online: this.#botOnline() };
    }
  }
}
