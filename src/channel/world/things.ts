import type { JsonObject } from '../wire/json.ts';

/** What the channel remembers; the wire's form of each is made in `payloads.ts`. */
export interface Person {
  readonly id: string;
  readonly name: string;
  readonly bot: boolean;
  readonly joinedMs: number;
  readonly roles: readonly string[];
}

export interface Role {
  readonly id: string;
  readonly name: string;
  readonly permissions: string;
  readonly position: number;
  readonly managed: boolean;
  readonly mentionable: boolean;
}

export interface Channel {
  readonly id: string;
  readonly kind: number;
  readonly name: string;
  readonly topic: string | null;
  readonly position: number;
  readonly createdMs: number;
  /** A thread's channel. */
  readonly parentId?: string;
  /** The person on the other side of a direct channel. */
  readonly recipientId?: string;
  readonly thread?: {
    readonly ownerId: string;
    readonly archived: boolean;
    readonly locked: boolean;
    readonly archiveMinutes: number;
    readonly memberIds: readonly string[];
  };
}

export interface Attachment {
  readonly id: string;
  readonly filename: string;
  readonly size: number;
  readonly type: string;
  readonly description?: string;
  readonly title?: string;
  readonly width?: number;
  readonly height?: number;
}

interface Reaction {
  readonly emoji: string;
  readonly userIds: readonly string[];
}

export interface Message {
  readonly id: string;
  readonly channelId: string;
  readonly authorId: string;
  readonly kind: number;
  readonly content: string;
  readonly createdMs: number;
  readonly editedMs: number | null;
  readonly flags: number;
  readonly embeds: readonly JsonObject[];
  readonly components: readonly JsonObject[];
  readonly attachments: readonly Attachment[];
  readonly mentionIds: readonly string[];
  readonly mentionRoleIds: readonly string[];
  readonly mentionEveryone: boolean;
  readonly reactions: readonly Reaction[];
  readonly pinnedMs: number | null;
  readonly nonce?: string;
  readonly reference?: { readonly channelId: string; readonly messageId: string };
  /** The command or component that this answers. */
  readonly asked?: {
    readonly interactionId: string;
    readonly kind: number;
    readonly userId: string;
    readonly name?: string;
    readonly line?: string;
    readonly sourceMessageId?: string;
    readonly ownApp?: boolean;
  };
  /** Set when the bot answered over a webhook route. */
  readonly webhook?: boolean;
  readonly threadId?: string;
  /** The only person who sees it; such messages are never history. */
  readonly privateTo?: string;
}

export interface Command {
  readonly id: string;
  /** Absent: registered for every place. */
  readonly guildId?: string;
  readonly kind: number;
  readonly name: string;
  readonly version: string;
  readonly body: JsonObject;
}

export interface ScheduledEvent {
  readonly id: string;
  readonly body: JsonObject;
}

export interface StoredFile {
  readonly id: string;
  readonly name: string;
  readonly type: string;
  readonly bytes: Uint8Array;
}
