/** Names that somebody who typed `wanted` may have meant, nearest first: same start, or at most two letters astray. */
export function nearest(wanted: string, names: readonly string[], most = 3): readonly string[] {
  const lower = wanted.toLowerCase();
  return names
    .map((name) => ({ name, away: distance(lower, name.toLowerCase()) }))
    .filter(({ name, away }) => away <= 2 || (lower.length > 1 && name.toLowerCase().startsWith(lower)))
    .sort((a, b) => a.away - b.away)
    .slice(0, most)
    .map(({ name }) => name);
}

/** Edit distance: letters to insert, delete or replace (Levenshtein 1966). */
function distance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let i = 1; i <= a.length; i += 1) {
    const next = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const replace = (row[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(Math.min(replace, (row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1));
    }
    row = next;
  }
  return row[b.length] ?? 0;
}
