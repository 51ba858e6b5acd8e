import { type Choice, UserError } from '../../core/user-error.ts';
import { editDistance, plain } from '../suppliers/supplier.ts';
import type { TeamRecord } from '../team-record.ts';
import type { KnownPart } from './part-store.ts';

/** In front of a name it says: a new part, whatever it looks like. */
export const NEW = '+';

/**
 * The part meant by `#12` or by any of its names, as the crew types it.
 *
 * @param field the option that a picked answer is to fill
 * @throws UserError 'not-found' when there is none, 'which-one' when the name fits several or is only nearly one.
 */
export function findPart(record: TeamRecord, buildId: number, typed: string, field = 'part'): KnownPart {
  const parts = record.parts.ofBuild(buildId);
  const number = /^\s*#\s*(\d{1,9})\s*$/.exec(typed)?.[1];
  const numbered = parts.find(({ id }) => String(id) === number);
  if (numbered !== undefined) return numbered;
  const [only, ...more] = named(typed, parts);
  if (only !== undefined && more.length === 0) return only;
  if (only !== undefined) throw whichOne(`Several parts fit "${typed}". Which one?`, [only, ...more], field);
  const near = nearlyNamed(typed, parts);
  if (near.length > 0) throw whichOne(`No part here is called "${typed}". Is this the one?`, near, field);
  throw new UserError(
    'not-found',
    parts.length === 0
      ? 'No part of this build is known yet. /part add writes one down, and so does the first /order place of it.'
      : `No part here is called "${typed}". Nothing was changed. /part list shows them; /part add writes a new one down.`,
  );
}

/**
 * The part of exactly this name, under any of its names; undefined for a new one.
 *
 * @returns the name without the mark that says it is new
 * @throws UserError 'which-one' when the name is close to a known one: a slip would split a part in two.
 */
export function partOrNew(
  record: TeamRecord,
  buildId: number,
  typed: string,
  field = 'what',
): { readonly name: string; readonly known?: KnownPart } {
  const parts = record.parts.ofBuild(buildId);
  const isNew = typed.startsWith(NEW) && typed.length > NEW.length;
  const name = isNew ? typed.slice(NEW.length).trim() : typed;
  const same = parts.find((part) => namesOf(part).some((one) => plain(one) === plain(name)));
  if (same !== undefined) return { name, known: same };
  if (isNew) return { name };
  const close = parts.filter((part) => namesOf(part).some((one) => isSlip(one, name)));
  if (close.length === 0) return { name };
  throw new UserError(
    'which-one',
    `There is no part "${name}" yet, but there is ${close
      .slice(0, 4)
      .map((part) => part.name)
      .join(', ')}. Which one?`,
    {
      field,
      choices: [
        ...close.slice(0, 4).map((part) => ({ label: part.name.slice(0, 80), value: part.name })),
        { label: `New: ${name}`.slice(0, 80), value: `${NEW}${name}` },
      ],
    },
  );
}

/** Parts that fit what is typed so far, by any of their names. */
export function suggestParts(record: TeamRecord, buildId: number, typed: string): readonly Choice[] {
  const wanted = plain(typed.replace('#', ''));
  return record.parts
    .ofBuild(buildId)
    .filter((part) => namesOf(part).some((name) => plain(name).includes(wanted)))
    .map(partChoice);
}

export const namesOf = ({ name, alsoCalled }: KnownPart): readonly string[] => [name, ...alsoCalled];

/** Parts of exactly this name, or else those whose name holds it. */
function named(typed: string, parts: readonly KnownPart[]): readonly KnownPart[] {
  const wanted = plain(typed);
  const fits = (test: (name: string) => boolean): readonly KnownPart[] =>
    parts.filter((part) => namesOf(part).some((name) => test(plain(name))));
  const exact = fits((name) => name === wanted);
  return exact.length > 0 ? exact : wanted === '' ? [] : fits((name) => name.includes(wanted));
}

function nearlyNamed(typed: string, parts: readonly KnownPart[]): readonly KnownPart[] {
  const words = plain(typed).split(' ');
  const slips = parts.filter((part) => namesOf(part).some((name) => isSlip(name, typed)));
  if (slips.length > 0 || words.length < 2) return slips;
  return parts.filter((part) =>
    namesOf(part).some((name) => words.every((word) => plain(name).includes(word))),
  );
}

/**
 * The same but for a letter or two in words of some length, or for a space: "stud M10" is not "stud M12", nor "hose a"
 * "hose b".
 */
export function isSlip(known: string, typed: string): boolean {
  if (Math.abs(known.length - typed.length) > MOST_SLIPPED) return false;
  const [a, b] = [plain(known), plain(typed)];
  if (a === b || figures(a) !== figures(b)) return false;
  const [words, others] = [a.split(' '), b.split(' ')];
  if (words.length !== others.length) return a.replaceAll(' ', '') === b.replaceAll(' ', '');
  return words.every((word, index) => isSlipOfAWord(word, others[index] ?? ''));
}

/** Two letters in each of a few words, and some space: what differs more in length is not even looked at. */
const MOST_SLIPPED = 8;

function isSlipOfAWord(a: string, b: string): boolean {
  if (a === b) return true;
  const longest = Math.max(a.length, b.length);
  return longest >= 4 && editDistance(a, b) <= (longest >= 9 ? 2 : 1);
}

const figures = (name: string): string => (name.match(/\d+/g) ?? []).join(' ');

const whichOne = (question: string, parts: readonly KnownPart[], field: string): UserError =>
  new UserError('which-one', question, {
    field,
    choices: parts.map((part) => ({ ...partChoice(part), value: `#${part.id}` })),
  });

const partChoice = ({ name }: KnownPart): Choice => ({
  label: name.slice(0, 100),
  value: name.slice(0, 100),
});
