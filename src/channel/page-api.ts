/**
 * What the page in the browser and the local channel say to each other, on the same loopback port as the bot API.
 *
 * There is no session and no cookie: this is a tool for one machine (or one shed's network), and "who I am" is a name
 * picked on the page and sent along with each request as `as`. Whoever can reach the port can speak as anybody. What
 * is kept out is other web sites: the server checks Host and Origin.
 *
 * | request | answer |
 * |---|---|
 * | `GET /page-api/state?as=NAME&channel=ID` (both optional) | {@link PageState} |
 * | `GET /page-api/messages?as=NAME&channel=ID&before=MESSAGE_ID&limit=50` | {@link PageMessages} |
 * | `POST /page-api/type` JSON {@link TypeRequest}, or multipart with the same fields and `files` parts | Outcome |
 * | `POST /page-api/suggest` {@link SuggestRequest} | {@link SuggestAnswer} |
 * | `POST /page-api/press` {@link PressRequest} | Outcome |
 * | `POST /page-api/choose` {@link ChooseRequest} | Outcome |
 * | `POST /page-api/submit` {@link SubmitRequest} | Outcome |
 * | `POST /page-api/people` {@link JoinRequest} | {@link JoinAnswer} |
 * | WebSocket `/page-api/live?as=NAME&channel=ID` | {@link LiveFrame}s, one JSON text each; the page sends nothing |
 *
 * Outcome is the contract's `Outcome`. Anything wrong with a request itself is status 4xx with {@link Problem}.
 * In everything sent to the page, addresses of attachments are paths on this same origin (`/cdn/attachments/…`).
 */
import type { OpenForm, Suggestion, WireMessage } from './contract.ts';

/** Someone in the channel. */
export interface PagePerson {
  readonly id: string;
  readonly name: string;
  readonly bot: boolean;
}

export interface PageChannel {
  readonly id: string;
  readonly name: string;
  /** `thread` hangs below the channel `parentId`. */
  readonly kind: 'channel' | 'thread';
  readonly parentId?: string;
}

/** One entry of the day-book: the message as the bot API describes it, and what only this page has to know of it. */
export interface PageEntry {
  readonly message: WireMessage;
  /** Only the person asking sees it; it is no history and is gone when the channel restarts. */
  readonly private: boolean;
  /** The bot has said it is on it and has not answered yet; show "working". */
  readonly working: boolean;
  /** The command that this answers, as it was typed, and by whom. */
  readonly asked?: { readonly by: string; readonly line: string };
  /** The message this replies to, shortened; absent when it is no reply. */
  readonly replyTo?: { readonly id: string; readonly by: string; readonly start: string };
  readonly pinned: boolean;
  readonly reactions: readonly { readonly emoji: string; readonly names: readonly string[] }[];
  /** People and channels mentioned as `<@id>` and `<#id>` in the text, to be shown by name. */
  readonly mentions: readonly {
    readonly id: string;
    readonly name: string;
    readonly kind: 'person' | 'channel';
  }[];
}

export interface PageState {
  readonly guildName: string;
  /** Absent when nobody is named in `as` or nobody of that name has joined: ask for a name, then POST people. */
  readonly me?: PagePerson;
  readonly people: readonly PagePerson[];
  readonly channels: readonly PageChannel[];
  /** The channel whose messages follow: the one asked for, else the first. */
  readonly channelId: string;
  /** Lines worth offering to somebody who has typed nothing yet. */
  readonly starters: readonly string[];
  readonly botOnline: boolean;
  /** The newest message in this channel that the bot posted of its own accord, not as an answer to anybody. */
  readonly notice: PageEntry | null;
  /** Largest file taken, in bytes. */
  readonly uploadLimitBytes: number;
  /** Oldest first, the newest 50. */
  readonly entries: readonly PageEntry[];
  /** There are older ones; ask for them with `before` the first id. */
  readonly more: boolean;
}

export interface PageMessages {
  /** Oldest first. */
  readonly entries: readonly PageEntry[];
  readonly more: boolean;
}

export interface TypeRequest {
  readonly as: string;
  readonly channelId?: string;
  readonly line: string;
}

export interface SuggestRequest {
  readonly as: string;
  readonly channelId?: string;
  readonly line: string;
  readonly caret: number;
}

export interface SuggestAnswer {
  readonly suggestions: readonly Suggestion[];
}

export interface PressRequest {
  readonly as: string;
  readonly messageId: string;
  readonly customId: string;
}

export interface ChooseRequest extends PressRequest {
  /** Values of the chosen options; ids of people for a list of people. */
  readonly values: readonly string[];
}

export interface SubmitRequest {
  readonly as: string;
  /** `interactionId` of the form as it came in the Outcome or by {@link LiveFrame}. */
  readonly interactionId: string;
  /** By custom_id of the field; an array for lists. */
  readonly values: Readonly<Record<string, string | readonly string[]>>;
}

export interface JoinRequest {
  /** 1 to 32 characters. Joining under a name already there is no error: one comes back as that person. */
  readonly name: string;
}

export interface JoinAnswer {
  readonly person: PagePerson;
}

/** Body of every 4xx answer of the page API. */
export interface Problem {
  readonly problem: string;
}

/** Pushed over the WebSocket: what happens in the named channel, and what happens to this person. */
export type LiveFrame =
  /** First frame after opening; when `newestMessageId` is not what the page has, it loads the state anew. */
  | { readonly kind: 'hello'; readonly botOnline: boolean; readonly newestMessageId?: string }
  | { readonly kind: 'added'; readonly entry: PageEntry }
  | { readonly kind: 'changed'; readonly entry: PageEntry }
  | { readonly kind: 'removed'; readonly messageId: string; readonly channelId: string }
  /** What {@link PageState.notice} is from now on; also comes right after the hello. */
  | { readonly kind: 'notice'; readonly notice: PageEntry | null }
  /** The bot opened a form for this person (also the Outcome of the press or command that asked for it). */
  | { readonly kind: 'form'; readonly form: OpenForm }
  /** The bot came or went. */
  | { readonly kind: 'bot'; readonly online: boolean }
  /** Somebody joined, or a channel or thread was made: the whole new lists. */
  | { readonly kind: 'people'; readonly people: readonly PagePerson[] }
  | { readonly kind: 'channels'; readonly channels: readonly PageChannel[] }
  /** The bot shows that it is typing in this channel; lasts ten seconds or until its next message. */
  | { readonly kind: 'typing'; readonly by: string };
