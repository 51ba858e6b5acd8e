import type { Hono } from 'hono';
import { checkText } from '../rules/fields.ts';
import { LIMITS } from '../rules/limits.ts';
import { Problems } from '../rules/problems.ts';
import { refuse } from '../wire/api-error.ts';
import { textOf } from '../wire/json.ts';
import { ChannelKind, Intent } from '../wire/numbers.ts';
import {
  applicationPayload,
  channelPayload,
  guildPayload,
  memberPayload,
  rolePayload,
  userPayload,
} from '../world/payloads.ts';
import type { ChannelState } from '../world/state.ts';
import type { Person } from '../world/things.ts';
import { readBody } from './body.ts';
import { channelOf, checkGuild, personOf } from './lookup.ts';

/** Where and who: gateway address, application, users, guild, members, roles, channels. */
export function placeRoutes(api: Hono, state: ChannelState): void {
  const { world } = state;

  const gatewayUrl = () => world.origin.replace(/^http/, 'ws');
  api.get('/gateway', (c) => c.json({ url: gatewayUrl() }));
  api.get('/gateway/bot', (c) =>
    c.json({
      url: gatewayUrl(),
      shards: 1,
      session_start_limit: { total: 1000, remaining: 1000, reset_after: 86_400_000, max_concurrency: 1 },
    }),
  );
  api.get('/applications/@me', (c) => c.json(applicationPayload(world)));
  api.get('/oauth2/applications/@me', (c) => c.json(applicationPayload(world)));

  api.get('/users/:user', (c) => c.json(userPayload(personOf(state, c.req.param('user')))));
  api.post('/users/@me/channels', async (c) => {
    const { json } = await readBody(c);
    const person = personOf(state, textOf(json['recipient_id']) ?? '');
    if (person.bot) throw refuse.notToThisUser();
    return c.json(channelPayload(world, world.directChannel(person.id)));
  });

  api.get('/guilds/:guild', (c) => {
    checkGuild(state, c.req.param('guild'));
    const counts = { approximate_member_count: world.people().length, approximate_presence_count: 1 };
    return c.json({ ...guildPayload(world), ...counts });
  });
  api.get('/guilds/:guild/channels', (c) => {
    checkGuild(state, c.req.param('guild'));
    return c.json(world.textChannels().map((channel) => channelPayload(world, channel)));
  });
  api.get('/guilds/:guild/roles', (c) => {
    checkGuild(state, c.req.param('guild'));
    return c.json(world.roles.map(rolePayload));
  });

  api.get('/guilds/:guild/members', (c) => {
    checkGuild(state, c.req.param('guild'));
    const limit = Math.min(1000, Number(c.req.query('limit') ?? 1));
    return c.json(world.people().slice(0, limit).map(memberPayload));
  });
  api.get('/guilds/:guild/members/search', (c) => {
    checkGuild(state, c.req.param('guild'));
    const start = (c.req.query('query') ?? '').toLowerCase();
    const limit = Math.min(1000, Number(c.req.query('limit') ?? 1));
    const found = world.people().filter((person) => person.name.toLowerCase().startsWith(start));
    return c.json(found.slice(0, limit).map(memberPayload));
  });
  const memberOf = (guild: string, user: string): Person => {
    checkGuild(state, guild);
    const person = user === '@me' ? world.bot : world.person(user);
    if (person === undefined) throw refuse.unknownMember();
    return person;
  };
  api.get('/guilds/:guild/members/:user', (c) =>
    c.json(memberPayload(memberOf(c.req.param('guild'), c.req.param('user')))),
  );
  api.on(['PUT', 'DELETE'], '/guilds/:guild/members/:user/roles/:role', (c) => {
    const person = memberOf(c.req.param('guild'), c.req.param('user'));
    const role = c.req.param('role');
    if (!world.roles.some(({ id }) => id === role)) throw refuse.unknownRole();
    const others = person.roles.filter((id) => id !== role);
    world.savePerson({ ...person, roles: c.req.method === 'PUT' ? [...others, role] : others });
    return c.body(null, 204);
  });

  api.get('/channels/:channel', (c) =>
    c.json(channelPayload(world, channelOf(state, c.req.param('channel')))),
  );
  api.patch('/channels/:channel', async (c) => {
    const channel = channelOf(state, c.req.param('channel'));
    if (channel.kind === ChannelKind.direct) throw refuse.missingAccess();
    const { json } = await readBody(c);
    const problems = new Problems();
    const name = checkText(problems, ['name'], json['name'], { min: 1, max: LIMITS.channel.name });
    const topic = checkText(problems, ['topic'], json['topic'], { max: LIMITS.channel.topic });
    problems.settle();
    const { thread } = channel;
    const flag = (key: 'archived' | 'locked', was: boolean) =>
      typeof json[key] === 'boolean' ? json[key] : was;
    const changed = {
      ...channel,
      name: name ?? channel.name,
      topic: topic ?? channel.topic,
      ...(thread === undefined
        ? {}
        : {
            thread: {
              ...thread,
              archived: flag('archived', thread.archived),
              locked: flag('locked', thread.locked),
            },
          }),
    };
    world.saveChannel(changed);
    const data = channelPayload(world, changed);
    world.gateway.tell({
      name: thread === undefined ? 'CHANNEL_UPDATE' : 'THREAD_UPDATE',
      intents: Intent.guilds,
      data,
    });
    return c.json(data);
  });
}
