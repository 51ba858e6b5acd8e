/** JSON as it comes off the wire: nothing is believed before it was looked at. */
export type Json = null | boolean | number | string | readonly Json[] | JsonObject;

export interface JsonObject {
  readonly [key: string]: Json | undefined;
}

export const isObject = (value: unknown): value is JsonObject =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

export const isArray = (value: unknown): value is readonly Json[] => Array.isArray(value);

/** @throws SyntaxError when `text` is no JSON. */
export function parseJson(text: string): Json {
  // The one place where the parser's untyped answer gets a type: whatever it returns is JSON by definition.
  return JSON.parse(text) as Json;
}

/** The objects in `value`, or none when it is no list. */
export function objectsIn(value: unknown): readonly JsonObject[] {
  return isArray(value) ? value.filter(isObject) : [];
}

export function stringsIn(value: unknown): readonly string[] {
  return isArray(value) ? value.filter((one) => typeof one === 'string') : [];
}

export const textOf = (value: unknown): string | undefined => (typeof value === 'string' ? value : undefined);

export const numberOf = (value: unknown): number | undefined =>
  typeof value === 'number' ? value : undefined;

/** Without the keys whose value is undefined, as the wire has them. */
export function compact(object: JsonObject): JsonObject {
  return Object.fromEntries(Object.entries(object).filter(([, value]) => value !== undefined));
}
