import { isObject, type JsonObject, objectsIn } from '../wire/json.ts';
import { CommandKind, Opt } from '../wire/numbers.ts';
import { checkBoolean, checkChoice, checkDistinct, checkList, checkNumber, checkText } from './fields.ts';
import { LIMITS } from './limits.ts';
import type { Path, Problems } from './problems.ts';

const { command: MAX } = LIMITS;

/** Source: documentation, "Application command naming". */
const NAME = /^[-_'\p{L}\p{N}\p{sc=Deva}\p{sc=Thai}]{1,32}$/u;

/** Locales of the platform. Source: documentation, "Locales". */
const LOCALES: readonly string[] = [
  ...[
    'id',
    'da',
    'de',
    'en-GB',
    'en-US',
    'es-ES',
    'es-419',
    'fr',
    'hr',
    'it',
    'lt',
    'hu',
    'nl',
    'no',
    'pl',
    'pt-BR',
  ],
  ...[
    'ro',
    'fi',
    'sv-SE',
    'vi',
    'tr',
    'cs',
    'el',
    'bg',
    'ru',
    'uk',
    'hi',
    'th',
    'zh-CN',
    'ja',
    'zh-TW',
    'ko',
  ],
];

const NUMERIC: readonly number[] = [Opt.integer, Opt.number];
const COMPLETABLE: readonly number[] = [Opt.string, ...NUMERIC];

/** One command as registered: names, lengths, the order and nesting of options, the 8000 budget. */
export function checkCommand(problems: Problems, path: Path, command: JsonObject): void {
  const kind = command['type'] ?? CommandKind.slash;
  checkChoice(problems, [...path, 'type'], kind, Object.values(CommandKind));
  checkLocales(problems, path, command);
  if (kind === CommandKind.slash) {
    checkName(problems, [...path, 'name'], command['name']);
    checkDescription(problems, path, command);
    checkOptions(problems, path, command['options'], 0);
  } else {
    checkText(problems, [...path, 'name'], command['name'], { min: 1, max: MAX.name, required: true });
    if (command['description'] !== undefined && command['description'] !== '') {
      problems.add(
        [...path, 'description'],
        'APPLICATION_COMMANDS_DESCRIPTION_NOT_ALLOWED',
        'Context menu commands have no description',
      );
    }
    if (objectsIn(command['options']).length > 0) {
      problems.add(
        [...path, 'options'],
        'APPLICATION_COMMANDS_OPTIONS_NOT_ALLOWED',
        'Context menu commands have no options',
      );
    }
  }
  const permissions = command['default_member_permissions'];
  if (typeof permissions === 'string' && !/^\d+$/.test(permissions)) {
    problems.add(
      [...path, 'default_member_permissions'],
      'NUMBER_TYPE_COERCE',
      `Value "${permissions}" is not int.`,
    );
  }
  if (budgetOf(command) > MAX.budget) {
    problems.add(path, 'APPLICATION_COMMAND_TOO_LARGE', `Command exceeds maximum size (${MAX.budget})`);
  }
}

/** The commands of one scope together: no name twice within a kind. */
export function checkDistinctNames(problems: Problems, commands: readonly JsonObject[]): void {
  checkDistinct(
    problems,
    commands.map((command, index) => ({
      path: [index],
      value: `${String(command['type'] ?? CommandKind.slash)} ${String(command['name'])}`,
    })),
    'APPLICATION_COMMANDS_DUPLICATE_NAME',
    'Application command names must be unique',
  );
}

function checkName(problems: Problems, path: Path, value: unknown): void {
  const name = checkText(problems, path, value, { min: 1, max: MAX.name, required: true });
  if (name !== undefined && (!NAME.test(name) || name !== name.toLowerCase())) {
    problems.add(path, 'APPLICATION_COMMAND_INVALID_NAME', 'Command name is invalid');
  }
}

function checkDescription(problems: Problems, path: Path, thing: JsonObject): void {
  checkText(problems, [...path, 'description'], thing['description'], {
    min: 1,
    max: MAX.description,
    required: true,
  });
}

function checkLocales(problems: Problems, path: Path, thing: JsonObject): void {
  for (const key of ['name_localizations', 'description_localizations']) {
    const map = thing[key];
    if (!isObject(map)) continue;
    for (const locale of Object.keys(map)) {
      checkChoice(problems, [...path, key, locale], locale, LOCALES);
    }
  }
}

/** @param depth 0 below a command, 1 below a group or a subcommand of it, 2 below a subcommand in a group. */
function checkOptions(problems: Problems, path: Path, value: unknown, depth: number): void {
  const at = [...path, 'options'];
  const options = checkList(problems, at, value, { max: MAX.options });
  const nests = (option: JsonObject) => option['type'] === Opt.subcommand || option['type'] === Opt.group;
  if (options.some(nests) && !options.every(nests)) {
    problems.add(
      at,
      'APPLICATION_COMMAND_OPTIONS_TYPE_INVALID',
      'Sub-command and sub-command group option types are mutually exclusive to all other types',
    );
  }
  let optionalSeen = false;
  options.forEach((option, index) => {
    if (option['required'] === true && optionalSeen) {
      problems.add(
        [...at, index],
        'APPLICATION_COMMAND_OPTIONS_REQUIRED_INVALID',
        'Required options must be placed before non-required options',
      );
    }
    if (!nests(option)) optionalSeen ||= option['required'] !== true;
    checkOption(problems, [...at, index], option, depth);
  });
  checkDistinct(
    problems,
    options.map((option, index) => ({ path: [...at, index, 'name'], value: String(option['name']) })),
    'APPLICATION_COMMAND_OPTIONS_NAME_ALREADY_EXISTS',
    'Option name already exists',
  );
}

function checkOption(problems: Problems, path: Path, option: JsonObject, depth: number): void {
  const { type } = option;
  const nestable = depth === 0 ? [Opt.subcommand, Opt.group] : depth === 1 ? [Opt.subcommand] : [];
  const plain = Object.values(Opt).filter((one) => one !== Opt.subcommand && one !== Opt.group);
  checkChoice(problems, [...path, 'type'], type, [...nestable, ...plain], { required: true });
  checkName(problems, [...path, 'name'], option['name']);
  checkDescription(problems, path, option);
  checkLocales(problems, path, option);
  if (type === Opt.group) {
    checkOptions(problems, path, option['options'], 1);
    return;
  }
  if (type === Opt.subcommand) {
    // What stands below a subcommand can nest no further, whatever the subcommand stands in.
    checkOptions(problems, path, option['options'], 2);
    return;
  }
  checkBoolean(problems, [...path, 'required'], option['required']);
  checkBounds(problems, path, option);
  checkOptionChoices(problems, path, option);
}

function checkBounds(problems: Problems, path: Path, option: JsonObject): void {
  const { type } = option;
  const bound = type === Opt.integer ? MAX.integer : MAX.number;
  const pair = (low: string, high: string, limits: { min: number; max: number }, whole: boolean) => {
    const least = checkNumber(problems, [...path, low], option[low], { ...limits, whole });
    const most = checkNumber(problems, [...path, high], option[high], { ...limits, whole });
    if (least !== undefined && most !== undefined && least > most) {
      problems.add(
        [...path, low],
        'APPLICATION_COMMAND_OPTION_MIN_EXCEEDS_MAX',
        `${low} is greater than ${high}`,
      );
    }
  };
  if (typeof type === 'number' && NUMERIC.includes(type)) {
    pair('min_value', 'max_value', { min: -bound, max: bound }, type === Opt.integer);
  }
  if (type === Opt.string) pair('min_length', 'max_length', { min: 0, max: MAX.optionText }, true);
}

function checkOptionChoices(problems: Problems, path: Path, option: JsonObject): void {
  const at = [...path, 'choices'];
  const choices = checkList(problems, at, option['choices'], { max: MAX.choices });
  const completable = typeof option['type'] === 'number' && COMPLETABLE.includes(option['type']);
  if ((choices.length > 0 || option['autocomplete'] === true) && !completable) {
    problems.add(
      path,
      'APPLICATION_COMMAND_OPTIONS_CHOICES_INVALID',
      'Only text and number options have choices or autocomplete',
    );
  }
  if (choices.length > 0 && option['autocomplete'] === true) {
    problems.add(
      path,
      'APPLICATION_COMMAND_AUTOCOMPLETE_CHOICES',
      'Choices and autocomplete exclude each other',
    );
  }
  choices.forEach((choice, index) => {
    checkText(problems, [...at, index, 'name'], choice['name'], {
      min: 1,
      max: MAX.choiceName,
      required: true,
    });
    if (option['type'] === Opt.string) {
      checkText(problems, [...at, index, 'value'], choice['value'], {
        min: 1,
        max: MAX.choiceText,
        required: true,
      });
    } else
      checkNumber(problems, [...at, index, 'value'], choice['value'], { max: MAX.number, required: true });
  });
  checkDistinct(
    problems,
    choices.map((choice, index) => ({ path: [...at, index, 'name'], value: String(choice['name']) })),
    'APPLICATION_COMMAND_OPTIONS_CHOICE_NAME_ALREADY_EXISTS',
    'Option choice name already exists',
  );
}

/** Characters that count towards a command's budget; of a text in several languages the longest. */
function budgetOf(thing: JsonObject): number {
  const longest = (key: string): number => {
    const map = thing[`${key}_localizations`];
    const texts = [thing[key], ...(isObject(map) ? Object.values(map) : [])];
    return Math.max(0, ...texts.map((text) => (typeof text === 'string' ? text.length : 0)));
  };
  const value = thing['value'];
  const inside = [...objectsIn(thing['options']), ...objectsIn(thing['choices'])];
  return (
    longest('name') +
    longest('description') +
    (value === undefined ? 0 : String(value).length) +
    inside.reduce((sum, one) => sum + budgetOf(one), 0)
  );
}
