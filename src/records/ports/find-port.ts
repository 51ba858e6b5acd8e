import { type Choice, UserError } from '../../core/user-error.ts';
import { likeNames, plain } from '../suppliers/supplier.ts';
import type { TeamRecord } from '../team-record.ts';
import type { Port } from './port.ts';

/**
 * The port meant by its name as the crew types it, or by its number when a button says it.
 *
 * @throws UserError 'not-found' naming those that are noted, 'which-one' when the name fits several.
 */
export function findPort(
  record: TeamRecord,
  buildId: number | undefined,
  typed: string,
  field: string,
): Port {
  const ports = buildId === undefined ? [] : record.ports.ofBuild(buildId);
  const numbered = /^#(\d{1,9})$/.exec(typed)?.[1];
  const byNumber = numbered === undefined ? undefined : ports.find(({ id }) => id === Number(numbered));
  if (byNumber !== undefined) return byNumber;
  const [only, ...more] = named(typed, ports);
  if (only !== undefined && more.length === 0) return only;
  if (only !== undefined) {
    throw new UserError('which-one', `Several ports fit "${typed}". Which one?`, {
      field,
      choices: [only, ...more].map(portChoice),
    });
  }
  const known = ports.map(({ name }) => name);
  throw new UserError(
    'not-found',
    known.length === 0
      ? 'No port of this build is noted yet. /fitting port writes one down: its name, and its end.'
      : `No port here is called "${typed}". Noted: ${known.join(', ')}.`,
  );
}

function named(typed: string, ports: readonly Port[]): readonly Port[] {
  const same = ports.filter(({ name }) => plain(name) === plain(typed));
  if (same.length > 0) return same;
  const inside = ports.filter(({ name }) => plain(name).includes(plain(typed)));
  if (inside.length > 0) return inside;
  const like = likeNames(
    typed,
    ports.map(({ name }) => name),
  );
  return ports.filter(({ name }) => like.includes(name));
}

export function suggestPorts(record: TeamRecord, buildId: number, typed: string): readonly Choice[] {
  return record.ports
    .ofBuild(buildId)
    .filter(({ name, endId }) => plain(`${name} ${endId}`).includes(plain(typed)))
    .map(({ name, endId }) => ({ label: `${name} (${endId})`.slice(0, 100), value: name }));
}

const portChoice = ({ id, name, endId }: Port): Choice => ({
  label: `${name} (${endId})`.slice(0, 100),
  value: `#${id}`,
});
