import { flatten, shownText } from '../rules/components.ts';
import type { Allowed } from '../rules/mentions.ts';
import type { JsonObject } from '../wire/json.ts';
import type { World } from './world.ts';

/** Whom a message pings. */
export interface Mentions {
  readonly mentionIds: readonly string[];
  readonly mentionRoleIds: readonly string[];
  readonly mentionEveryone: boolean;
}

/** Reads mentions out of the text and every Text Display, and leaves those that the sender allowed. */
export function mentionsIn(
  world: World,
  content: string,
  components: readonly JsonObject[],
  allowed: Allowed,
): Mentions {
  const text = [content, ...flatten(components, []).map(({ part }) => shownText(part))].join('\n');
  const ids = (pattern: RegExp) => [
    ...new Set([...text.matchAll(pattern)].flatMap((match) => match[1] ?? [])),
  ];
  const may = (list: 'all' | readonly string[], id: string) => list === 'all' || list.includes(id);
  return {
    mentionIds: ids(/<@!?(\d{17,19})>/g).filter(
      (id) => world.person(id) !== undefined && may(allowed.users, id),
    ),
    mentionRoleIds: ids(/<@&(\d{17,19})>/g).filter(
      (id) => world.roles.some((role) => role.id === id) && may(allowed.roles, id),
    ),
    mentionEveryone: allowed.everyone && /@(everyone|here)\b/.test(text),
  };
}
