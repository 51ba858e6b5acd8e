/** The bot API's places in a text: mentions of people, channels and commands, times, and emoji by name. */
export type Place =
  | { readonly kind: 'person' | 'channel' | 'role'; readonly typed: string; readonly id: string }
  | { readonly kind: 'time'; readonly typed: string; readonly seconds: number; readonly style: string }
  | { readonly kind: 'command' | 'emoji'; readonly typed: string; readonly name: string };

const PERSON = /<@!?(\d{1,20})>/uy;
const ROLE = /<@&(\d{1,20})>/uy;
const CHANNEL = /<#(\d{1,20})>/uy;
const TIME = /<t:(-?\d{1,13})(?::([tTdDfFsSR]))?>/uy;
const COMMAND = /<\/([-_'\p{L}\p{N} ]{1,98}):\d{1,20}>/uy;
const EMOJI = /<a?:(\w{2,32}):\d{1,20}>/uy;

/** The place that begins exactly at `at`, if one does. */
export function placeAt(text: string, at: number): Place | undefined {
  if (text[at] !== '<') return undefined;
  const match = (pattern: RegExp): readonly string[] | null => {
    pattern.lastIndex = at;
    return pattern.exec(text);
  };
  for (const [kind, pattern] of [
    ['person', PERSON],
    ['role', ROLE],
    ['channel', CHANNEL],
  ] as const) {
    const [typed, id] = match(pattern) ?? [];
    if (typed !== undefined && id !== undefined) return { kind, typed, id };
  }
  for (const [kind, pattern] of [
    ['command', COMMAND],
    ['emoji', EMOJI],
  ] as const) {
    const [typed, name] = match(pattern) ?? [];
    if (typed !== undefined && name !== undefined) return { kind, typed, name };
  }
  const [typed, seconds, style] = match(TIME) ?? [];
  if (typed === undefined) return undefined;
  return { kind: 'time', typed, seconds: Number(seconds), style: style ?? 'f' };
}
