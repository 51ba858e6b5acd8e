import type { Json } from '../wire/json.ts';
import { CommandKind, Install } from '../wire/numbers.ts';
import type { Channel, Command, Person } from '../world/things.ts';
import type { World } from '../world/world.ts';

/** The commands this person can call here: registered for the place, and not reserved to rights the person lacks. */
export function allowedCommands(
  world: World,
  person: Person,
  channel: Channel,
  ownApp = false,
): readonly Command[] {
  const rights = world.permissionsOf(person);
  return world
    .callable(!world.isDirect(channel))
    .filter(({ kind }) => kind === CommandKind.slash)
    .filter(({ body }) => installedBy(body['integration_types'], ownApp))
    .filter(({ body }) => {
      const needed = body['default_member_permissions'];
      if (typeof needed !== 'string') return true;
      // "0" is for administrators only, which is the owner here.
      return person.id === world.ownerId || (needed !== '0' && (rights & BigInt(needed)) === BigInt(needed));
    })
    .toSorted((a, b) => a.name.localeCompare(b.name));
}

/** Whether a command comes with an app that was added by the server, or to a person's own account; the first unless said. */
const installedBy = (types: Json | undefined, ownApp: boolean): boolean =>
  Array.isArray(types) ? types.includes(ownApp ? Install.person : Install.server) : !ownApp;

/** Text with `@Name` turned into the mention of the person of that name, the longest names first. */
export function withMentions(world: World, text: string): string {
  const people = world.people().toSorted((a, b) => b.name.length - a.name.length);
  return people.reduce(
    (so, person) =>
      so.replace(
        new RegExp(`(?<![\\p{L}\\p{N}])@${RegExp.escape(person.name)}(?![\\p{L}\\p{N}])`, 'giu'),
        `<@${person.id}>`,
      ),
    text,
  );
}
