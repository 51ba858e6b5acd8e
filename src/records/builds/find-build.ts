import { type Choice, UserError } from '../../core/user-error.ts';
import { likeNames, plain } from '../suppliers/supplier.ts';
import type { TeamRecord } from '../team-record.ts';
import type { Build } from './build.ts';

/** @throws UserError 'not-found' naming the builds there are, 'which-one' when the name fits several. */
export function findBuild(record: TeamRecord, typed: string, field: string): Build {
  const all = record.builds.all();
  const numbered = /^#(\d{1,9})$/.exec(typed)?.[1];
  const meant =
    numbered === undefined
      ? likeNames(
          typed,
          all.map(({ name }) => name),
        )
      : [];
  const found = all.filter(({ id, name }) =>
    numbered === undefined ? meant.includes(name) : id === Number(numbered),
  );
  const [only, ...more] = found;
  if (only !== undefined && more.length === 0) return only;
  if (only !== undefined) {
    throw new UserError('which-one', `Several builds are called like "${typed}". Which one?`, {
      field,
      choices: found.map(buildChoice),
    });
  }
  const known =
    all.length === 0 ? 'None is recorded yet.' : `There is ${all.map(({ name }) => name).join(', ')}.`;
  throw new UserError('not-found', `No build here is called "${typed}". ${known}`);
}

export function suggestBuilds(record: TeamRecord, typed: string): readonly Choice[] {
  return record.builds
    .all()
    .filter(({ name }) => plain(name).includes(plain(typed)))
    .map(buildChoice);
}

const buildChoice = ({ id, name }: Build): Choice => ({ label: name, value: `#${id}` });
