import type { TeamRecord } from '../team-record.ts';
import { partOrNew } from './find-part.ts';
import type { KnownPart } from './part-store.ts';

/** A part as it is when somebody has only said its name. */
export const FIRST_OF_A_PART = {
  origin: 'new',
  needed: 1,
  system: null,
  singleUse: false,
  note: null,
  link: null,
  guess: null,
} as const;

/**
 * The part of this name, written down if nobody has named it before; it then needs as many as were named with it.
 *
 * @throws UserError 'which-one' when the name is close to a known one but not the same.
 */
export function openPart(
  record: TeamRecord,
  buildId: number,
  typed: string,
  quantity: number,
  field?: string,
): { readonly part: KnownPart; readonly isNew: boolean; readonly name: string } {
  const { name, known } = partOrNew(record, buildId, typed, field);
  if (known !== undefined) return { part: known, isNew: false, name };
  const part = record.parts.add({ ...FIRST_OF_A_PART, buildId, name, needed: quantity });
  return { part, isNew: true, name };
}
