import { meaningOf } from '../threads/words.ts';
import { type Line, lineOf } from './line.ts';
import { answer, ask, type QuickReading } from './reading.ts';
import { drillFor, PITCH, pitchAlone, spelledOut, withoutPitch } from './thread-asked.ts';
import { strangeThread, threadTalk } from './thread-talk.ts';
import { otherDiameter, type SizeRead, sizeOrQuestion } from './thread-words.ts';
import { covers, has, PARTS, vocabulary } from './vocabulary.ts';

const DRILL = vocabulary(
  'drill drilling tap tapping tapped kernloch kernlochbohrer kernbohrung bohrer vorbohren foret taraud broca macho',
);
/** A number size said in words. */
const NUMBER_SIZE = /\bno\.? ?(?=\d{1,2}-\d\d\b)/u;
const OTHERS = vocabulary(
  "m x by with and und dia od id tpi threads over about approx ca circa what's thread is this standard normal coarse size gauge diameter durchmesser diametro ø across p steigung",
);
const ASKED_ALONE =
  /^(?:(?:what|which|wich) thread(?: is (?:this|it|that))?|thread|welches gewinde|quel filetage)(?: ?\?)?$/u;

/** A thread by its readings or its name; its pitch, or the drill before the tap. */
export function readThreadLine(said: Line): QuickReading | undefined {
  const line = plainThread(said);
  if (ASKED_ALONE.test(line.text))
    return /\?/u.test(line.text) || line.text.includes(' ')
      ? ask('thread', 'What was measured across, and which pitch?', [
          { label: 'Diameter and pitch', text: '… x …', open: true },
        ])
      : undefined;
  if (line.amounts.length === 0 && !line.words.some((word) => /^m\d+$/u.test(word))) return undefined;
  const likely = threadTalk(line);
  if (likely === 'talk' || !coveredWords(line)) return undefined;
  const forDrill = has(line, DRILL);
  const found = sizeOrQuestion(
    withoutPitchWord(line),
    DRILL,
    vocabulary("what's thread what which how is has have got this standard normal"),
  );
  if (found === undefined) return pitchAlone(line);
  if (!('read' in found)) {
    return ask(
      'thread',
      'Which is the diameter, and which the pitch?',
      found.choices.map(({ label, value }) => ({ label, text: value })),
    );
  }
  return likely === 'doubt' ? spelledOut(found) : ofSize(line, found, forDrill);
}

/** A pipe's or inch thread is asked for in mm: what it measures is told in both anyway. */
const IN_UNIT =
  /(?<=\b(?:bsp\w?|npt\w?|un[cfs]|unef|bs[wf]|whitworth|jic|g ?\d\S*)\b.*) (?:in|to) (?:mm|millimet(?:re|er)s?|inch(?:es)?|metric)(?=[ ?]*$)/u;

function plainThread(said: Line): Line {
  const stripped = said.text.replace(IN_UNIT, '');
  const line = stripped === said.text ? said : { ...(lineOf(stripped) ?? said), asks: said.asks };
  return NUMBER_SIZE.test(line.text) ? asNumberSize(line) : line;
}

/** `no 10-24` is `#10-24`. */
const asNumberSize = (line: Line): Line => ({
  ...line,
  text: line.text.replace(NUMBER_SIZE, '#'),
  words: line.words.filter((word) => word !== 'no' && word !== 'no.'),
});

/** Every word is one of a thread's, or names the part it is on. */
function coveredWords(line: Line): boolean {
  const counted = /threads? in \d/u.test(line.text);
  const strange = line.words.filter(
    (word) => meaningOf(word) === undefined && !/^m\d+$/u.test(word) && !(counted && word === 'in'),
  );
  return covers({ ...line, words: strange }, PARTS, DRILL, PITCH, OTHERS);
}

/** "pitch of m8" asks for it; "pitch 1.25" says it. */
function withoutPitchWord(line: Line): string {
  // no pitch is a fraction of a thread: the pipe's pitch is asked for
  if (/\d\/\d+ ?tpi\b/u.test(line.text)) return line.text.replace(/\btpi\b/u, ' ');
  return asksPitch(line) ? line.text.replace(/\b(?:pitch|steigung|pas|paso|tpi)\b/gu, ' ') : line.text;
}

const asksPitch = (line: Line): boolean => has(line, PITCH) && numbersBesideName(line) === 0;

/** Figures besides those of a name such as M12 or 3/8 BSP. */
function numbersBesideName({ amounts, words, text }: Line): number {
  const named = words.some((word) => /^m\d+$/u.test(word))
    ? 0
    : /\bm ?\d|\b(?:bsp|npt|un[cfs]|unef|bs[wf]|whitworth|g|r)/u.test(text)
      ? 1
      : 0;
  return Math.max(0, amounts.length - named);
}

function ofSize(line: Line, size: SizeRead, forDrill: boolean): QuickReading | undefined {
  const { read, diameterMm, pitchMm, lengthMm } = size;
  const { named, side, fitting } = read;
  const family = named?.families?.[0] ?? '';
  const pipe = family.startsWith('bsp') ? 'BSP' : family === 'npt' ? 'NPT' : undefined;
  if (fitting?.dash !== undefined) return undefined;
  const numbers = {
    ...(pipe === undefined ? {} : { family: pipe, size: named?.nominal ?? '' }),
    ...(diameterMm === undefined || pipe !== undefined ? {} : { diameterMm }),
    ...(pitchMm === undefined ? {} : { pitchMm }),
    ...(side === undefined ? {} : { gender: side }),
    ...(lengthMm === undefined ? {} : { lengthMm }),
  };
  const said = { size: size.text };
  if (forDrill) return drillFor(size, numbers);
  if (pipe !== undefined)
    return named?.nominal === undefined ? undefined : answer('thread', 'thread', numbers, said);
  if (pitchMm === undefined) return withoutPitch(line, size);
  if (named?.families?.[0] === 'iso-metric' && line.amounts.length > 3) return undefined;
  const unnamed = named?.families === undefined && read.diameter?.inchName !== true;
  if (otherDiameter(read) || (unnamed && strangeThread(line, size))) return undefined;
  return answer('thread', 'thread', numbers, said);
}
