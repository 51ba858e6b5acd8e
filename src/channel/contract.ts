/**
 * What the local channel offers to whoever opens it: the wire that a bot connects to, and the hands of the people in
 * it. The page, the terminal and the tests all use the same hands; nothing here knows the bot.
 */

/** Real time in production, set by hand in tests; also the channel's only timer. */
export interface ChannelClock {
  nowMs(): number;
  /** Runs `task` once after `ms` unless cancelled; returns the cancel. */
  after(ms: number, task: () => void): () => void;
}

export interface ChannelOptions {
  readonly clock: ChannelClock;
  /** Loopback only unless said otherwise. */
  readonly host?: string;
  /** 0, the default, takes a free port. */
  readonly port?: number;
  /** SQLite file that keeps members, messages and attachments over a restart; absent: memory only. */
  readonly file?: string;
  readonly guildName: string;
  /** Channel names; the first is the one people find themselves in. */
  readonly channels: readonly string[];
  /** Names of the crew; the first owns the place; more can be added while it runs. */
  readonly crew: readonly string[];
  /** Name of the bot that connects; `Chargehand` unless said otherwise. */
  readonly botName?: string;
  /** Lines the page offers to somebody who has typed nothing yet. */
  readonly starters?: readonly string[];
  /** Largest single file in bytes, from people and from the bot. 50 MB by default; the platform's own is 10 MiB. */
  readonly uploadLimitBytes?: number;
  /** Privileged intents switched on for the bot; none by default, as on the platform. */
  readonly privilegedIntents?: readonly ('members' | 'presences' | 'content')[];
  /** `generous` by default: one crew on one machine need not wait. `platform`: five messages in five seconds and so on. */
  readonly rateLimits?: 'platform' | 'generous';
}

/** A message as the bot API describes it (only what readers need is typed). */
export interface WireMessage {
  readonly id: string;
  readonly channel_id: string;
  readonly content: string;
  readonly author: { readonly id: string; readonly username: string; readonly bot?: boolean };
  readonly timestamp: string;
  readonly edited_timestamp: string | null;
  readonly flags: number;
  readonly components: readonly WireComponent[];
  readonly embeds: readonly unknown[];
  readonly attachments: readonly { readonly id: string; readonly filename: string; readonly url: string }[];
}

/** A component of a message or form as the bot API describes it. */
export interface WireComponent {
  readonly type: number;
  readonly custom_id?: string;
  readonly label?: string;
  readonly content?: string;
  readonly disabled?: boolean;
  readonly components?: readonly WireComponent[];
  readonly component?: WireComponent;
  readonly accessory?: WireComponent;
  readonly [key: string]: unknown;
}

export interface OpenForm {
  readonly interactionId: string;
  readonly customId: string;
  readonly title: string;
  readonly components: readonly WireComponent[];
}

/** What came of something a person did. A deferred answer is waited for; `message` is then the finished one. */
export type Outcome =
  | { readonly kind: 'posted'; readonly message: WireMessage }
  | {
      readonly kind: 'answered';
      readonly interactionId: string;
      readonly message: WireMessage;
      readonly private: boolean;
    }
  | { readonly kind: 'changed'; readonly interactionId: string; readonly message: WireMessage }
  | { readonly kind: 'form'; readonly interactionId: string; readonly form: OpenForm }
  /** Acknowledged without a visible answer. */
  | { readonly kind: 'quiet'; readonly interactionId: string }
  /** The channel itself would not send it: no such command, a required option missing, a number out of its limits. */
  | { readonly kind: 'refused'; readonly problem: string }
  /** No answer came within the platform's three seconds. */
  | { readonly kind: 'unanswered'; readonly interactionId: string };

export interface Suggestion {
  /** What the list shows. */
  readonly label: string;
  readonly hint?: string;
  /** The whole line as it stands when this one is taken. */
  readonly line: string;
  /** Where the caret goes. */
  readonly caret: number;
}

export interface Upload {
  readonly name: string;
  readonly type: string;
  readonly bytes: Uint8Array;
}

/** One person's hands. */
export interface Hands {
  readonly id: string;
  readonly name: string;
  /** The channel between this person and the bot alone; made when first asked for. */
  directChannelId(): string;
  /** Messages this person sees in a channel, oldest first, private answers among them. */
  sees(channelId: string): readonly WireMessage[];
  /** A line as typed: `/order place what:"head gasket" due:"12 Dec"`, or a plain message. */
  type(
    line: string,
    options?: {
      channelId?: string;
      files?: readonly Upload[];
      /** Through the app on the person's own account, as where the bot itself is no member. */
      ownApp?: boolean;
    },
  ): Promise<Outcome>;
  /** Writes a message of one's own anew; the message as it is then comes back as `posted`. */
  edit(messageId: string, line: string): Promise<Outcome>;
  suggest(line: string, caret: number, options?: { channelId?: string }): Promise<readonly Suggestion[]>;
  press(messageId: string, customId: string): Promise<Outcome>;
  choose(messageId: string, customId: string, values: readonly string[]): Promise<Outcome>;
  /** Puts an emoji on a message, or takes it off again; the message as it is then comes back as `posted`. */
  react(messageId: string, emoji: string, on?: boolean): Promise<Outcome>;
  submit(form: OpenForm, values: Readonly<Record<string, string | readonly string[]>>): Promise<Outcome>;
}

/** A fault of the HTTP side. */
export interface HttpFault {
  readonly method?: string;
  /** Tried on the path after `/api/v10`. */
  readonly path: RegExp;
  /** `lost-answer` tears the connection; an object is a refusal with its documented code, such as 403, 50013. */
  readonly answer:
    | 'too-many'
    | 'server-error'
    | 'lost-answer'
    | 'hang'
    | { readonly status: number; readonly code: number; readonly message: string };
  /** Carry the request out first. Default: only for `lost-answer`. */
  readonly afterEffect?: boolean;
  readonly retryAfterMs?: number;
  readonly times?: number;
}

/** Faults for tests; each is taken off again by the function it returns, or after `times`. */
interface Faults {
  /** Answers matching requests with this instead of, or after, carrying them out. */
  http(fault: HttpFault): () => void;
  /** Tears every gateway socket down without a close frame. */
  dropSockets(): void;
  /** Asks every client to reconnect and resume. */
  askReconnect(): void;
  invalidateSession(resumable: boolean): void;
  closeWith(code: number): void;
  /** Delivers every new interaction this many times. */
  repeatInteractions(times: number): () => void;
  /** Delivers every new message this many times. */
  repeatMessages(times: number): () => void;
}

export interface LocalChannel {
  /** For discord.js: `rest: { api: apiUrl }`. */
  readonly apiUrl: string;
  readonly pageUrl: string;
  readonly token: string;
  readonly botName: string;
  readonly guildId: string;
  readonly channels: readonly { readonly id: string; readonly name: string }[];
  /** The hands of the crew member of this name, who joins if need be. */
  hands(name: string): Hands;
  /** The name behind an id, as it stands in a mention; undefined when nobody has it. */
  nameOf(personId: string): string | undefined;
  /** Oldest first; private answers are not history, and neither is what the bot is still working on. */
  messages(channelId: string): readonly WireMessage[];
  /** Told of what `messages` would show differently from now on. */
  onMessage(listener: (message: WireMessage, what: 'added' | 'changed' | 'removed') => void): () => void;
  /** Resolves once a bot is connected and has registered its commands. */
  ready(): Promise<void>;
  readonly faults: Faults;
  /** Requests that no route took; a test fails on any. */
  readonly unknownRequests: readonly string[];
  /** Requests the platform would have refused, with the body sent back. */
  readonly refusals: readonly { readonly request: string; readonly status: number; readonly body: unknown }[];
  close(): Promise<void>;
}
