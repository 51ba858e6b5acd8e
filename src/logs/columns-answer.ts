import type { GivenFile } from '../core/given-file.ts';
import type { Answer, Button, Form, FormField } from '../core/reply.ts';
import { UserError } from '../core/user-error.ts';
import type { Undecided } from './analyse.ts';
import { roleWords } from './log-answer.ts';
import type { OpenLog } from './read-log.ts';
import { type Assignment, type Recognised, requiredRoles } from './recognise.ts';
import type { Role } from './words.ts';

/** A select holds no more. */
const MOST_CHOICES = 25;
const MOST_BUTTONS = 4;
const NONE = '-';
const FIELDS = [...requiredRoles, 'trimRatio'] as const;

const wordsOf = (role: Role): string => roleWords[role] ?? role;

/** Says what cannot be told, and how to tell: a button for each fair reading where one column alone is open, and a form for all. */
export function undecidedAnswer(file: GivenFile, { open, names, columns }: Undecided): Answer {
  const [only, ...more] = open;
  const quick: readonly Button[] =
    only === undefined || more.length > 0 || only.candidates.length > MOST_BUTTONS
      ? []
      : only.candidates.map((name) => ({
          label: name.slice(0, 34),
          does: {
            command: 'log',
            action: 'assign',
            args: { file: file.id, [only.role]: String(names.indexOf(name)) },
          },
          weight: 'plain',
        }));
  const what = open.map(({ role }) => wordsOf(role)).join(', ');
  return {
    kind: 'answer',
    subject: 'Which column?',
    result: `${file.name}: which column is the ${what}?`,
    tone: 'soon',
    certainty: 'Nothing is guessed, and nothing was changed. Say it once; it is remembered for this logger.',
    facts: [
      ...open.map(({ role, candidates }): [string, string] => [
        `Could be the ${wordsOf(role)}`,
        candidates.length === 0
          ? 'none that is left: if it was not logged, have the logger write it and drive again'
          : candidates.slice(0, 12).join(', '),
      ]),
      ['Known', columns.map(({ role, name }) => `${wordsOf(role)}: ${name}`).join('; ') || 'none yet'],
    ],
    buttons: [
      ...quick,
      {
        label: 'Say which column is which',
        does: { command: 'log', action: 'columns', args: { file: file.id } },
        weight: 'main',
      },
    ],
    audience: 'crew',
    data: {
      kind: 'log-columns',
      open: open.map(({ role, candidates }) => ({ role, candidates: [...candidates] })),
      columns: [...names],
    },
  };
}

/** A form with a select for each reading that is needed; with more columns than a select holds, a line to type the name on. */
export function columnForm(
  file: GivenFile,
  { layout, recognised }: Pick<OpenLog, 'layout' | 'recognised'>,
): Form {
  const { names } = layout;
  return {
    kind: 'form',
    title: 'Which column is which',
    does: { command: 'log', action: 'assign', args: { file: file.id } },
    fields: FIELDS.map((role): FormField => {
      const required = role !== 'trimRatio';
      const known = recognised.columns.find((column) => column.role === role)?.index;
      const field = { name: role, label: wordsOf(role), required };
      if (names.length >= MOST_CHOICES) {
        return {
          ...field,
          hint: 'The column’s name, as it stands in the log',
          ...(known === undefined ? {} : { value: names[known] ?? '' }),
        };
      }
      return {
        ...field,
        value: known === undefined ? (required ? '' : NONE) : String(known),
        choices: [
          ...(required ? [] : [{ label: 'none', value: NONE }]),
          ...names.map((name, index) => ({
            label: name.slice(0, 100) || `column ${index + 1}`,
            value: String(index),
          })),
        ],
      };
    }),
  };
}

/**
 * What was picked, by the columns' names; what was not asked about stays as it was recognised.
 *
 * @throws UserError 'not-found' for a name that is no column's, 'bad-input' when one column is picked for two readings.
 */
export function assignedBy(
  names: readonly string[],
  recognised: Recognised,
  picked: Readonly<Record<string, string | undefined>>,
): Assignment {
  const roles = new Map<Role, string>();
  for (const { role, name } of recognised.columns)
    if (requiredRoles.some((one) => one === role)) roles.set(role, name);
  for (const role of FIELDS) {
    const typed = picked[role]?.trim();
    if (typed === undefined || typed === '' || typed === NONE) continue;
    const name = names.includes(typed) ? typed : /^\d+$/.test(typed) ? names[Number(typed)] : undefined;
    if (name === undefined) {
      throw new UserError(
        'not-found',
        `No column of that log is called “${typed}”. Nothing was changed. Its columns: ${names.slice(0, 30).join(', ')}.`,
      );
    }
    roles.set(role, name);
  }
  const twice = [...roles.values()].find((name, index, all) => all.indexOf(name) !== index);
  if (twice !== undefined) {
    throw new UserError(
      'bad-input',
      `“${twice}” was picked twice. Nothing was changed. Press the button again and pick one column for each.`,
    );
  }
  return Object.fromEntries(roles);
}
