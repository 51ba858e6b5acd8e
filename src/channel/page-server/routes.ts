import { type Context, Hono } from 'hono';
import type { Hands, Outcome, Upload } from '../contract.ts';
import type { JoinAnswer, PageMessages, PageState, Problem, SuggestAnswer } from '../page-api.ts';
import { isObject, type JsonObject, numberOf, parseJson, stringsIn, textOf } from '../wire/json.ts';
import { isId } from '../wire/snowflake.ts';
import type { ChannelState } from '../world/state.ts';
import type { Channel, Person } from '../world/things.ts';
import { welcome } from '../world/welcome.ts';
import { PAGE_SIZE, pageChannels, pageJson, pageOf, pagePerson } from './entries.ts';
import { noticeIn } from './notice.ts';

export interface PageApiOptions {
  readonly starters: readonly string[];
  readonly botOnline: () => boolean;
  readonly handsOf: (person: Person) => Hands;
}

/** A request the page should not have made, with the sentence for its answer. */
class BadRequest extends Error {
  readonly status: 400 | 404 | 413;
  constructor(problem: string, status: BadRequest['status'] = 400) {
    super(problem);
    this.status = status;
  }
}

const NAME_LENGTH = 32;

/** What the page asks of the channel; see `page-api.ts`. To be mounted at `/page-api`. */
export function pageApi(state: ChannelState, options: PageApiOptions): Hono {
  const { world } = state;
  const api = new Hono();
  const answer = (c: Context, value: PageState | PageMessages | Outcome | SuggestAnswer | JoinAnswer) => {
    c.header('Cache-Control', 'no-store');
    return c.body(pageJson(world, value), 200, { 'Content-Type': 'application/json' });
  };
  const handsIn = (body: JsonObject): Hands => options.handsOf(personIn(state, body));

  api.get('/state', (c) => {
    const me = world.named(c.req.query('as') ?? '');
    const channel = placeOf(state, c.req.query('channel'), me);
    return answer(c, {
      guildName: world.guildName,
      ...(me === undefined ? {} : { me: pagePerson(me) }),
      people: world.people().map(pagePerson),
      channels: pageChannels(world),
      channelId: channel.id,
      starters: options.starters,
      botOnline: options.botOnline(),
      notice: noticeIn(state, channel.id),
      uploadLimitBytes: state.uploadLimitBytes,
      ...pageOf(state, channel.id, me?.id ?? '', {}),
    });
  });

  api.get('/messages', (c) => {
    const me = world.named(c.req.query('as') ?? '');
    const channel = placeOf(state, c.req.query('channel'), me);
    const before = c.req.query('before');
    if (before !== undefined && !isId(before)) throw new BadRequest('"before" is the id of a message.');
    const asked = Number(c.req.query('limit') ?? PAGE_SIZE);
    const limit = Number.isInteger(asked) ? Math.min(Math.max(asked, 1), 100) : PAGE_SIZE;
    return answer(c, pageOf(state, channel.id, me?.id ?? '', { before, limit }));
  });

  api.post('/type', async (c) => {
    const { body, files } = await readTyped(c, state.uploadLimitBytes);
    const channelId = textOf(body['channelId']);
    const place = channelId === undefined ? {} : { channelId };
    return answer(c, await handsIn(body).type(need(body, 'line'), { ...place, files }));
  });

  api.post('/suggest', async (c) => {
    const body = await readObject(c);
    const line = need(body, 'line');
    const caret = numberOf(body['caret']) ?? line.length;
    const channelId = textOf(body['channelId']);
    const place = channelId === undefined ? {} : { channelId };
    return answer(c, { suggestions: await handsIn(body).suggest(line, caret, place) });
  });

  api.post('/press', async (c) => {
    const body = await readObject(c);
    return answer(c, await handsIn(body).press(need(body, 'messageId'), need(body, 'customId')));
  });

  api.post('/choose', async (c) => {
    const body = await readObject(c);
    const values = stringsIn(body['values']);
    return answer(c, await handsIn(body).choose(need(body, 'messageId'), need(body, 'customId'), values));
  });

  api.post('/submit', async (c) => {
    const body = await readObject(c);
    const person = personIn(state, body);
    const opened = state.interactions.opened(need(body, 'interactionId'), person.id);
    if (opened === undefined)
      return answer(c, { kind: 'refused', problem: 'That form is closed; open it again.' });
    return answer(c, await options.handsOf(person).submit(opened.form, valuesIn(body)));
  });

  api.post('/people', async (c) => {
    const name = need(await readObject(c), 'name').trim();
    if (name === '' || name.length > NAME_LENGTH || /[@#:`<>\p{C}]/u.test(name)) {
      throw new BadRequest(`A name has 1 to ${NAME_LENGTH} characters and none of @ # : \` < >.`);
    }
    if (world.named(name)?.bot === true)
      throw new BadRequest(`${name} is the name of the bot; take another.`);
    return answer(c, { person: pagePerson(welcome(world, name)) });
  });

  api.onError((error, c) => {
    if (error instanceof BadRequest)
      return c.json({ problem: error.message } satisfies Problem, error.status);
    throw error;
  });
  return api;
}

function personIn({ world }: ChannelState, body: JsonObject): Person {
  const name = need(body, 'as');
  const person = world.named(name);
  if (person === undefined || person.bot) throw new BadRequest(`Nobody called "${name}" has joined yet.`);
  return person;
}

/** The channel asked for, if this person may look into it; the first one when none is asked for. */
function placeOf({ world }: ChannelState, id: string | undefined, me: Person | undefined): Channel {
  const channel = id === undefined ? world.textChannels()[0] : world.channel(id);
  const theirs = channel?.recipientId === undefined || channel.recipientId === me?.id;
  if (channel === undefined || !theirs) throw new BadRequest('There is no such channel.', 404);
  return channel;
}

function need(body: JsonObject, key: string): string {
  const value = textOf(body[key]);
  if (value === undefined) throw new BadRequest(`"${key}" is missing.`);
  return value;
}

function valuesIn(body: JsonObject): Record<string, string | readonly string[]> {
  const values = body['values'];
  if (!isObject(values)) throw new BadRequest('"values" is missing.');
  return Object.fromEntries(
    Object.entries(values).map(([key, value]) => [key, typeof value === 'string' ? value : stringsIn(value)]),
  );
}

async function readObject(c: Context): Promise<JsonObject> {
  if (!(c.req.header('content-type') ?? '').startsWith('application/json')) {
    throw new BadRequest('Send application/json.');
  }
  try {
    const body = parseJson(await c.req.text());
    if (isObject(body)) return body;
  } catch (error) {
    if (!(error instanceof SyntaxError)) throw error;
  }
  throw new BadRequest('The body is no JSON object.');
}

async function readTyped(
  c: Context,
  limitBytes: number,
): Promise<{ readonly body: JsonObject; readonly files: readonly Upload[] }> {
  if (!(c.req.header('content-type') ?? '').startsWith('multipart/form-data')) {
    return { body: await readObject(c), files: [] };
  }
  // Room for the other fields beside the files.
  if (Number(c.req.header('content-length') ?? Number.POSITIVE_INFINITY) > limitBytes + 100_000) {
    throw new BadRequest(`At most ${Math.floor(limitBytes / 1_000_000)} MB can be sent at once.`, 413);
  }
  const form = await c.req.formData();
  const body: Record<string, string> = {};
  const files: Upload[] = [];
  for (const [key, part] of form) {
    if (typeof part === 'string') body[key] = part;
    else files.push({ name: part.name, type: part.type, bytes: new Uint8Array(await part.arrayBuffer()) });
  }
  return { body, files };
}
