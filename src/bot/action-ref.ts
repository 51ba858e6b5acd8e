import type { ActionRef } from '../core/reply.ts';

/** The platform's limit on a component's custom_id. */
const LONGEST = 100;

/**
 * Writes an action as the text a button carries: `order/arrived?order=12`. Only ids travel; the state they lead to is
 * in the record, so buttons of old messages go on working and a forged one gets no further than a typed command.
 *
 * @throws RangeError past the platform's 100 characters.
 */
export function writeActionRef({ command, action, args }: ActionRef): string {
  const query = Object.entries(args)
    .map(([name, value]) => `${sparingly(name)}=${sparingly(String(value))}`)
    .join('&');
  const text = query === '' ? `${command}/${action}` : `${command}/${action}?${query}`;
  if (text.length > LONGEST)
    throw new RangeError(`button reference longer than ${LONGEST} characters: ${text}`);
  return text;
}

/** Reads it back; `null` for text that no version of ours wrote. Values are untrusted text until zod has seen them. */
export function readActionRef(text: string): ActionRef | null {
  const match = /^([a-z-]{1,32})\/([a-z-]{1,32})(?:\?(.*))?$/.exec(text);
  if (match === null) return null;
  const [, command = '', action = '', query = ''] = match;
  return { command, action, args: Object.fromEntries(new URLSearchParams(query)) };
}

/** Escapes what would be read otherwise and nothing else: each escape costs two characters of a hundred. */
const sparingly = (text: string): string =>
  text.replaceAll(/[%&=+?]/g, (sign) => encodeURIComponent(sign)).replaceAll(' ', '+');
