import type { Guide } from '../../calc/guide/guide.ts';
import { allGuides } from './guide-book.ts';
import { folded, phrasesOf, wordsOf } from './symptom-words.ts';

/** Who does it, and that it does it. */
const BEFORE =
  /^(?:(?:help|hey|it|its|it s|she|he|the|our|my|car|engine|motor|there|is|are|theres|we|i|have|has|had|got|get|weve|ive|still|just|suddenly|now|er|sie|es|der|das|auto|wagen|hat|haben|wir|il|elle|on|n|le|moteur|a|el|coche|no) )+?(?=.)/;
const AFTER = /(?: (?:now|again|at all|today|tonight|still|anymore|any more|yet|mehr|wieder|jetzt|plus))+$/;
/** Names of parts and gauges say nothing of what is wrong with them. */
const ONLY_NAMES: ReadonlySet<string> = new Set([
  'crank sensor',
  'temp gauge',
  'rev limit',
  'hot start',
  'motor de arranque',
]);

/**
 * The guides whose very words a line is, but for who does it and since when: "no spark", "it won't start", "dreht nicht".
 * One word is none ("smoke"), and neither is a sentence with anything else in it.
 */
export function symptomsSaid(line: string): readonly Guide[] {
  const whole = folded(line);
  if (wordsOf(whole).length < 2 || wordsOf(whole).length > MOST_WORDS) return [];
  const bare = whole.replace(AFTER, '');
  const said = [whole, bare, ...shortened(bare)];
  // "the oil light is on" is the oil light on
  const tries = [...said, ...said.map((each) => each.replace(/ (?:is|ist|est) /, ' '))].filter(
    (each) => !ONLY_NAMES.has(each),
  );
  for (const wanted of tries) {
    const fitting = allGuides.filter((guide) => phrasesOf(guide).includes(wanted));
    if (fitting.length > 0) return fitting;
  }
  return [];
}

const MOST_WORDS = 9;

/** The line with one more word before it taken away each time. */
function shortened(line: string): readonly string[] {
  const rest = line.replace(BEFORE, '');
  return rest === line ? [] : [rest, ...shortened(rest)];
}
