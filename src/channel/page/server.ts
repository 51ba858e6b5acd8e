/** Requests to the channel that served this page. */
import type { Outcome } from '../contract.ts';
import type {
  ChooseRequest,
  JoinAnswer,
  JoinRequest,
  PageMessages,
  PageState,
  PressRequest,
  SubmitRequest,
  SuggestAnswer,
  SuggestRequest,
  TypeRequest,
} from '../page-api.ts';

/** A request that came to nothing, with the sentence for whoever made it. */
export class Refused extends Error {}

const NO_ANSWER = 'The channel does not answer.';
/** Whether the request got there before the line broke cannot be known from here. */
const LOOK_FIRST = `${NO_ANSWER} Look whether this arrived before you do it again.`;

async function ask<Answer>(path: string, init: RequestInit): Promise<Answer> {
  let response: Response;
  try {
    response = await fetch(`/page-api/${path}`, init);
  } catch (failure) {
    if (failure instanceof DOMException && failure.name === 'AbortError') throw failure;
    throw new Refused(init.method === 'POST' ? LOOK_FIRST : NO_ANSWER, { cause: failure });
  }
  if (!response.ok) throw new Refused(await problemOf(response));
  // The other side is this page's own server, kept to page-api.ts by the compiler.
  return (await response.json()) as Answer;
}

async function problemOf(response: Response): Promise<string> {
  const body = await response.text();
  if (response.headers.get('content-type')?.includes('json') !== true)
    return `The channel answered ${response.status}. Nothing is known to be sent.`;
  const problem: unknown = JSON.parse(body);
  const told =
    typeof problem === 'object' && problem !== null && 'problem' in problem ? problem.problem : undefined;
  return typeof told === 'string' ? told : `The channel answered ${response.status}.`;
}

function post<Answer>(path: string, body: object, signal?: AbortSignal): Promise<Answer> {
  const headers = { 'content-type': 'application/json' };
  return ask<Answer>(path, { method: 'POST', headers, body: JSON.stringify(body), signal: signal ?? null });
}

function query(values: Readonly<Record<string, string | undefined>>): string {
  const known = Object.entries(values).flatMap(([key, value]) => (value ? [[key, value]] : []));
  return new URLSearchParams(known).toString();
}

/** Every request rejects with {@link Refused}. */
export const server = {
  state: (as: string, channel?: string) => ask<PageState>(`state?${query({ as, channel })}`, {}),
  messages: (as: string, channel: string, before: string) =>
    ask<PageMessages>(`messages?${query({ as, channel, before, limit: '50' })}`, {}),
  type(request: TypeRequest, files: readonly File[]): Promise<Outcome> {
    if (files.length === 0) return post<Outcome>('type', request);
    const form = new FormData();
    for (const [name, value] of Object.entries(request)) if (typeof value === 'string') form.set(name, value);
    for (const file of files) form.append('files', file);
    return ask<Outcome>('type', { method: 'POST', body: form });
  },
  suggest: (request: SuggestRequest, signal: AbortSignal) => post<SuggestAnswer>('suggest', request, signal),
  press: (request: PressRequest) => post<Outcome>('press', request),
  choose: (request: ChooseRequest) => post<Outcome>('choose', request),
  submit: (request: SubmitRequest) => post<Outcome>('submit', request),
  join: (request: JoinRequest) => post<JoinAnswer>('people', request),
} as const;
