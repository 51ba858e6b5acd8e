import { isArray, isObject, type Json, type JsonObject } from '../wire/json.ts';
import type { Path, Problems } from './problems.ts';

/** Bounds of a length or a number, both included. */
export interface Bounds {
  readonly min?: number;
  readonly max: number;
}

interface Need {
  readonly required?: boolean;
}

const absent = (value: unknown): boolean => value === undefined || value === null;

function missing(problems: Problems, path: Path, value: unknown, { required }: Need): boolean {
  if (!absent(value)) return false;
  if (required === true) problems.add(path, 'BASE_TYPE_REQUIRED', 'This field is required');
  return true;
}

/** A text of this length; absent is fine unless required. @returns the text when it is one. */
export function checkText(
  problems: Problems,
  path: Path,
  value: unknown,
  bounds: Bounds & Need,
): string | undefined {
  if (missing(problems, path, value, bounds)) return undefined;
  if (typeof value !== 'string') {
    problems.add(path, 'STRING_TYPE_CONVERT', 'Could not interpret value as string.');
    return undefined;
  }
  checkLength(problems, path, value.length, bounds);
  return value;
}

function checkLength(problems: Problems, path: Path, length: number, { min = 0, max }: Bounds): void {
  if (length >= min && length <= max) return;
  if (min > 0) {
    problems.add(path, 'BASE_TYPE_BAD_LENGTH', `Must be between ${min} and ${max} in length.`);
  } else problems.add(path, 'BASE_TYPE_MAX_LENGTH', `Must be ${max} or fewer in length.`);
}

/** A list of objects of this length; what is no object is named. @returns the objects, in place. */
export function checkList(
  problems: Problems,
  path: Path,
  value: unknown,
  bounds: Bounds & Need,
): readonly JsonObject[] {
  if (missing(problems, path, value, bounds)) return [];
  if (!isArray(value)) {
    problems.add(path, 'LIST_TYPE_CONVERT', 'Only iterables may be used in a ListType');
    return [];
  }
  checkLength(problems, path, value.length, bounds);
  return value.map((one, index) => {
    if (isObject(one)) return one;
    problems.add([...path, index], 'MODEL_TYPE_CONVERT', 'Only dictionaries may be used in a ModelType');
    return {};
  });
}

export function checkNumber(
  problems: Problems,
  path: Path,
  value: unknown,
  { min = Number.NEGATIVE_INFINITY, max, required, whole }: Bounds & Need & { readonly whole?: boolean },
): number | undefined {
  if (missing(problems, path, value, { required: required === true })) return undefined;
  if (typeof value !== 'number' || (whole === true && !Number.isInteger(value))) {
    problems.add(
      path,
      'NUMBER_TYPE_COERCE',
      `Value "${JSON.stringify(value)}" is not ${whole === true ? 'int' : 'a number'}.`,
    );
    return undefined;
  }
  if (value < min)
    problems.add(path, 'NUMBER_TYPE_MIN', `int value should be greater than or equal to ${min}.`);
  if (value > max) problems.add(path, 'NUMBER_TYPE_MAX', `int value should be less than or equal to ${max}.`);
  return value;
}

export function checkBoolean(problems: Problems, path: Path, value: unknown): void {
  if (!absent(value) && typeof value !== 'boolean') {
    problems.add(path, 'BOOLEAN_TYPE_CONVERT', 'Must be either true or false.');
  }
}

export function checkChoice(
  problems: Problems,
  path: Path,
  value: Json | undefined,
  allowed: readonly Json[],
  need: Need = {},
): void {
  if (missing(problems, path, value, need)) return;
  if (value !== undefined && !allowed.includes(value)) {
    problems.add(path, 'BASE_TYPE_CHOICES', `Value must be one of {${allowed.join(', ')}}.`);
  }
}

/** Adds one problem for each value that was there before it in the list. */
export function checkDistinct(
  problems: Problems,
  entries: readonly { readonly path: Path; readonly value: string }[],
  code: string,
  message: string,
): void {
  const seen = new Set<string>();
  for (const { path, value } of entries) {
    if (seen.has(value)) problems.add(path, code, message);
    seen.add(value);
  }
}
