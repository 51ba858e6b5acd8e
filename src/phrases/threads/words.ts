/** What a word beside the numbers says about the thread. */
export interface WordMeaning {
  readonly side?: 'male' | 'female';
  readonly taper?: 'tapered' | 'parallel';
  readonly name?: { readonly families: readonly ThreadFamilyName[]; readonly series?: readonly string[] };
  readonly fitting?: FittingSystem;
  /** The word says which number is which. */
  readonly role?: 'pitch' | 'diameter' | 'tpi';
  /** The size before it is a name of a pipe, not a length. */
  readonly pipe?: true;
}

export type ThreadFamilyName = 'iso-metric' | 'unified' | 'bsp-parallel' | 'bsp-taper' | 'npt' | 'whitworth';
export type FittingSystem = 'jic37' | 'an37' | 'sae45' | 'orb' | 'orfs' | 'iso6149' | 'banjo';

const MALE: WordMeaning = { side: 'male' };
const FEMALE: WordMeaning = { side: 'female' };
const PITCH: WordMeaning = { role: 'pitch' };
const DIAMETER: WordMeaning = { role: 'diameter' };
const TAPERED: WordMeaning = { taper: 'tapered' };
const PARALLEL: WordMeaning = { taper: 'parallel' };
const bsp = (...families: readonly ThreadFamilyName[]): WordMeaning => ({ name: { families }, pipe: true });
const series = (family: ThreadFamilyName, ...names: readonly string[]): WordMeaning => ({
  name: { families: [family], series: names },
});

const MEANINGS: ReadonlyMap<string, WordMeaning> = new Map<string, WordMeaning>([
  ...['male', 'external', 'outside', 'od', 'o.d', 'o.d.', 'bolt', 'stud', 'screw', 'spigot'].map(
    (word) => [word, MALE] as const,
  ),
  ...['female', 'internal', 'inside', 'id', 'i.d', 'i.d.', 'hole', 'bore', 'nut', 'port'].map(
    (word) => [word, FEMALE] as const,
  ),
  ...['pitch', 'p', 'steigung', 'paso', 'pas'].map((word) => [word, PITCH] as const),
  ...['dia', 'dia.', 'diam', 'diameter', 'ø', 'durchmesser', 'diametro'].map(
    (word) => [word, DIAMETER] as const,
  ),
  ['tpi', { role: 'tpi' }],
  ...['tapered', 'taper', 'conical'].map((word) => [word, TAPERED] as const),
  ...['parallel', 'straight'].map((word) => [word, PARALLEL] as const),
  ['bsp', bsp('bsp-parallel', 'bsp-taper')],
  ['bspp', bsp('bsp-parallel')],
  ['g', bsp('bsp-parallel')],
  ['pf', bsp('bsp-parallel')],
  ['bspt', bsp('bsp-taper')],
  ['r', bsp('bsp-taper')],
  ['rc', bsp('bsp-taper')],
  ['pt', bsp('bsp-taper')],
  ['rp', bsp('bsp-taper', 'bsp-parallel')],
  ['npt', bsp('npt')],
  ['nptf', bsp('npt')],
  ['unc', series('unified', 'UNC')],
  ['unf', series('unified', 'UNF', 'UN', 'UNS')],
  ['unjf', series('unified', 'UNF', 'UN', 'UNS')],
  ['unef', series('unified', 'UNEF')],
  ['un', series('unified', 'UN', 'UNC', 'UNF', 'UNEF', 'UNS')],
  ['uns', series('unified', 'UNS', 'UN')],
  ['bsw', series('whitworth', 'BSW')],
  ['whitworth', series('whitworth', 'BSW')],
  ['bsf', series('whitworth', 'BSF')],
  ['bsb', series('whitworth', 'BSB')],
  ['metric', { name: { families: ['iso-metric'] } }],
  ['jic', { fitting: 'jic37' }],
  ['an', { fitting: 'an37' }],
  ['orb', { fitting: 'orb' }],
  ['orfs', { fitting: 'orfs' }],
  ['sae45', { fitting: 'sae45' }],
  ['iso6149', { fitting: 'iso6149' }],
  ['banjo', { fitting: 'banjo' }],
]);

/** Words people put round a size that change nothing. */
const PADDING = new Set(
  'what whats is a an the thread threads threaded size of for it its my this i have got about about approx approximately ca circa roughly drill tap measured measures reads caliper calliper calipers rule gauge gewinde rosca filetage'.split(
    ' ',
  ),
);

export function meaningOf(word: string): WordMeaning | undefined {
  return MEANINGS.get(word.replace(/[.'-]+$/u, '')) ?? MEANINGS.get(word);
}

export function isPadding(word: string): boolean {
  return PADDING.has(word.replace(/['.?!]/gu, ''));
}
