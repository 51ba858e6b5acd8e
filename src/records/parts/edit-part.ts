import { UserError } from '../../core/user-error.ts';
import type { Money } from '../orders/order.ts';
import { plain } from '../suppliers/supplier.ts';
import type { TeamRecord } from '../team-record.ts';
import { namesOf, partOrNew } from './find-part.ts';
import { FIRST_OF_A_PART } from './open-part.ts';
import type { Origin } from './part.ts';
import type { KnownPart } from './part-store.ts';
import { ordersOf } from './standings.ts';

/** What can be said of a part itself; what is left out stays as it was. */
export interface PartDetails {
  readonly needed?: number | undefined;
  readonly origin?: Origin | undefined;
  readonly singleUse?: boolean | undefined;
  readonly system?: string | undefined;
  readonly note?: string | undefined;
  readonly link?: string | undefined;
  readonly guess?: Money | undefined;
}

type Edited = { readonly value: KnownPart; readonly said: string };

/**
 * Writes a part down.
 *
 * @throws UserError 'already-done' when it is known, 'which-one' when its name is nearly a known one's.
 */
export function addPart(
  record: TeamRecord,
  buildId: number,
  typed: string,
  alsoCalled: readonly string[],
  details: PartDetails,
): Edited {
  const { name, known } = partOrNew(record, buildId, typed, 'name');
  if (known !== undefined) {
    throw new UserError(
      'already-done',
      `${known.name} is known already. Nothing was changed. /part set changes what is said of it.`,
    );
  }
  const part = record.parts.add({ ...FIRST_OF_A_PART, ...given(details), buildId, name });
  for (const other of alsoCalled) callIt(record, part, other);
  return { value: again(record, part), said: `part ${name} written down` };
}

/** @throws UserError 'bad-input' when nothing is said. */
export function setPart(record: TeamRecord, part: KnownPart, details: PartDetails): Edited {
  const changes = given(details);
  if (Object.keys(changes).length === 0) {
    throw new UserError(
      'bad-input',
      `Say what to change of ${part.name}: needed, origin, single_use, system, note, link or guess. Nothing was changed.`,
    );
  }
  record.parts.correct({ ...part, ...changes });
  return {
    value: again(record, part),
    said: `part ${part.name} changed: ${Object.keys(changes).map(inWords).join(', ')}`,
  };
}

/** Gives a part another name; the old one stays as one that the crew may still use. */
export function renamePart(record: TeamRecord, part: KnownPart, to: string): Edited {
  const { known } = partOrNew(record, part.buildId, `+${to}`);
  if (known !== undefined && known.id !== part.id) throw taken(to, known);
  if (part.name === to) {
    throw new UserError('already-done', `It is called ${to} already. Nothing was changed.`);
  }
  for (const name of part.alsoCalled) if (plain(name) === plain(to)) record.parts.uncall(part.id, name);
  record.parts.correct({ ...part, name: to });
  if (plain(part.name) !== plain(to)) record.parts.call(part.id, part.name);
  return { value: again(record, part), said: `part ${part.name} is now called ${to}` };
}

/** @throws UserError when another part goes by that name, or this one does already. */
export function alsoCall(record: TeamRecord, part: KnownPart, name: string): Edited {
  callIt(record, part, name);
  return { value: again(record, part), said: `part ${part.name} also called ${name}` };
}

/** @throws UserError 'not-found' when it has no such other name. */
export function dropName(record: TeamRecord, part: KnownPart, name: string): Edited {
  const other = part.alsoCalled.find((one) => plain(one) === plain(name));
  if (other === undefined) {
    throw new UserError(
      'not-found',
      `${part.name} has no other name "${name}". Nothing was changed. It goes by: ${namesOf(part).join(', ')}.`,
    );
  }
  record.parts.uncall(part.id, other);
  return { value: again(record, part), said: `part ${part.name} no longer called ${other}` };
}

/** @throws UserError 'not-now' when it has orders, which would count for nothing, or a job needs it. */
export function removePart(record: TeamRecord, part: KnownPart): Edited {
  const orders = ordersOf(record, part);
  if (orders.length > 0) {
    throw new UserError(
      'not-now',
      `${part.name} has been ordered (${orders.map(({ id }) => `#${id}`).join(', ')}), so it stays. Nothing was changed. /part set needed:0 says that none is needed any more.`,
    );
  }
  const [job] = record.jobs
    .ofBuild(part.buildId)
    .filter(({ needs }) => needs.some((need) => need.kind === 'part' && need.partId === part.id));
  if (job !== undefined) {
    throw new UserError(
      'not-now',
      `"${job.name}" needs ${part.name}, so it stays. Nothing was changed. /job needs job:"#${job.id}" remove:"${part.name}" comes first.`,
    );
  }
  record.parts.remove(part.id);
  return { value: part, said: `part ${part.name} removed` };
}

function callIt(record: TeamRecord, part: KnownPart, name: string): void {
  const { known } = partOrNew(record, part.buildId, `+${name}`);
  if (known?.id === part.id) {
    throw new UserError('already-done', `${part.name} goes by "${name}" already. Nothing was changed.`);
  }
  if (known !== undefined) throw taken(name, known);
  record.parts.call(part.id, name);
}

function again(record: TeamRecord, { id, name }: KnownPart): KnownPart {
  const part = record.parts.find(id);
  if (!part) throw new Error(`part ${name} vanished inside its own change`);
  return part;
}

function given(details: PartDetails): Partial<KnownPart> {
  return Object.fromEntries(Object.entries(details).filter(([, value]) => value !== undefined));
}

const inWords = (key: string): string => ({ singleUse: 'single use', guess: 'likely price' })[key] ?? key;

const taken = (name: string, by: KnownPart): UserError =>
  new UserError(
    'already-done',
    `"${name}" is what ${by.name} goes by. Nothing was changed. Choose another name.`,
  );
