import { compact, type JsonObject } from '../wire/json.ts';
import { ChannelKind } from '../wire/numbers.ts';
import type { Channel, Command, Person, Role } from './things.ts';
import type { World } from './world.ts';

export const iso = (ms: number): string => new Date(ms).toISOString().replace('Z', '000+00:00');

export function userPayload(person: Person): JsonObject {
  return {
    id: person.id,
    username: person.bot ? person.name : person.name.toLowerCase().replace(/[^a-z0-9._]+/g, '_') || 'person',
    discriminator: '0',
    global_name: person.bot ? null : person.name,
    avatar: null,
    banner: null,
    accent_color: null,
    avatar_decoration_data: null,
    primary_guild: null,
    bot: person.bot,
    system: false,
    public_flags: 0,
    flags: 0,
  };
}

/** A member without the user inside, as it stands in resolved data. */
export function bareMember(person: Person): JsonObject {
  return {
    nick: null,
    avatar: null,
    banner: null,
    roles: person.roles,
    joined_at: iso(person.joinedMs),
    premium_since: null,
    pending: false,
    flags: 0,
    communication_disabled_until: null,
  };
}

export function memberPayload(person: Person): JsonObject {
  return { ...bareMember(person), user: userPayload(person), deaf: false, mute: false };
}

export function rolePayload(role: Role): JsonObject {
  return {
    id: role.id,
    name: role.name,
    permissions: role.permissions,
    position: role.position,
    color: 0,
    colors: { primary_color: 0, secondary_color: null, tertiary_color: null },
    hoist: false,
    managed: role.managed,
    mentionable: role.mentionable,
    icon: null,
    unicode_emoji: null,
    flags: 0,
  };
}

export function channelPayload(world: World, channel: Channel): JsonObject {
  const common = { id: channel.id, type: channel.kind, flags: 0, last_message_id: null };
  if (channel.kind === ChannelKind.direct) {
    const recipient = world.person(channel.recipientId ?? '');
    return { ...common, recipients: recipient === undefined ? [] : [userPayload(recipient)] };
  }
  const placed = { ...common, guild_id: world.guildId, name: channel.name, rate_limit_per_user: 0 };
  if (channel.thread === undefined) {
    return {
      ...placed,
      position: channel.position,
      topic: channel.topic,
      parent_id: null,
      nsfw: false,
      permission_overwrites: [],
    };
  }
  const count = Math.min(50, world.storage.all(channel.id).length);
  return {
    ...placed,
    parent_id: channel.parentId ?? null,
    owner_id: channel.thread.ownerId,
    message_count: count,
    total_message_sent: count,
    member_count: channel.thread.memberIds.length,
    thread_metadata: {
      archived: channel.thread.archived,
      locked: channel.thread.locked,
      auto_archive_duration: channel.thread.archiveMinutes,
      archive_timestamp: iso(channel.createdMs),
      create_timestamp: iso(channel.createdMs),
    },
  };
}

/** Without what only GUILD_CREATE carries. */
export function guildPayload(world: World): JsonObject {
  return {
    id: world.guildId,
    name: world.guildName,
    icon: null,
    description: null,
    home_header: null,
    splash: null,
    discovery_splash: null,
    features: [],
    banner: null,
    owner_id: world.ownerId,
    application_id: null,
    region: 'deprecated',
    afk_channel_id: null,
    afk_timeout: 300,
    system_channel_id: null,
    system_channel_flags: 0,
    widget_enabled: false,
    widget_channel_id: null,
    verification_level: 0,
    roles: world.roles.map(rolePayload),
    default_message_notifications: 0,
    mfa_level: 0,
    explicit_content_filter: 0,
    max_presences: null,
    max_members: 500_000,
    max_stage_video_channel_users: 50,
    max_video_channel_users: 25,
    vanity_url_code: null,
    premium_tier: 0,
    premium_subscription_count: 0,
    preferred_locale: 'en-GB',
    rules_channel_id: null,
    safety_alerts_channel_id: null,
    public_updates_channel_id: null,
    premium_progress_bar_enabled: false,
    nsfw: false,
    nsfw_level: 0,
    emojis: [],
    stickers: [],
    incidents_data: null,
  };
}

/** GUILD_CREATE. Without the presence intent it lists no member but the bot itself. */
export function guildCreatePayload(world: World): JsonObject {
  const payloads = (threads: boolean) =>
    world
      .channels()
      .filter((channel) => !world.isDirect(channel) && (channel.thread !== undefined) === threads)
      .map((channel) => channelPayload(world, channel));
  return {
    ...guildPayload(world),
    unavailable: false,
    joined_at: iso(world.bot.joinedMs),
    large: false,
    member_count: world.people().length,
    members: [memberPayload(world.bot)],
    channels: payloads(false),
    threads: payloads(true),
    voice_states: [],
    presences: [],
    stage_instances: [],
    soundboard_sounds: [],
    guild_scheduled_events: world.events().map((event) => event.body),
  };
}

export function commandPayload(world: World, command: Command): JsonObject {
  const { body } = command;
  return compact({
    id: command.id,
    application_id: world.applicationId,
    guild_id: command.guildId,
    version: command.version,
    type: command.kind,
    name: command.name,
    name_localizations: body['name_localizations'] ?? null,
    description: body['description'] ?? '',
    description_localizations: body['description_localizations'] ?? null,
    default_member_permissions: body['default_member_permissions'] ?? null,
    dm_permission: command.guildId === undefined ? true : undefined,
    contexts: body['contexts'] ?? null,
    integration_types: body['integration_types'] ?? [0],
    nsfw: body['nsfw'] ?? false,
    options: body['options'],
  });
}

export function applicationPayload(world: World): JsonObject {
  const bot = userPayload(world.bot);
  return {
    id: world.applicationId,
    name: world.bot.name,
    icon: null,
    description: '',
    type: null,
    bot,
    bot_public: false,
    bot_require_code_grant: false,
    verify_key: '0'.repeat(64),
    flags: 0,
    flags_new: '0',
    redirect_uris: [],
    interactions_endpoint_url: null,
    role_connections_verification_url: null,
    owner: userPayload(world.person(world.ownerId) ?? world.bot),
    approximate_guild_count: 1,
    approximate_user_install_count: 0,
    approximate_user_authorization_count: 0,
    explicit_content_filter: 0,
    team: null,
    eligible_oauth2_scopes: [],
  };
}
