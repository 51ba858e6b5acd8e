import { UserError } from '../core/user-error.ts';

/**
 * A property class or grade as it is said: `10.9`, `12,9`, `grade 8`, `gr8`, `A2-70`, `a4 80`.
 *
 * @param known the classes there are, as they are written.
 * @throws UserError 'bad-input' listing them.
 */
export function readBoltClass(typed: string, known: readonly string[]): string {
  const text = typed
    .trim()
    .toLowerCase()
    .replace(',', '.')
    .replace(/^(?:property )?class\s*/u, '');
  const grade = /^(?:sae\s*)?(?:grade|gr\.?|g)\s*([1258])$|^([1258])$/u.exec(text);
  const stainless = /^(a[24])[\s-]*(50|70|80)$/u.exec(text);
  const id =
    grade !== null
      ? `grade ${grade[1] ?? grade[2] ?? ''}`
      : stainless !== null
        ? `${stainless[1]?.toUpperCase() ?? ''}-${stainless[2] ?? ''}`
        : text;
  if (known.includes(id)) return id;
  throw new UserError('bad-input', `“${typed}” is no class of bolt I know. Known: ${known.join(', ')}.`);
}
