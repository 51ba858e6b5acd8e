import { meaningOf } from '../threads/words.ts';
import type { Line } from './line.ts';
import { answer, ask, type QuickReading } from './reading.ts';
import { otherDiameter, type SizeRead, sizeOrQuestion } from './thread-words.ts';
import { covers, has, PARTS, vocabulary } from './vocabulary.ts';
import { wholePair } from './whole-pair.ts';

const DRILL = vocabulary(
  'drill drilling tap tapping tapped kernloch kernlochbohrer kernbohrung bohrer vorbohren foret taraud broca macho',
);
const PITCH = vocabulary('pitch steigung pas paso tpi');
/** A number size said in words. */
const NUMBER_SIZE = /\bno\.? ?(?=\d{1,2}-\d\d\b)/u;
/** Diameter, pitch and length; a tolerance beside a reading; a span over its threads. */
const MOST_FIGURES = 4;
/** No thread, pitch or bolt is more; a tyre is. */
const LARGEST_FIGURE = 200;
/** Past this a diameter is a bore's. */
const LARGEST_MM = 64;
/** The coarsest threads in use have a pitch of a quarter of their diameter. */
const STEEPEST = 0.3;
/** Larger names are of engines and cars. */
const LARGEST_NAMED = 36;
const OTHERS = vocabulary(
  "m x by with dia od id tpi threads over about approx ca circa what's thread is this standard normal coarse size gauge diameter durchmesser diametro ø across p steigung",
);
/** What may stand between a diameter and a pitch. */
const BETWEEN = new Set(
  'x by with and pitch p steigung paso pas dia diameter durchmesser od id tpi threads over in m mm'.split(
    ' ',
  ),
);
const ASKED_ALONE =
  /^(?:(?:what|which|wich) thread(?: is (?:this|it|that))?|thread|welches gewinde|quel filetage)(?: ?\?)?$/u;
const NOT_SIZES = /^\d+ in \d+$|\d ?: ?\d|\d{5}|\d-\d+-\d/u;

/** A thread by its readings or its name; its pitch, or the drill before the tap. */
export function readThreadLine(said: Line): QuickReading | undefined {
  const line = NUMBER_SIZE.test(said.text) ? asNumberSize(said) : said;
  if (ASKED_ALONE.test(line.text))
    return /\?/u.test(line.text) || line.text.includes(' ')
      ? ask('thread', 'What was measured across, and which pitch?', [
          { label: 'Diameter and pitch', text: '… x …', open: true },
        ])
      : undefined;
  if (line.amounts.length === 0 && !line.words.some((word) => /^m\d+$/u.test(word))) return undefined;
  if (NOT_SIZES.test(line.text) || !coveredWords(line) || !joined(line)) return undefined;
  const pair = wholePair(line);
  if (pair === 'talk' || line.amounts.length > MOST_FIGURES || counted(line)) return undefined;
  if (line.amounts.some(({ value }) => value > LARGEST_FIGURE)) return undefined;
  const forDrill = has(line, DRILL);
  const found = sizeOrQuestion(
    withoutPitchWord(line),
    DRILL,
    vocabulary("what's thread what which how is this standard normal"),
  );
  if (found === undefined) return pitchAlone(line);
  if (!('read' in found)) {
    return ask(
      'thread',
      'Which is the diameter, and which the pitch?',
      found.choices.map(({ label, value }) => ({ label, text: value })),
    );
  }
  return pair === 'doubt' ? spelledOut(found) : ofSize(line, found, forDrill);
}

/** The one thread that two bare numbers can be, to be said back with its units. */
function spelledOut({ read }: SizeRead): QuickReading | undefined {
  const [pitch] = read.pitches;
  if (read.diameter === undefined || pitch === undefined) return undefined;
  const text = `${read.diameter.text} mm x ${pitch.text} ${pitch.how === 'tpi' ? 'tpi' : 'mm'}`;
  return ask('thread', 'A diameter and a pitch?', [{ label: text, text }]);
}

/** `no 10-24` is `#10-24`. */
const asNumberSize = (line: Line): Line => ({
  ...line,
  text: line.text.replace(NUMBER_SIZE, '#'),
  words: line.words.filter((word) => word !== 'no' && word !== 'no.'),
});

/** A pitch says half of it. */
function pitchAlone({ amounts, words, text }: Line): QuickReading | undefined {
  const [only, ...more] = amounts;
  const isPitch = only !== undefined && (only.unit === 'tpi' || words.some((word) => PITCH.has(word)));
  if (!isPitch || more.length > 0 || words.some((word) => PARTS.has(word))) return undefined;
  const pitch = only.unit === '' ? `${only.figures} mm` : text.trim();
  return ask('thread', 'How much does it measure across?', [
    {
      label: `A diameter with ${pitch}`.slice(0, 34),
      text: `… x ${only.figures} ${only.unit || 'mm'}`,
      open: true,
    },
  ]);
}

/** `2 x 1/8 npt`, `4 m8`: how many of them. */
const counted = ({ text }: Line): boolean =>
  /^\d{1,2}(?: ?x ?| )(?:m ?\d|\d{1,2}\/\d|#)/u.test(text) && !/^[1-4] \d{1,2}\/\d/u.test(text);

/** Every word is one of a thread's, or names the part it is on. */
function coveredWords(line: Line): boolean {
  const counted = /threads? in \d/u.test(line.text);
  const strange = line.words.filter(
    (word) => meaningOf(word) === undefined && !/^m\d+$/u.test(word) && !(counted && word === 'in'),
  );
  return covers({ ...line, words: strange }, PARTS, DRILL, PITCH, OTHERS);
}

/** Nothing but a joining word stands between the first number and the second. */
function joined({ pieces }: Line): boolean {
  const at = pieces.flatMap((piece, index) => (piece.is === 'amount' ? [index] : []));
  const [first, second] = at;
  if (first === undefined || second === undefined) return true;
  return pieces.slice(first + 1, second).every((piece) => piece.is !== 'amount' && BETWEEN.has(piece.text));
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
    : /\bm ?\d|\b(?:bsp|npt|g|r)/u.test(text)
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
  if (forDrill)
    return named?.nominal === undefined ? undefined : answer('thread', 'tap-drill', numbers, said);
  if (pipe !== undefined)
    return named?.nominal === undefined ? undefined : answer('thread', 'thread', numbers, said);
  if (pitchMm === undefined) return withoutPitch(line, size);
  if (named?.families?.[0] === 'iso-metric' && line.amounts.length > 3) return undefined;
  if (otherDiameter(read) || (named?.nominal === undefined && strange(line, size))) return undefined;
  return answer('thread', 'thread', numbers, said);
}

/** What no thread has: too steep, too large, or a size in inches beside a bare pitch in mm. */
function strange({ amounts }: Line, { diameterMm = 0, pitchMm = 0, read }: SizeRead): boolean {
  const bare = amounts.every(({ unit }) => unit === '');
  const mixed =
    bare &&
    (read.diameter?.mm ?? 0) !== Number(read.diameter?.text.replace(',', '.')) &&
    read.pitches[0]?.how === 'mm';
  return pitchMm > STEEPEST * diameterMm || diameterMm > LARGEST_MM || mixed;
}

function withoutPitch(line: Line, { read, text, diameterMm }: SizeRead): QuickReading | undefined {
  const { named } = read;
  const name = named?.nominal;
  if (named?.families?.[0] !== 'iso-metric' || name === undefined || Number(name) > LARGEST_NAMED)
    return undefined;
  if (has(line, PITCH))
    return answer('thread', 'thread-pitch', { diameterMm: diameterMm ?? Number(name) }, { size: text });
  if (line.words.some((word) => PARTS.has(word))) return undefined;
  return {
    verdict: 'ask',
    kind: 'thread',
    question: `M${name}: what is to be known of it?`,
    candidates: [
      { kind: 'thread', label: `Pitch and drill of M${name}`, text: `pitch of m${name}` },
      { kind: 'torque', label: `Torque of M${name}, class 8.8`, text: `m${name} 8.8` },
      { kind: 'torque', label: `Torque of M${name}, class 10.9`, text: `m${name} 10.9` },
    ],
  };
}
