import { randomBytes } from 'node:crypto';
import type { WebSocket } from 'ws';
import { LIMITS } from '../rules/limits.ts';
import type { JsonObject } from '../wire/json.ts';
import { Intent, Op } from '../wire/numbers.ts';
import type { GatewayEvent } from '../world/world.ts';

interface Dispatched {
  readonly s: number;
  readonly frame: string;
}

/**
 * One session of a bot: it outlives the socket that made it, numbers what it sends and keeps it, so that a client that
 * lost its connection gets what it missed.
 */
export class Session {
  readonly id = randomBytes(16).toString('hex');
  readonly intents: number;
  readonly #sent: Dispatched[] = [];
  #sequence = 0;
  #socket: WebSocket | undefined;

  constructor(intents: number) {
    this.intents = intents;
  }

  get connected(): boolean {
    return this.#socket !== undefined;
  }

  attach(socket: WebSocket): void {
    this.#socket = socket;
  }

  /** Forgets the socket if it is still this one. @returns whether it was. */
  detach(socket: WebSocket): boolean {
    if (this.#socket !== socket) return false;
    this.#socket = undefined;
    return true;
  }

  /** Numbers and keeps the event, and sends it when there is a socket. */
  dispatch(name: string, data: JsonObject): void {
    this.#sequence += 1;
    const s = this.#sequence;
    const frame = JSON.stringify({ op: Op.dispatch, t: name, s, d: data });
    this.#sent.push({ s, frame });
    if (this.#sent.length > LIMITS.gateway.replay) this.#sent.shift();
    this.#socket?.send(frame);
  }

  /** Sends the event if this session asked for such events. */
  offer({ name, intents, data, guarded }: GatewayEvent): void {
    if (intents !== 0 && (this.intents & intents) === 0) return;
    const blank = guarded === true && (this.intents & Intent.messageContent) === 0;
    this.dispatch(name, blank ? { ...data, content: '', embeds: [], attachments: [], components: [] } : data);
  }

  /** Can everything after `sequence` still be sent again? */
  canResume(sequence: number): boolean {
    const first = this.#sent[0]?.s ?? 1;
    return sequence >= first - 1 && sequence <= this.#sequence;
  }

  replay(sequence: number): void {
    for (const { s, frame } of this.#sent) if (s > sequence) this.#socket?.send(frame);
  }
}
