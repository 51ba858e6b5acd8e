import type { Context, Hono } from 'hono';
import { checkChoice, checkText } from '../rules/fields.ts';
import { LIMITS } from '../rules/limits.ts';
import { Problems } from '../rules/problems.ts';
import { refuse } from '../wire/api-error.ts';
import { isObject, type JsonObject, textOf } from '../wire/json.ts';
import { Intent } from '../wire/numbers.ts';
import { iso } from '../world/payloads.ts';
import type { ChannelState } from '../world/state.ts';
import type { ScheduledEvent } from '../world/things.ts';
import { readBody } from './body.ts';
import { checkGuild } from './lookup.ts';

const { event: MAX } = LIMITS;
const EXTERNAL = 3;
const SCHEDULED = 1;

/** Scheduled events of the guild that take place outside: a place, a start and an end. */
export function eventRoutes(api: Hono, state: ChannelState): void {
  const { world } = state;
  const place = '/guilds/:guild/scheduled-events';
  const one = (c: Context): ScheduledEvent => {
    checkGuild(state, c.req.param('guild') ?? '');
    const event = world.events().find(({ id }) => id === c.req.param('event'));
    if (event === undefined) throw refuse.unknownEvent();
    return event;
  };
  const tell = (what: 'CREATE' | 'UPDATE' | 'DELETE', { body }: ScheduledEvent) =>
    world.gateway.tell({
      name: `GUILD_SCHEDULED_EVENT_${what}`,
      intents: Intent.scheduledEvents,
      data: body,
    });

  api.get(place, (c) => {
    checkGuild(state, c.req.param('guild'));
    return c.json(world.events().map(({ body }) => body));
  });
  api.post(place, async (c) => {
    checkGuild(state, c.req.param('guild'));
    const { json } = await readBody(c);
    const id = world.newId();
    const event = { id, body: eventBody(state, id, json, {}) };
    world.saveEvent(event);
    tell('CREATE', event);
    return c.json(event.body);
  });
  api.get(`${place}/:event`, (c) => c.json(one(c).body));
  api.patch(`${place}/:event`, async (c) => {
    const known = one(c);
    const event = { id: known.id, body: eventBody(state, known.id, (await readBody(c)).json, known.body) };
    world.saveEvent(event);
    tell('UPDATE', event);
    return c.json(event.body);
  });
  api.delete(`${place}/:event`, (c) => {
    const event = one(c);
    world.dropEvent(event.id);
    tell('DELETE', event);
    return c.body(null, 204);
  });
}

function eventBody(state: ChannelState, id: string, asked: JsonObject, before: JsonObject): JsonObject {
  const { world } = state;
  const value = (key: string) => asked[key] ?? before[key];
  const given = value('entity_metadata');
  const location = isObject(given) ? given['location'] : undefined;
  const problems = new Problems();
  checkText(problems, ['name'], value('name'), { min: 1, max: MAX.name, required: true });
  checkText(problems, ['description'], value('description'), { max: MAX.description });
  checkChoice(problems, ['privacy_level'], value('privacy_level'), [2], { required: true });
  // There are no voice channels here for the other two kinds.
  checkChoice(problems, ['entity_type'], value('entity_type'), [EXTERNAL], { required: true });
  checkText(problems, ['entity_metadata', 'location'], location, {
    min: 1,
    max: MAX.location,
    required: true,
  });
  const starts = time(problems, 'scheduled_start_time', value('scheduled_start_time'));
  const ends = time(problems, 'scheduled_end_time', value('scheduled_end_time'));
  if (starts !== undefined && ends !== undefined && ends <= starts) {
    problems.add(
      ['scheduled_end_time'],
      'GUILD_SCHEDULED_EVENT_END_BEFORE_START',
      'It ends before it starts',
    );
  }
  problems.settle();
  return {
    id,
    guild_id: world.guildId,
    channel_id: null,
    creator_id: world.bot.id,
    name: value('name'),
    description: textOf(value('description')) ?? null,
    image: null,
    scheduled_start_time: iso(starts ?? 0),
    scheduled_end_time: iso(ends ?? 0),
    privacy_level: 2,
    status: value('status') ?? SCHEDULED,
    entity_type: EXTERNAL,
    entity_id: null,
    entity_metadata: { location },
    recurrence_rule: null,
    guild_scheduled_event_exceptions: [],
  };
}

function time(problems: Problems, key: string, value: unknown): number | undefined {
  const text = checkText(problems, [key], value, { max: 100, required: true });
  const ms = text === undefined ? Number.NaN : Date.parse(text);
  if (!Number.isNaN(ms)) return ms;
  if (text !== undefined)
    problems.add([key], 'DATETIME_TYPE_PARSE', `Could not parse ${text}. Should be ISO8601.`);
  return undefined;
}
