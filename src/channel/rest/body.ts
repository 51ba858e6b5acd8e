import type { Context } from 'hono';
import { LIMITS } from '../rules/limits.ts';
import { refuse } from '../wire/api-error.ts';
import { isObject, type Json, type JsonObject, parseJson } from '../wire/json.ts';
import type { IndexedUpload } from '../world/attachments.ts';

/** A request's JSON and the files beside it. */
export interface Body {
  readonly json: JsonObject;
  readonly uploads: readonly IndexedUpload[];
}

/**
 * Reads a JSON body, or a multipart one with `payload_json` and parts `files[n]`.
 * @throws ApiError 40005 over the size of a request, 50109 for what is no JSON.
 */
export async function readBody(c: Context, maxBytes: number = LIMITS.message.requestBytes): Promise<Body> {
  if (Number(c.req.header('content-length') ?? 0) > maxBytes) throw refuse.requestTooLarge();
  if (!(c.req.header('content-type') ?? '').startsWith('multipart/form-data')) {
    return { json: object(await readJson(c)), uploads: [] };
  }
  const form = await c.req.formData();
  const uploads: IndexedUpload[] = [];
  for (const [key, part] of form) {
    const index = /^files\[(\d+)\]$/.exec(key)?.[1];
    if (index === undefined || typeof part === 'string') continue;
    uploads.push({
      index,
      name: part.name,
      type: part.type,
      bytes: new Uint8Array(await part.arrayBuffer()),
    });
  }
  const payload = form.get('payload_json');
  return { json: typeof payload === 'string' ? object(parsed(payload)) : {}, uploads };
}

/** @throws ApiError 50109 */
export async function readJson(c: Context): Promise<Json> {
  const text = await c.req.text();
  return text === '' ? {} : parsed(text);
}

function parsed(text: string): Json {
  try {
    return parseJson(text);
  } catch (error) {
    if (error instanceof SyntaxError) throw refuse.notJson();
    throw error;
  }
}

function object(value: Json): JsonObject {
  if (!isObject(value)) throw refuse.notJson();
  return value;
}
