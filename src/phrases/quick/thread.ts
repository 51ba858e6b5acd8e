import { meaningOf } from '../threads/words.ts';
import type { AmountPiece, Line } from './line.ts';
import { answer, ask, type QuickReading } from './reading.ts';
import { type SizeRead, sizeOrQuestion } from './thread-words.ts';
import { covers, has, PARTS, vocabulary } from './vocabulary.ts';

const DRILL = vocabulary(
  'drill drilling tap tapping tapped kernloch kernlochbohrer kernbohrung bohrer vorbohren foret taraud broca macho',
);
const PITCH = vocabulary('pitch steigung pas paso tpi');
/** A number size said in words. */
const NUMBER_SIZE = /\bno\.? ?(?=\d{1,2}-\d\d\b)/u;
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
  return ofSize(line, found, forDrill);
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
  if (named?.nominal === undefined && looksLikeCounting(line)) return undefined;
  return answer('thread', 'thread', numbers, said);
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

/** Two small whole numbers side by side are a score or a count as much as a thread. */
function looksLikeCounting({ amounts, words }: Line): boolean {
  const [first, second] = amounts;
  if (first === undefined || second === undefined || words.length > 0) return false;
  const whole = ({ figures, unit }: AmountPiece) => /^\d{1,2}$/u.test(figures) && unit === '';
  return whole(first) && whole(second) && second.after !== 'x';
}
