import { isObject, stringsIn } from '../wire/json.ts';
import { checkChoice } from './fields.ts';
import { LIMITS } from './limits.ts';
import type { Problems } from './problems.ts';

/** Whom a message may ping, as the sender allowed it. */
export interface Allowed {
  readonly everyone: boolean;
  readonly users: 'all' | readonly string[];
  readonly roles: 'all' | readonly string[];
  readonly repliedUser: boolean;
}

/** Where nothing is said, an ordinary message may ping everybody, an answer to an interaction only users. */
export const DEFAULTS = {
  message: { everyone: true, users: 'all', roles: 'all', repliedUser: true },
  interaction: { everyone: false, users: 'all', roles: [], repliedUser: true },
} as const satisfies Record<string, Allowed>;

/** `allowed_mentions`: a kind is either parsed from the text or listed, never both. */
export function checkAllowedMentions(problems: Problems, value: unknown): void {
  if (!isObject(value)) return;
  const path = ['allowed_mentions'];
  const parse = stringsIn(value['parse']);
  parse.forEach((kind, index) => {
    checkChoice(problems, [...path, 'parse', index], kind, ['users', 'roles', 'everyone']);
  });
  for (const kind of ['users', 'roles']) {
    const listed = stringsIn(value[kind]);
    if (listed.length > 0 && parse.includes(kind)) {
      problems.add(
        path,
        'MESSAGE_ALLOWED_MENTIONS_PARSE_EXCLUSIVE',
        `parse:["${kind}"] and ${kind}: [ids...] are mutually exclusive.`,
      );
    }
    if (listed.length > LIMITS.message.mentionedIds) {
      problems.add(
        [...path, kind],
        'BASE_TYPE_MAX_LENGTH',
        `Must be ${LIMITS.message.mentionedIds} or fewer in length.`,
      );
    }
  }
}

export function allowedFrom(value: unknown, otherwise: Allowed): Allowed {
  if (!isObject(value)) return otherwise;
  const parse = stringsIn(value['parse']);
  return {
    everyone: parse.includes('everyone'),
    users: parse.includes('users') ? 'all' : stringsIn(value['users']),
    roles: parse.includes('roles') ? 'all' : stringsIn(value['roles']),
    repliedUser: value['replied_user'] === true,
  };
}
