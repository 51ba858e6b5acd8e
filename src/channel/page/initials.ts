/** Letters of a name, by code point and without marks of direction or spacing. */
function lettersOf(name: string): readonly string[] {
  return [...name.replaceAll(/[^\p{L}\p{N}\p{M}]/gu, '')];
}

/** Two letters for the margin: of the first two words, else the first two of the only one. */
function firstChoice(name: string): string {
  const words = name.split(/[\s._-]+/u).filter((word) => lettersOf(word).length > 0);
  const [one = '', two] = words;
  const first = lettersOf(one)[0] ?? '?';
  const second = two === undefined ? lettersOf(one)[1] : lettersOf(two)[0];
  return first.toUpperCase() + (two === undefined ? (second ?? '') : (second ?? '').toUpperCase());
}

/** Initials for everybody, no two alike while their letters allow it; earlier names keep the plainest ones. */
export function initialsFor(names: readonly string[]): ReadonlyMap<string, string> {
  const given = new Map<string, string>();
  const taken = new Set<string>();
  for (const name of names) {
    if (given.has(name)) continue;
    const letters = lettersOf(name);
    const others = letters.slice(1).map((letter) => (letters[0] ?? '?').toUpperCase() + letter.toLowerCase());
    const plain = firstChoice(name);
    const free = [plain, ...others].find((initials) => !taken.has(initials)) ?? plain;
    given.set(name, free);
    taken.add(free);
  }
  return given;
}
