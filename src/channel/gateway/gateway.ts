import { type RawData, type WebSocket, WebSocketServer } from 'ws';
import { LIMITS } from '../rules/limits.ts';
import {
  isObject,
  type Json,
  type JsonObject,
  numberOf,
  parseJson,
  stringsIn,
  textOf,
} from '../wire/json.ts';
import { ALL_INTENTS, Close, Intent, Op } from '../wire/numbers.ts';
import { applicationPayload, guildCreatePayload, memberPayload, userPayload } from '../world/payloads.ts';
import type { World } from '../world/world.ts';
import { Session } from './session.ts';

export interface GatewayOptions {
  readonly token: string;
  /** Privileged intents switched on for the application. */
  readonly privileged: number;
}

const PRIVILEGED = Intent.members | Intent.presences | Intent.messageContent;

/** What is known of one socket. */
interface Line {
  session?: Session;
  /** Clock times of what the client sent within the last minute. */
  sentMs: number[];
}

/** The gateway: sockets come and go, sessions stay until the client says goodbye. */
export class Gateway {
  readonly server = new WebSocketServer({ noServer: true, maxPayload: 1024 * 1024 });
  readonly #world: World;
  readonly #options: GatewayOptions;
  readonly #sessions = new Map<string, Session>();
  readonly #lines = new Map<WebSocket, Line>();

  constructor(world: World, options: GatewayOptions) {
    this.#world = world;
    this.#options = options;
    this.server.on('connection', (socket, request) => {
      const query = new URL(request.url ?? '/', 'ws://loopback').searchParams;
      this.#connect(socket, query.get('v'), query.get('encoding'));
    });
    world.gateway.listen((event) => {
      for (const session of this.#sessions.values()) session.offer(event);
    });
  }

  /** Is any bot connected and past READY? */
  get online(): boolean {
    return [...this.#sessions.values()].some((session) => session.connected);
  }

  /** Is there a session that would be told of what happens now, at once or when it comes back? */
  get anySession(): boolean {
    return this.#sessions.size > 0;
  }

  dropSockets(): void {
    for (const socket of this.#lines.keys()) socket.terminate();
  }

  askReconnect(): void {
    for (const socket of this.#lines.keys()) send(socket, Op.reconnect, null);
  }

  invalidate(resumable: boolean): void {
    for (const [socket, line] of this.#lines) {
      if (!resumable && line.session !== undefined) this.#forget(socket, line.session);
      send(socket, Op.invalidSession, resumable);
    }
  }

  closeWith(code: number): void {
    for (const socket of this.#lines.keys()) socket.close(code);
  }

  close(): void {
    for (const socket of this.#lines.keys()) socket.terminate();
    this.#sessions.clear();
    this.server.close();
  }

  #connect(socket: WebSocket, version: string | null, encoding: string | null): void {
    const line: Line = { sentMs: [] };
    this.#lines.set(socket, line);
    socket.on('error', () => socket.terminate());
    socket.on('close', (code) => {
      this.#lines.delete(socket);
      const { session } = line;
      if (session === undefined || !session.detach(socket)) return;
      // A client that closes with 1000 or 1001 ends its session.
      if (code === 1000 || code === 1001) this.#sessions.delete(session.id);
      this.#world.news.tell({ kind: 'bot', online: this.online });
    });
    if (version !== '10') {
      socket.close(Close.invalidVersion, 'Invalid API version');
      return;
    }
    if (encoding !== 'json') {
      socket.close(Close.decode, 'Only JSON is spoken here');
      return;
    }
    socket.on('message', (data) => this.#receive(socket, line, data));
    send(socket, Op.hello, { heartbeat_interval: LIMITS.gateway.heartbeatMs });
  }

  #receive(socket: WebSocket, line: Line, raw: RawData): void {
    const bytes = Buffer.isBuffer(raw) ? raw : Buffer.concat(Array.isArray(raw) ? raw : [Buffer.from(raw)]);
    if (bytes.byteLength > LIMITS.gateway.payloadBytes) {
      socket.close(Close.decode, 'Payload too large');
      return;
    }
    if (this.#tooMany(line)) {
      socket.close(Close.rateLimited, 'Rate limited');
      return;
    }
    const frame = decode(bytes.toString());
    if (frame === undefined) {
      socket.close(Close.decode, 'Error while decoding payload');
      return;
    }
    const data = isObject(frame['d']) ? frame['d'] : {};
    switch (numberOf(frame['op']) ?? -1) {
      case Op.heartbeat:
        send(socket, Op.heartbeatAck, null);
        break;
      case Op.identify:
        this.#identify(socket, line, data);
        break;
      case Op.resume:
        this.#resume(socket, line, data);
        break;
      case Op.presence:
      case Op.voiceState:
        if (line.session === undefined) socket.close(Close.notAuthenticated, 'Not authenticated');
        break;
      case Op.requestMembers:
        this.#members(socket, line, data);
        break;
      default:
        socket.close(Close.unknownOpcode, 'Unknown opcode');
    }
  }

  #tooMany(line: Line): boolean {
    const now = this.#world.clock.nowMs();
    line.sentMs = [...line.sentMs.filter((ms) => now - ms < 60_000), now];
    return line.sentMs.length > LIMITS.gateway.sendsPerMinute;
  }

  #identify(socket: WebSocket, line: Line, data: JsonObject): void {
    if (line.session !== undefined) {
      socket.close(Close.alreadyAuthenticated, 'Already authenticated');
      return;
    }
    const intents = numberOf(data['intents']);
    if (data['token'] !== this.#options.token) {
      socket.close(Close.authenticationFailed, 'Authentication failed');
      return;
    }
    if (intents === undefined || (intents & ~ALL_INTENTS) !== 0) {
      socket.close(Close.invalidIntents, 'Invalid intents');
      return;
    }
    if ((intents & PRIVILEGED & ~this.#options.privileged) !== 0) {
      socket.close(Close.disallowedIntents, 'Disallowed intents');
      return;
    }
    const shard = Array.isArray(data['shard']) ? data['shard'] : [0, 1];
    if (shard[1] !== 1) {
      socket.close(Close.invalidShard, 'One shard only');
      return;
    }
    // One bot, one connection: an older session that nobody is connected to will not be resumed any more.
    for (const [id, old] of this.#sessions) if (!old.connected) this.#sessions.delete(id);
    const session = new Session(intents);
    this.#sessions.set(session.id, session);
    this.#join(socket, line, session);
    this.#greet(session);
    this.#world.news.tell({ kind: 'bot', online: true });
  }

  #greet(session: Session): void {
    const world = this.#world;
    session.dispatch('READY', {
      v: 10,
      user: { ...userPayload(world.bot), verified: true, mfa_enabled: false, email: null },
      guilds: [{ id: world.guildId, unavailable: true }],
      session_id: session.id,
      resume_gateway_url: world.origin.replace(/^http/, 'ws'),
      shard: [0, 1],
      application: { id: world.applicationId, flags: applicationPayload(world)['flags'] },
    });
    session.offer({ name: 'GUILD_CREATE', intents: Intent.guilds, data: guildCreatePayload(world) });
  }

  #resume(socket: WebSocket, line: Line, data: JsonObject): void {
    if (data['token'] !== this.#options.token) {
      socket.close(Close.authenticationFailed, 'Authentication failed');
      return;
    }
    const session = this.#sessions.get(textOf(data['session_id']) ?? '');
    const sequence = numberOf(data['seq']) ?? -1;
    if (session === undefined || !session.canResume(sequence)) {
      send(socket, Op.invalidSession, false);
      return;
    }
    this.#join(socket, line, session);
    session.replay(sequence);
    session.dispatch('RESUMED', {});
    this.#world.news.tell({ kind: 'bot', online: true });
  }

  #join(socket: WebSocket, line: Line, session: Session): void {
    line.session = session;
    session.attach(socket);
  }

  #forget(socket: WebSocket, session: Session): void {
    session.detach(socket);
    this.#sessions.delete(session.id);
    const line = this.#lines.get(socket);
    if (line !== undefined) delete line.session;
    this.#world.news.tell({ kind: 'bot', online: this.online });
  }

  /** By ids or by the start of the name; the whole list needs the privileged intent. */
  #members(socket: WebSocket, line: Line, data: JsonObject): void {
    const { session } = line;
    if (session === undefined) {
      socket.close(Close.notAuthenticated, 'Not authenticated');
      return;
    }
    const ids = typeof data['user_ids'] === 'string' ? [data['user_ids']] : stringsIn(data['user_ids']);
    const start = textOf(data['query']);
    if (ids.length === 0 && start === '' && (session.intents & Intent.members) === 0) {
      socket.close(Close.disallowedIntents, 'Disallowed intents');
      return;
    }
    const people = this.#world.people();
    const found =
      ids.length > 0
        ? people.filter((person) => ids.includes(person.id))
        : people.filter((person) => person.name.toLowerCase().startsWith((start ?? '').toLowerCase()));
    session.dispatch('GUILD_MEMBERS_CHUNK', {
      guild_id: this.#world.guildId,
      members: found.map(memberPayload),
      chunk_index: 0,
      chunk_count: 1,
      not_found: ids.filter((id) => !people.some((person) => person.id === id)),
      nonce: data['nonce'],
    });
  }
}

function send(socket: WebSocket, op: number, d: Json): void {
  socket.send(JSON.stringify({ op, d, s: null, t: null }));
}

function decode(text: string): JsonObject | undefined {
  try {
    const frame = parseJson(text);
    return isObject(frame) ? frame : undefined;
  } catch (error) {
    if (error instanceof SyntaxError) return undefined;
    throw error;
  }
}
