import type { WireMessage } from '../contract.ts';
import { compact, isObject, type Json, type JsonObject, objectsIn } from '../wire/json.ts';
import { ButtonStyle, Kind, Part, SELECTS } from '../wire/numbers.ts';
import { channelPayload, iso, userPayload } from './payloads.ts';
import type { Attachment, Message } from './things.ts';
import type { World } from './world.ts';

/** Where an attachment is served; the page, with the same origin, uses the path alone. */
const filePath = (channelId: string, file: Attachment): string =>
  `/cdn/attachments/${channelId}/${file.id}/${encodeURIComponent(file.filename)}`;

export function attachmentPayload(world: World, channelId: string, file: Attachment): JsonObject {
  const url = world.origin + filePath(channelId, file);
  return compact({
    id: file.id,
    filename: file.filename,
    size: file.size,
    url,
    proxy_url: url,
    content_type: file.type,
    width: file.width,
    height: file.height,
    description: file.description,
    title: file.title,
  });
}

/** A message as the bot API gives it. */
export function messagePayload(world: World, message: Message, nested = false): JsonObject {
  const author = world.person(message.authorId) ?? world.bot;
  const users = (ids: readonly string[]) =>
    ids.flatMap((id) => {
      const person = world.person(id);
      return person === undefined ? [] : [userPayload(person)];
    });
  const referenced =
    message.reference === undefined || nested
      ? undefined
      : world.storage.message(message.reference.messageId);
  const thread = message.threadId === undefined ? undefined : world.channel(message.threadId);
  return compact({
    id: message.id,
    channel_id: message.channelId,
    type: message.kind,
    content: message.content,
    author: userPayload(author),
    attachments: message.attachments.map((file) => attachmentPayload(world, message.channelId, file)),
    embeds: message.embeds.map((embed) => embedPayload(world, message, embed)),
    components: message.components.map((part) => componentPayload(world, message, part)),
    mentions: users(message.mentionIds),
    mention_roles: message.mentionRoleIds,
    mention_everyone: message.mentionEveryone,
    pinned: message.pinnedMs !== null,
    tts: false,
    timestamp: iso(message.createdMs),
    edited_timestamp: message.editedMs === null ? null : iso(message.editedMs),
    flags: message.flags,
    nonce: message.nonce,
    application_id: author.bot ? world.applicationId : undefined,
    webhook_id: message.webhook === true ? world.applicationId : undefined,
    reactions: reactionPayloads(world, message),
    interaction_metadata: askedPayload(world, message),
    message_reference:
      message.reference === undefined
        ? undefined
        : {
            type: 0,
            channel_id: message.reference.channelId,
            message_id: message.reference.messageId,
            guild_id: guildIdOf(world, message.channelId),
          },
    referenced_message:
      message.reference === undefined || nested
        ? undefined
        : referenced === undefined
          ? null
          : messagePayload(world, referenced, true),
    thread: thread === undefined || nested ? undefined : channelPayload(world, thread),
  });
}

/** The same, under the contract's type. */
export function wireMessage(world: World, message: Message): WireMessage {
  // messagePayload always sets every member that WireMessage names; the e2e tests hold it against the published schema.
  return messagePayload(world, message) as unknown as WireMessage;
}

export function guildIdOf(world: World, channelId: string): string | undefined {
  const channel = world.channel(channelId);
  return channel === undefined || world.isDirect(channel) ? undefined : world.guildId;
}

function reactionPayloads(world: World, message: Message): Json | undefined {
  if (message.reactions.length === 0) return undefined;
  return message.reactions.map(({ emoji, userIds }) => ({
    emoji: { id: null, name: emoji },
    count: userIds.length,
    count_details: { burst: 0, normal: userIds.length },
    burst_colors: [],
    me_burst: false,
    me: userIds.includes(world.bot.id),
  }));
}

function askedPayload(world: World, message: Message): JsonObject | undefined {
  const { asked } = message;
  if (asked === undefined) return undefined;
  const person = world.person(asked.userId);
  const owners =
    asked.ownApp === true ? { '1': asked.userId } : { '0': guildIdOf(world, message.channelId) ?? '0' };
  const metadata = compact({
    id: asked.interactionId,
    type: asked.kind,
    name: asked.kind === Kind.command ? asked.name : undefined,
    user: person === undefined ? undefined : userPayload(person),
    authorizing_integration_owners: owners,
    interacted_message_id: asked.kind === Kind.component ? asked.sourceMessageId : undefined,
  });
  if (asked.kind !== Kind.modal) return metadata;
  const opener = { ...metadata, type: asked.sourceMessageId === undefined ? Kind.command : Kind.component };
  return {
    ...metadata,
    triggering_interaction_metadata:
      asked.sourceMessageId === undefined
        ? opener
        : { ...opener, interacted_message_id: asked.sourceMessageId },
  };
}

/** `attachment://name` becomes the address of the file of that name. */
function media(world: World, message: Message, given: unknown): JsonObject {
  const url = isObject(given) && typeof given['url'] === 'string' ? given['url'] : '';
  const file = message.attachments.find((one) => url === `attachment://${one.filename}`);
  if (file === undefined) return { id: '0', url, proxy_url: url };
  const { url: address, width, height } = attachmentPayload(world, message.channelId, file);
  return compact({
    id: file.id,
    url: address,
    proxy_url: address,
    width,
    height,
    content_type: file.type,
    attachment_id: file.id,
  });
}

function embedPayload(world: World, message: Message, embed: JsonObject): JsonObject {
  const shown: Record<string, Json | undefined> = { type: 'rich', ...embed };
  if (embed['fields'] !== undefined) {
    shown['fields'] = objectsIn(embed['fields']).map((field) => ({ inline: false, ...field }));
  }
  for (const key of ['image', 'thumbnail']) {
    const given = shown[key];
    if (isObject(given)) {
      const { id: _id, attachment_id: _attachment, ...rest } = media(world, message, given);
      shown[key] = rest;
    }
  }
  return shown;
}

/** What the platform fills in where a component says nothing. Source: documentation, "Component reference". */
function componentPayload(world: World, message: Message, part: JsonObject): JsonObject {
  const inside = (key: 'components'): readonly Json[] => {
    const children = part[key];
    return Array.isArray(children)
      ? children.filter(isObject).map((child) => componentPayload(world, message, child))
      : [];
  };
  const type = part['type'];
  if (type === Part.row) return { ...part, components: inside('components') };
  if (type === Part.section) {
    const accessory = part['accessory'];
    return {
      ...part,
      components: inside('components'),
      accessory: isObject(accessory) ? componentPayload(world, message, accessory) : null,
    };
  }
  if (type === Part.container) {
    return { accent_color: null, spoiler: false, ...part, components: inside('components') };
  }
  if (type === Part.separator) return { divider: true, spacing: 1, ...part };
  if (type === Part.button) return { style: ButtonStyle.secondary, ...part };
  if (typeof type === 'number' && SELECTS.includes(type)) return { min_values: 1, max_values: 1, ...part };
  if (type === Part.thumbnail) {
    return { description: null, spoiler: false, ...part, media: media(world, message, part['media']) };
  }
  if (type === Part.gallery) {
    const items = part['items'];
    return {
      ...part,
      items: Array.isArray(items)
        ? items.filter(isObject).map((item) => ({
            description: null,
            spoiler: false,
            ...item,
            media: media(world, message, item['media']),
          }))
        : [],
    };
  }
  if (type === Part.file) {
    const file = media(world, message, part['file']);
    const known = message.attachments.find((one) => one.id === file['attachment_id']);
    return { spoiler: false, ...part, file, name: known?.filename ?? null, size: known?.size ?? null };
  }
  return part;
}
