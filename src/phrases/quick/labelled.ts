import type { AmountPiece, Line } from './line.ts';

/** One amount for each label, whether labels stand before their amounts or behind; undefined where that does not work out. */
export function labelled<Name extends string>(
  line: Line,
  labels: Readonly<Record<Name, ReadonlySet<string>>>,
): ReadonlyMap<Name, AmountPiece> | undefined {
  const names = Object.keys(labels).filter((name): name is Name => Object.hasOwn(labels, name));
  const marks = line.pieces.flatMap((piece): readonly (AmountPiece | { readonly name: Name })[] => {
    if (piece.is === 'amount') return [piece];
    const name = names.find((each) => labels[each].has(piece.text));
    return name === undefined ? [] : [{ name }];
  });
  const [first] = marks;
  const labelFirst = first !== undefined && 'name' in first;
  const found = new Map<Name, AmountPiece>();
  for (const [at, mark] of marks.entries()) {
    if (!('name' in mark)) continue;
    const amount = marks[labelFirst ? at + 1 : at - 1];
    if (amount === undefined || 'name' in amount || found.has(mark.name)) return undefined;
    found.set(mark.name, amount);
  }
  return found;
}
