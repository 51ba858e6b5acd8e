import { type Choice, UserError } from '../../core/user-error.ts';
import type { TeamRecord } from '../team-record.ts';
import { type Kind, kindsWith } from './kinds.ts';
import { sayReading } from './log-readings.ts';
import type { Reading } from './reading.ts';

/**
 * The reading meant by its number, or the newest of a kind by its name.
 *
 * @throws UserError 'not-found' saying what there is.
 */
export function findReading(record: TeamRecord, buildId: number | undefined, typed: string): Reading {
  const number = /^#?(\d{1,9})$/u.exec(typed.trim())?.[1];
  const byNumber = number === undefined ? undefined : record.readings.find(Number(number));
  if (byNumber !== undefined && byNumber.buildId === buildId) return byNumber;
  if (buildId === undefined) throw nothingYet();
  if (number === undefined) {
    const kind = findKind(record, buildId, typed);
    const latest = record.readings.latest(buildId, kind.name);
    if (latest !== undefined) return latest;
    throw new UserError('not-found', `No ${kind.name} is logged yet. /reading log writes one down.`);
  }
  throw new UserError('not-found', `There is no reading #${number} of this build. /reading list shows them.`);
}

const nothingYet = (): UserError =>
  new UserError(
    'not-found',
    'No reading of this build is logged yet. /reading log writes the first one down.',
  );

/** A kind by its name or one of its words. @throws UserError 'not-found' or 'which-one' about the option `kind`. */
export function findKind(record: TeamRecord, buildId: number | undefined, typed: string): Kind {
  const kinds = kindsWith(buildId === undefined ? [] : record.readingRules.ownKinds(buildId));
  const plain = typed.trim().toLowerCase();
  const exact = kinds.find(({ name }) => name.toLowerCase() === plain);
  if (exact !== undefined) return exact;
  const byWord = kinds.filter(({ words }) => words.includes(plain));
  const found =
    byWord.length > 0
      ? byWord
      : kinds.filter(({ name }) => plain !== '' && name.toLowerCase().includes(plain));
  const [only, another] = found;
  if (only !== undefined && another === undefined) return only;
  if (only !== undefined) {
    throw new UserError('which-one', `"${typed}" can be several kinds of reading. Which one?`, {
      field: 'kind',
      choices: found.map(({ name }) => ({ label: name, value: name })),
    });
  }
  throw new UserError(
    'not-found',
    `"${typed}" is no kind of reading here. Known: ${kinds.map(({ name }) => name).join(', ')}. /reading kind makes a new one.`,
  );
}

/** The newest readings, to be offered while one is typed. */
export function suggestReadings(record: TeamRecord, buildId: number, typed: string): readonly Choice[] {
  return record.readings
    .newest(buildId, 100)
    .map((reading) => ({
      label: `#${reading.id} ${sayReading(reading)}`.slice(0, 100),
      value: `#${reading.id}`,
    }))
    .filter(({ label }) => label.toLowerCase().includes(typed.toLowerCase()));
}

/** Lines as they were typed before, the newest first: most readings are taken again under the same conditions. */
export function suggestLines(record: TeamRecord, buildId: number, typed: string): readonly Choice[] {
  const lines = record.readings.newest(buildId, 100).map((reading) => reading.typed);
  return [...new Set(lines)]
    .filter((line) => line.toLowerCase().includes(typed.toLowerCase()) && line.length <= 100)
    .map((line) => ({ label: line, value: line }));
}

/** Kinds to be offered: those measured before come first. */
export function suggestKinds(
  record: TeamRecord,
  buildId: number | undefined,
  typed: string,
): readonly Choice[] {
  const used = buildId === undefined ? [] : record.readings.kindsUsed(buildId).map(({ kind }) => kind);
  const all = kindsWith(buildId === undefined ? [] : record.readingRules.ownKinds(buildId)).map(
    ({ name }) => name,
  );
  return [...new Set([...used, ...all])]
    .filter((name) => name.toLowerCase().includes(typed.toLowerCase()))
    .map((name) => ({ label: name, value: name }));
}
