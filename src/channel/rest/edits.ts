import { type Allowed, allowedFrom, DEFAULTS } from '../rules/mentions.ts';
import { type Before, checkMessage } from '../rules/message.ts';
import { type JsonObject, objectsIn, textOf } from '../wire/json.ts';
import { Flag } from '../wire/numbers.ts';
import { checkSizes, type FilePlan, planFiles } from '../world/attachments.ts';
import { mentionsIn } from '../world/mentions.ts';
import { numbered } from '../world/messages.ts';
import type { ChannelState } from '../world/state.ts';
import type { Message } from '../world/things.ts';
import type { Body } from './body.ts';

/** What the body of a message asks for, checked; `files.keep()` once it is to be carried out. */
export interface Asked {
  readonly content: string;
  readonly flags: number;
  readonly embeds: readonly JsonObject[];
  readonly components: readonly JsonObject[];
  readonly files: FilePlan;
  readonly allowed: Allowed;
}

/** @throws ApiError when the platform would not take this message. */
export function newMessage(state: ChannelState, { json, uploads }: Body, by: keyof typeof DEFAULTS): Asked {
  checkSizes(uploads, state.uploadLimitBytes);
  const files = planFiles(state.world, json, uploads);
  checkMessage(json, { by, files: files.attachments.map((file) => file.filename) });
  return {
    content: textOf(json['content']) ?? '',
    flags: typeof json['flags'] === 'number' ? json['flags'] : 0,
    embeds: objectsIn(json['embeds']),
    components: objectsIn(json['components']),
    files,
    allowed: allowedFrom(json['allowed_mentions'], DEFAULTS[by]),
  };
}

/**
 * Edits a message: what the body does not name stays; Components V2, once on, stay on.
 * @throws ApiError when the platform would not take this edit.
 */
export function editMessage(
  state: ChannelState,
  message: Message,
  { json, uploads }: Body,
  by: keyof typeof DEFAULTS,
): Message {
  checkSizes(uploads, state.uploadLimitBytes);
  const files = planFiles(state.world, json, uploads, message.attachments);
  const wasLoading = (message.flags & Flag.loading) !== 0;
  checkMessage(json, {
    by,
    files: files.attachments.map((file) => file.filename),
    before: before(message),
  });
  const content = json['content'] === undefined ? message.content : (textOf(json['content']) ?? '');
  const embeds = json['embeds'] === undefined ? message.embeds : objectsIn(json['embeds']);
  const components =
    json['components'] === undefined ? message.components : numbered(objectsIn(json['components']));
  const allowed = allowedFrom(json['allowed_mentions'], DEFAULTS[by]);
  files.keep();
  return state.messages.change(
    {
      ...message,
      content,
      embeds,
      components,
      attachments: files.attachments,
      flags: flagsAfter(message.flags, json['flags']),
      ...mentionsIn(state.world, content, components, allowed),
    },
    !wasLoading,
  );
}

const before = (message: Message): Before => ({
  flags: message.flags,
  content: message.content,
  embeds: message.embeds.length,
  components: message.components.length,
  files: message.attachments.map((file) => file.filename),
});

/** An edit may switch SUPPRESS_EMBEDS, and Components V2 on; it ends "thinking"; the rest is as it was. */
function flagsAfter(flags: number, asked: unknown): number {
  const settled = flags & ~Flag.loading;
  if (typeof asked !== 'number') return settled;
  return (settled & ~Flag.suppressEmbeds) | (asked & (Flag.suppressEmbeds | Flag.componentsV2));
}
