import type { FittingSystem, NamedSeat } from '../../core/fitting-end.ts';

/** What a phrase says about an end. */
export interface PhraseMeaning {
  readonly systems?: readonly FittingSystem[];
  readonly seats?: readonly NamedSeat[];
  readonly series?: readonly string[];
  readonly gender?: 'male' | 'female';
  /** The side it has unless another is said: a port is female, a bolt male. */
  readonly implies?: 'male' | 'female';
  /** A bolt or a nut, unless a kind or a seat says that it is a fitting. */
  readonly fastener?: true;
  readonly tapered?: boolean;
  readonly washers?: number;
  readonly metric?: true;
}

export interface Phrase {
  readonly pattern: RegExp;
  readonly meaning: PhraseMeaning;
}

const DEG = String.raw` ?(?:°|o\b|degrees?\b|deg\b\.?)?`;
const phrase = (pattern: string, meaning: PhraseMeaning): Phrase => ({
  pattern: new RegExp(pattern, 'gu'),
  meaning,
});
const RING =
  '(?:copper |crush |bonded |sealing |aluminium |alloy |fibre |steel )*(?:washers?|sealing rings?|bonded seals?)';

/** Read in this order, each taken out of the text: phrases before the words they are made of. */
export const PHRASES: readonly Phrase[] = [
  phrase(
    String.raw`\b(?:no|without(?: an?| any)?) (?:washers?|seals?|o-?rings?)(?: (?:or|nor|and) (?:washers?|seals?|o-?rings?))*`,
    {
      seats: ['none'],
    },
  ),
  phrase(String.raw`\bthread only\b|\bbare\b`, { seats: ['none'] }),
  phrase(String.raw`\b(?:two|2) ${RING}\b`, { seats: ['washer'], washers: 2 }),
  phrase(String.raw`\b(?:one|1|a single) ${RING}\b`, { seats: ['washer'], washers: 1 }),
  phrase(String.raw`\b(?:sae )?j ?1926(?:-[1-4])?\b|\biso ?11926(?:-[1-4])?\b`, { systems: ['orb'] }),
  phrase(
    String.raw`\b(?:sae )?j ?1453\b|\biso ?8434-3\b|\borfs\b|\b(?:flat )?(?:o-?ring )?face[- ]seal\b|\bo-?ring flat face\b`,
    {
      systems: ['orfs'],
    },
  ),
  phrase(
    String.raw`\biso ?8434-2\b|\b(?:sae )?j ?514\b|\bjic(?: ?37)?${DEG}(?: flare| cone)?|\b37${DEG} ?(?:flare|cone)?\b`,
    {
      systems: ['jic37'],
    },
  ),
  phrase(
    String.raw`\b(?:sae )?j ?512\b|\bsae[ -]?45${DEG}(?: flare)?|\b45${DEG} ?flare(?! port)\b(?<!double 45${DEG} ?flare)`,
    {
      systems: ['sae45'],
    },
  ),
  phrase(String.raw`\biso ?6149(?:-[1-3])?\b`, { systems: ['iso6149'] }),
  phrase(String.raw`\b(?:sae )?orb\b`, { systems: ['orb'] }),
  phrase(String.raw`\bo-?ring (?:boss|port)\b|\bboss o-?ring\b|\bstraight thread o-?ring\b|\bboss\b`, {
    seats: ['boss-oring'],
  }),
  phrase(String.raw`\bsae\b(?! double)`, { systems: ['sae45', 'orb'] }),
  phrase(String.raw`\b(?:iso |din )?bubble[- ]flare\b|\b(?:iso|din) flare\b`, { seats: ['bubble-flare'] }),
  phrase(String.raw`\b(?:sae )?(?:double|inverted)(?: inverted| double)?(?: 45${DEG})? ?flare\b`, {
    seats: ['double-flare'],
  }),
  phrase(String.raw`\bflare seat(?: at the bottom)?\b|\bseat at the bottom\b`, {
    seats: ['double-flare', 'bubble-flare'],
  }),
  phrase(String.raw`\b30${DEG} ?(?:inverted )?(?:seat|chamfer|cone)\b`, { seats: ['seat30'] }),
  phrase(String.raw`\b(?:jis )?30${DEG} ?(?:jis )?flare\b`, { seats: ['flare30'] }),
  phrase(String.raw`\b(?:with (?:an? )?)?(?:60${DEG} ?(?:bspp? )?(?:cone|seat)|coned)\b`, {
    seats: ['cone60'],
  }),
  phrase(String.raw`\bflared?\b`, { systems: ['jic37', 'sae45'] }),
  phrase(String.raw`\b(?:${RING})|\b(?:flat |spot ?)(?:machined )?(?:face|seat)?\b`, { seats: ['washer'] }),
  phrase(String.raw`\bwith (?:an )?o-?ring\b`, { seats: ['boss-oring', 'face-oring'] }),
  phrase(String.raw`\bbanjo(?: bolt| union| eye)?\b|\bhollow bolt\b|\bdin ?7643\b`, { systems: ['banjo'] }),
  phrase(String.raw`\biso ?228(?:-1)?\b|\bbspp\b|\bpf\b`, { systems: ['g'] }),
  phrase(String.raw`\biso ?7(?:-1)?\b`, { systems: ['r', 'rc', 'rp'] }),
  phrase(String.raw`\bbspt\b|\bpt\b`, { systems: ['r', 'rc'] }),
  phrase(String.raw`\bbsp\b`, { systems: ['g', 'r', 'rc', 'rp'] }),
  phrase(String.raw`\bnptf\b|\bdryseal\b`, { systems: ['nptf'] }),
  phrase(String.raw`\bnpsm\b`, { systems: ['npsm'] }),
  phrase(String.raw`\bnpt\b`, { systems: ['npt'] }),
  phrase(String.raw`\brc\b`, { systems: ['rc'], implies: 'female' }),
  phrase(String.raw`\brp\b`, { systems: ['rp'], implies: 'female' }),
  phrase(String.raw`\br(?= ?\d)`, { systems: ['r'] }),
  phrase(String.raw`\bg(?= ?\d)`, { systems: ['g'] }),
  phrase(String.raw`\ban\b(?= ?-?\d| male| female| swivel|\)|$)|(?<=\d ?)an\b`, { systems: ['an37'] }),
  phrase(String.raw`\bunj?f(?:-?[123][ab])?\b`, { series: ['UNF', 'UN', 'UNS'] }),
  phrase(String.raw`\bunj?c(?:-?[123][ab])?\b`, { series: ['UNC'] }),
  phrase(String.raw`\bunj?ef(?:-?[123][ab])?\b`, { series: ['UNEF'] }),
  phrase(String.raw`\bunj?(?:-?[123][ab])?\b`, { series: ['UN', 'UNC', 'UNF', 'UNEF', 'UNS'] }),
  phrase(String.raw`\buns(?:-?[123][ab])?\b`, { series: ['UNS', 'UN'] }),
  phrase(String.raw`\b(?:bsw|whitworth)\b`, { series: ['BSW'] }),
  phrase(String.raw`\bbsf\b`, { series: ['BSF'] }),
  phrase(String.raw`\bbsb\b`, { series: ['BSB'] }),
  phrase(String.raw`\bmetric\b`, { metric: true }),
  phrase(String.raw`\btaper(?:ed)?\b|\bconical\b`, { tapered: true }),
  phrase(String.raw`\bparallel\b`, { tapered: false }),
  phrase(String.raw`\b(?:female|internal|inside|fem)\b`, { gender: 'female' }),
  phrase(String.raw`\b(?:male|external|outside)\b`, { gender: 'male' }),
  phrase(String.raw`\b(?:port|swivel|socket|hole|tapping|tapped)\b`, { implies: 'female' }),
  phrase(String.raw`\b(?:plug|adapter|adaptor|stub|nipple|spigot)\b`, { implies: 'male' }),
  phrase(String.raw`\b(?:bolt|stud|set ?screw|screw)\b`, { implies: 'male', fastener: true }),
  phrase(String.raw`\b(?:tube |pipe )?nut\b`, { implies: 'female', fastener: true }),
];

/** Kinds whose sizes are dash numbers, so that a bare `6` is one. */
export const DASHED: readonly FittingSystem[] = ['jic37', 'an37', 'sae45', 'orb', 'orfs'];

const PADDING = new Set(
  'a the an of for with and or in on to its it thread threads threaded size fitting fittings end hose tube pipe plain machined steel brass alloy aluminium dash in inch inches mm tpi x sae jis iso din class seat seal sealed straight my this'.split(
    ' ',
  ),
);

/** Words people put round an end that change nothing. */
export function isEndPadding(word: string): boolean {
  return PADDING.has(word.replace(/[.'-]+/gu, ''));
}
