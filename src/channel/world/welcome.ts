import { Intent } from '../wire/numbers.ts';
import { memberPayload } from './payloads.ts';
import type { Person } from './things.ts';
import type { World } from './world.ts';

/** The person of this name, who joins if need be; a bot that asked for the members is told. */
export function welcome(world: World, name: string): Person {
  const known = world.named(name);
  if (known !== undefined) return known;
  const person = world.join(name);
  world.gateway.tell({
    name: 'GUILD_MEMBER_ADD',
    intents: Intent.members,
    data: { ...memberPayload(person), guild_id: world.guildId },
  });
  return person;
}
