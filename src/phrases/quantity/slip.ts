/** Whether one letter added, dropped, changed, or two swapped, turns one word into the other. */
export function oneSlip(a: string, b: string): boolean {
  if (a === b || Math.abs(a.length - b.length) > 1) return false;
  let start = 0;
  while (start < a.length && a[start] === b[start]) start += 1;
  let end = 0;
  while (end < Math.min(a.length, b.length) - start && a[a.length - 1 - end] === b[b.length - 1 - end])
    end += 1;
  const [midA, midB] = [a.slice(start, a.length - end), b.slice(start, b.length - end)];
  if (midA.length <= 1 && midB.length <= 1) return true;
  return midA.length === 2 && midB.length === 2 && midA[0] === midB[1] && midA[1] === midB[0];
}

/**
 * The same for units, where a figure or a letter that is a unit by itself makes another unit: cm³ is no slip for cm², nor
 * lb/s for lb/h.
 */
export function unitSlip(word: string, typed: string): boolean {
  if (word.replace(/\D/gu, '') !== typed.replace(/\D/gu, '')) return false;
  const [parts, others] = [word.split('/'), typed.split('/')];
  if (parts.length !== others.length) return false;
  if (parts.length === 1) return oneSlip(word, typed);
  const changed = parts.flatMap((part, index) =>
    part === others[index] ? [] : [{ part, other: others[index] ?? '' }],
  );
  const [only, ...more] = changed;
  return only !== undefined && more.length === 0 && only.part.length > 2 && oneSlip(only.part, only.other);
}
