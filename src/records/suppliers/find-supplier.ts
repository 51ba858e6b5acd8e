import { type Choice, UserError } from '../../core/user-error.ts';
import type { TeamRecord } from '../team-record.ts';
import { likeNames, plain, type Supplier } from './supplier.ts';

/** In front of a name it says: a new supplier, whatever it looks like. */
const NEW = '+';

/**
 * The supplier of this name, new if nobody of that name or a similar one is known.
 *
 * @param field the option that a picked answer is to fill
 * @throws UserError 'which-one' when the name is close to a known one but not the same: a slip would split a supplier's
 * history in two.
 */
export function supplierOrNew(
  record: TeamRecord,
  typed: string,
  field = 'supplier',
): { readonly name: string; readonly known?: Supplier } {
  const all = record.suppliers.all();
  const name = typed.startsWith(NEW) ? typed.slice(NEW.length).trim() : typed;
  const same = all.find((supplier) => plain(supplier.name) === plain(name));
  if (same) return { name: same.name, known: same };
  if (typed.startsWith(NEW)) return { name };
  const close = likeNames(
    name,
    all.map((supplier) => supplier.name),
  );
  if (close.length === 0) return { name };
  throw new UserError(
    'which-one',
    `There is no supplier "${name}" yet, but there is ${close.join(', ')}. Which one?`,
    {
      field,
      choices: [...close.slice(0, 4).map(asChoice), { label: `New: ${name}`, value: `${NEW}${name}` }],
    },
  );
}

/** @throws UserError 'not-found' naming those that are known. */
export function knownSupplier(record: TeamRecord, typed: string): Supplier {
  const all = record.suppliers.all();
  const [meant] = likeNames(
    typed,
    all.map(({ name }) => name),
  );
  const found = all.find(({ name }) => name === meant);
  if (found) return found;
  const names =
    all.length === 0
      ? 'Nobody has been ordered from yet.'
      : `Known: ${all.map(({ name }) => name).join(', ')}.`;
  throw new UserError('not-found', `There is no supplier "${typed}". ${names}`);
}

export function suggestSuppliers(record: TeamRecord, typed: string): readonly Choice[] {
  return record.suppliers
    .all()
    .map(({ name }) => name)
    .filter((name) => plain(name).includes(plain(typed)))
    .map(asChoice);
}

const asChoice = (name: string): Choice => ({ label: name, value: name });
