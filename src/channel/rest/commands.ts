import type { Context, Hono } from 'hono';
import { checkCommand, checkDistinctNames } from '../rules/commands.ts';
import { LIMITS } from '../rules/limits.ts';
import { Problems } from '../rules/problems.ts';
import { refuse } from '../wire/api-error.ts';
import { isArray, isObject, type JsonObject, objectsIn } from '../wire/json.ts';
import { CommandKind } from '../wire/numbers.ts';
import { commandPayload } from '../world/payloads.ts';
import type { ChannelState } from '../world/state.ts';
import type { Command } from '../world/things.ts';
import { readBody, readJson } from './body.ts';
import { checkGuild } from './lookup.ts';

const MAX_OF_KIND = [
  { kind: CommandKind.slash, max: LIMITS.command.slash },
  { kind: CommandKind.user, max: LIMITS.command.contextMenu },
  { kind: CommandKind.message, max: LIMITS.command.contextMenu },
] as const;

/** Registration of commands, globally and for the guild; a command keeps its id as long as its name and kind. */
export function commandRoutes(api: Hono, state: ChannelState, registered: () => void): void {
  const { world } = state;

  for (const place of [
    '/applications/:application/commands',
    '/applications/:application/guilds/:guild/commands',
  ]) {
    /** The guild of the scope, checked. */
    const scopeOf = (c: Context): string | undefined => {
      if (c.req.param('application') !== world.applicationId) throw refuse.missingAccess();
      const guild = c.req.param('guild');
      if (guild !== undefined) checkGuild(state, guild);
      return guild;
    };
    const one = (c: Context): Command => {
      const scope = scopeOf(c);
      const command = world.commands(scope).find(({ id }) => id === c.req.param('command'));
      if (command === undefined) throw refuse.unknownCommand();
      return command;
    };

    api.get(place, (c) =>
      c.json(world.commands(scopeOf(c)).map((command) => commandPayload(world, command))),
    );

    api.put(place, async (c) => {
      const scope = scopeOf(c);
      const body = await readJson(c);
      if (!isArray(body)) throw refuse.notJson();
      const saved = replaceAll(state, scope, objectsIn(body));
      registered();
      return c.json(saved.map((command) => commandPayload(world, command)));
    });

    api.post(place, async (c) => {
      const scope = scopeOf(c);
      const { json } = await readBody(c);
      const problems = new Problems();
      checkCommand(problems, [], json);
      problems.settle();
      const known = namesake(state, scope, json);
      if (known === undefined) checkCounts([...world.commands(scope).map(({ body }) => body), json]);
      const command = save(state, scope, json, known);
      registered();
      return c.json(commandPayload(world, command), known === undefined ? 201 : 200);
    });

    api.get(`${place}/:command`, (c) => c.json(commandPayload(world, one(c))));

    api.patch(`${place}/:command`, async (c) => {
      const known = one(c);
      const { json } = await readBody(c);
      const body = { ...known.body, ...json };
      const problems = new Problems();
      checkCommand(problems, [], body);
      problems.settle();
      return c.json(commandPayload(world, save(state, known.guildId, body, known)));
    });

    api.delete(`${place}/:command`, (c) => {
      world.dropCommand(one(c).id);
      return c.body(null, 204);
    });
  }
}

function replaceAll(
  state: ChannelState,
  scope: string | undefined,
  bodies: readonly JsonObject[],
): Command[] {
  const { world } = state;
  const problems = new Problems();
  bodies.forEach((body, index) => {
    checkCommand(problems, [index], body);
  });
  checkDistinctNames(problems, bodies);
  problems.settle();
  checkCounts(bodies);
  return world.storage.together(() => {
    const before = world.commands(scope);
    const saved = bodies.map((body) => save(state, scope, body, namesake(state, scope, body)));
    for (const old of before) if (!saved.some(({ id }) => id === old.id)) world.dropCommand(old.id);
    return saved;
  });
}

/** @throws ApiError 30032 */
function checkCounts(bodies: readonly JsonObject[]): void {
  for (const { kind, max } of MAX_OF_KIND) {
    if (bodies.filter((body) => kindOf(body) === kind).length > max) throw refuse.tooManyCommands(max);
  }
}

const kindOf = (body: JsonObject): number =>
  typeof body['type'] === 'number' ? body['type'] : CommandKind.slash;

function namesake({ world }: ChannelState, scope: string | undefined, body: JsonObject): Command | undefined {
  return world.commands(scope).find(({ kind, name }) => kind === kindOf(body) && name === body['name']);
}

function save(
  { world }: ChannelState,
  scope: string | undefined,
  body: JsonObject,
  known: Command | undefined,
): Command {
  const command: Command = {
    id: known?.id ?? world.newId(),
    kind: kindOf(body),
    name: String(body['name']),
    version: world.newId(),
    body: isObject(body) ? body : {},
    ...(scope === undefined ? {} : { guildId: scope }),
  };
  world.saveCommand(command);
  return command;
}
