import type { Meaning, PartOfDay, Steer, Unit } from './meanings.ts';

/**
 * The words of the grammar, English and German together: a crew mixes them. Each line is a meaning and how it is
 * written; a word may stand on several lines. Spelling slips that are more than one letter off stand here as words.
 */
const WEEKDAYS: readonly (readonly [number, string])[] = [
  [1, 'monday mon mondy montag'],
  [2, 'tuesday tue tues tuesdy tusday dienstag dienst'],
  [3, 'wednesday wed weds wensday wendsday wednsday mittwoch'],
  [4, 'thursday thu thur thurs thrusday donnerstag'],
  [5, 'friday fri freitag'],
  [6, 'saturday sat saterday satday samstag sonnabend'],
  [7, 'sunday sun sonntag'],
];

/** Two letters are a weekday in German only: in English "so" and "do" are other words. */
const GERMAN_SHORT: readonly (readonly [number, string])[] = [
  [1, 'mo'],
  [2, 'di'],
  [3, 'mi'],
  [4, 'do'],
  [5, 'fr'],
  [6, 'sa'],
  [7, 'so'],
];

const MONTHS: readonly (readonly [number, string])[] = [
  [1, 'january jan januar jänner januars'],
  [2, 'february feb febuary febuary feburary februar feber'],
  [3, 'march mar märz mrz'],
  [4, 'april apr'],
  [5, 'may mai'],
  [6, 'june jun juni'],
  [7, 'july jul juli'],
  [8, 'august aug'],
  [9, 'september sept sep'],
  [10, 'october oct oktober okt'],
  [11, 'november nov'],
  [12, 'december dec dezember dez'],
];

const UNITS: Readonly<Record<Unit, string>> = {
  minute: 'minute minutes min mins minuten',
  hour: 'hour hours hr hrs h stunde stunden std',
  day: 'day days d tag tage tagen tages',
  workday: 'workday workdays arbeitstag arbeitstage arbeitstagen arbeitstages',
  werktag: 'werktag werktage werktagen werktages',
  weekday: 'weekday weekdays',
  week: 'week weeks wk wks woche wochen',
  fortnight: 'fortnight fortnights',
  month: 'month months mth mths monat monate monaten monats',
  quarter: 'quarters quartal quartals quartale quartalen',
  year: 'year years yr yrs jahr jahre jahren jahres',
};

const DAYWORDS: readonly (readonly [number, string])[] = [
  [0, 'today tday 2day heute'],
  [1, 'tomorrow tommorow tommorrow tomorow tomorro tmrw tmr tmrow tomoz 2moro 2mrw 2morrow morgen'],
  [2, 'overmorrow übermorgen'],
  [3, 'überübermorgen'],
  [-1, 'yesterday yday gestern'],
  [-2, 'vorgestern'],
];

const PARTS: Readonly<Record<PartOfDay, string>> = {
  morning: 'morning morn mornings früh morgen morgens vormittag vormittags',
  noonish: 'lunchtime lunch mittag mittags dinnertime',
  afternoon: 'afternoon arvo nachmittag nachmittags teatime',
  evening: 'evening eve abend abends',
  night: 'night nite nacht nachts',
};

const STEERS: Readonly<Record<Steer, string>> = {
  about:
    'about around approx approximately roughly circa ca ish maybe perhaps probably hopefully possibly likely tentatively etwa ungefähr vielleicht wahrscheinlich voraussichtlich gegen hoffentlich',
  after: 'after nach',
  ago: 'ago back',
  and: 'and und',
  asap: 'asap sofort schnellstmöglich baldmöglichst immediately straightaway urgent dringend',
  at: 'at um',
  before: 'before vor',
  beginning: 'beginning anfang',
  between: 'between zwischen',
  business: 'business',
  by: 'by bis due deadline expected arriving',
  close: 'close',
  coming: 'coming kommenden kommender kommende kommendes kommendem upcoming',
  couple: 'couple paar',
  daybefore: 'vorabend',
  dash: '-',
  early: 'early zeitig',
  earliest: 'earliest frühestens',
  end: 'end ende ultimo',
  endofday: 'eod cob eob cop feierabend geschäftsschluss dienstschluss',
  ending: 'ending',
  every:
    'every each daily weekly monthly täglich wöchentlich monatlich jeden jede jeder fridays mondays tuesdays wednesdays thursdays saturdays sundays freitags montags dienstags mittwochs donnerstags samstags sonntags sonnabends weekdays',
  few: 'few several some einige einigen einiger ein-paar',
  'first-thing': 'firstthing',
  following: 'following darauf folgenden folgende darauffolgenden',
  for: 'for für zum zu',
  from: 'from since ab seit von vom',
  half: 'half',
  halb: 'halb halben halbe halbes',
  holiday: 'holiday hol feiertag',
  in: 'in im inside',
  just: 'just right gerade eben',
  last: 'last letzten letzter letzte letztes vorigen voriger vorige voriges vergangenen vergangene vergangener previous',
  late: 'late spät',
  later: 'later später',
  latest: 'latest spätestens',
  mid: 'mid middle mitte',
  midnight: 'midnight mitternacht',
  monthend: 'eom monatsende monatsletzten',
  never: 'never nie niemals',
  next: 'next nxt nächsten nächster nächste nächstes nächstem',
  nextbutone: 'übernächsten übernächste übernächster übernächstes',
  no: 'no',
  noon: 'noon midday',
  not: 'not nicht',
  now: 'now jetzt',
  oclock: 'oclock',
  of: 'of des der',
  on: 'on am an',
  one: 'one',
  or: 'or oder bzw',
  other: 'other',
  past: 'past',
  play: 'play',
  plus: '+',
  quarter: 'quarter',
  sharp: 'sharp pünktlich exactly genau',
  slash: '/',
  soon: 'soon shortly bald demnächst sometime-soon',
  sometime: 'sometime anytime over during irgendwann übers während',
  start: 'start',
  starting: 'starting beginning-from',
  than: 'than als',
  the: 'the den dem der die das',
  thing: 'thing',
  this: 'this diesen dieser diese dieses diesem',
  till: 'till til',
  time: 'time zeit',
  to: 'to thru through',
  uhr: 'uhr',
  until: 'until',
  viertel: 'viertel',
  weekend: 'weekend wochenende wkend',
  weekending: 'w/e weekending',
  weekof: 'w/c w/b',
  weekno: 'kw kalenderwoche',
  within: 'within innerhalb binnen',
  working: 'working work',
  yearend: 'eoy jahresende',
};

const NUMBERS: readonly (readonly [number, string])[] = [
  [0, 'zero'],
  [1, 'one a an ein eine einen einem einer eins eines'],
  [2, 'two zwei zwo beiden'],
  [3, 'three drei'],
  [4, 'four vier'],
  [5, 'five fünf'],
  [6, 'six sechs'],
  [7, 'seven sieben'],
  [8, 'eight acht'],
  [9, 'nine neun'],
  [10, 'ten zehn'],
  [11, 'eleven elf'],
  [12, 'twelve zwölf'],
  [13, 'thirteen dreizehn'],
  [14, 'fourteen vierzehn'],
  [15, 'fifteen fünfzehn'],
  [16, 'sixteen sechzehn'],
  [17, 'seventeen siebzehn'],
  [18, 'eighteen achtzehn'],
  [19, 'nineteen neunzehn'],
  [20, 'twenty zwanzig'],
  [21, 'twentyone einundzwanzig'],
  [25, 'twentyfive fünfundzwanzig'],
  [28, 'twentyeight achtundzwanzig'],
  [30, 'thirty dreißig dreissig'],
  [60, 'sixty sechzig'],
  [90, 'ninety neunzig'],
];

const ENGLISH_ORDINALS =
  'first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth thirteenth fourteenth fifteenth sixteenth seventeenth eighteenth nineteenth twentieth twentyfirst twentysecond twentythird twentyfourth twentyfifth twentysixth twentyseventh twentyeighth twentyninth thirtieth thirtyfirst';
const GERMAN_ORDINALS =
  'erste zweite dritte vierte fünfte sechste siebte achte neunte zehnte elfte zwölfte dreizehnte vierzehnte fünfzehnte sechzehnte siebzehnte achtzehnte neunzehnte zwanzigste einundzwanzigste zweiundzwanzigste dreiundzwanzigste vierundzwanzigste fünfundzwanzigste sechsundzwanzigste siebenundzwanzigste achtundzwanzigste neunundzwanzigste dreißigste einunddreißigste';

/** Lower case, no apostrophes, no umlauts: the form under which words are looked up. */
export function fold(word: string): string {
  return word.replaceAll("'", '').replaceAll('ß', 'ss').normalize('NFD').replaceAll(/\p{M}/gu, '');
}

/** Meanings by folded word, and which of them a misspelt word may be taken for. */
export interface WordBook {
  readonly meanings: ReadonlyMap<string, readonly Meaning[]>;
  readonly forgiving: readonly string[];
}

/** Builds the word book; `names` are the words that occur in named days. */
export function wordBook(names: readonly string[], germanShort: boolean): WordBook {
  const meanings = new Map<string, Meaning[]>();
  const forgiving = new Set<string>();
  function put(spellings: string, meaning: Meaning, forgive: boolean): void {
    for (const spelling of spellings.split(' ').flatMap(umlautSpellings)) {
      const word = fold(spelling);
      const known = meanings.get(word) ?? [];
      if (!known.some((other) => JSON.stringify(other) === JSON.stringify(meaning))) known.push(meaning);
      meanings.set(word, known);
      if (forgive && word.length >= 4) forgiving.add(word);
    }
  }
  for (const [n, words] of WEEKDAYS) put(words, { is: 'weekday', n }, true);
  for (const [n, words] of germanShort ? GERMAN_SHORT : []) put(words, { is: 'weekday', n }, false);
  for (const [n, words] of MONTHS) put(words, { is: 'month', n }, true);
  for (const [unit, words] of entries(UNITS)) put(words, { is: 'unit', unit }, true);
  for (const [offset, words] of DAYWORDS) put(words, { is: 'dayword', offset }, true);
  for (const [part, words] of entries(PARTS)) put(words, { is: 'part', part }, part !== 'night');
  for (const [word, words] of entries(STEERS)) put(words, { is: 'steer', word }, false);
  for (const word of [
    'before',
    'working',
    'business',
    'weekend',
    'within',
    'latest',
    'kommenden',
    'nächsten',
    'spätestens',
  ])
    forgiving.add(fold(word));
  for (const [n, words] of NUMBERS) put(words, { is: 'number', n, digits: '' }, false);
  for (const [index, word] of ENGLISH_ORDINALS.split(' ').entries())
    put(word, { is: 'ordinal', n: index + 1 }, false);
  for (const [index, word] of GERMAN_ORDINALS.split(' ').entries())
    put(`${word} ${word}n ${word}r ${word}s`, { is: 'ordinal', n: index + 1 }, false);
  put('am', { is: 'meridiem', half: 'am' }, false);
  put('pm', { is: 'meridiem', half: 'pm' }, false);
  for (const name of names) put(name, { is: 'name', text: fold(name) }, true);
  return { meanings, forgiving: [...forgiving] };
}

/** `übermorgen` is also typed `uebermorgen`; folding already covers `ubermorgen`. */
function umlautSpellings(word: string): readonly string[] {
  const spelledOut = word.replaceAll('ä', 'ae').replaceAll('ö', 'oe').replaceAll('ü', 'ue');
  return spelledOut === word ? [word] : [word, spelledOut];
}

function entries<K extends string>(table: Readonly<Record<K, string>>): readonly (readonly [K, string])[] {
  // Object.entries forgets the key type of a closed record.
  return Object.entries(table) as [K, string][];
}
