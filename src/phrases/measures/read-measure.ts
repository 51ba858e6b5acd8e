/** What a sentence about something temporary says, in its own words. */
export interface MeasureSentence {
  /** What was done. */
  readonly what: string;
  /** What undoes it, without what it has to do for that: "hose" of "until the hose comes". */
  readonly until?: string;
  /** Whether that is something that comes or something that is done, where the words tell. */
  readonly untilIs?: 'part' | 'job';
  /** The stage that it must not outlive: as the crew named it, and whether it may last through that one. */
  readonly before?: { readonly words: string; readonly through: boolean };
  /** The stage that it is required for. */
  readonly during?: string;
}

/** Tells whether words name a stage of the build. */
export type IsStage = (words: string) => boolean;

const MARK =
  /(^|[\s,;.(–-]+)(?:and\s+)?(until|till|'?til|pending|awaiting|waiting (?:for|on)|before|must not outlive|not past|no later than|(?:required|needed|wanted) (?:for|at|while|during)|while|whilst|during|for)\s+/giu;

/** What says that it is to be undone, right in front of "before". */
const UNDO =
  /[\s,;.]*(?:\b(?:and|but|then)\s+)?(?:\b(?:it|that|which)\s+)?(?:\b(?:to be|must be|has to be|have to be|needs? to be|should be|must|will|has to|have to)\s+)?\b(?:undone?|undo|reversed?|reverse|removed?|remove|refit(?:ted)?|reconnect(?:ed)?|restored?|take(?:n)? (?:it )?(?:off|out)(?: again)?|(?:comes?|goes?|put|be) (?:it )?(?:back|off|out)(?: (?:on|in|again))?|back (?:on|in)|(?:off|out) again)$/iu;

/** What a part does when it comes, and a job when it is done. */
const COMES =
  /\s+(?:(?:comes?|arrives?|turns? up|gets? here|shows? up|has come|have come|has arrived|came)(?: in| back| here)?|(?:is|are|was|gets?) (?:here|in|back|in hand|delivered|there|made|machined|plated))$/iu;
const DONE =
  /\s+(?:(?:is|are|has been|have been|gets?|was) )?(?:done|finished|completed?|fitted|sealed|mended|repaired|tightened)$/iu;
const ARTICLE = /^(?:the|a|an|our|that|some)\s+(?:(?:new|right|proper|ordered)\s+)?/iu;

type Mark = 'until' | 'before' | 'during';

interface Piece {
  readonly mark: Mark | null;
  readonly text: string;
  /** The words of the mark as typed, so that what was no mark can be put back. */
  readonly lead: string;
  readonly undo: boolean;
  readonly explicit: boolean;
}

/**
 * Reads a sentence such as "blanked the turbo drain until the hose comes, undo before first start". Words that only may mark a
 * stage ("for", "while", "before") count when a stage follows them, or when it was said that something is undone before.
 * Pure: nothing is looked up but whether words name a stage.
 */
export function readMeasure(sentence: string, isStage: IsStage): MeasureSentence {
  const pieces = cut(sentence.replace(/\s+/gu, ' ').trim());
  let what = '';
  const said: { until?: string; before?: MeasureSentence['before']; during?: string } = {};
  for (const piece of pieces) {
    const [words, rest] = splitOff(piece);
    if (
      piece.mark === 'before' &&
      said.before === undefined &&
      (piece.undo || piece.explicit || isStage(bare(words)))
    )
      said.before = { words: bare(words), through: false };
    else if (piece.mark === 'during' && said.during === undefined && (piece.explicit || isStage(bare(words))))
      said.during = bare(words);
    else if (piece.mark === 'until' && said.until === undefined) said.until = words;
    else if (piece.mark !== 'during' || !isStage(bare(words))) {
      what += piece.lead + piece.text;
      continue;
    }
    what += rest === '' ? '' : `, ${rest}`;
  }
  return {
    what: trimmed(what),
    ...untilOf(said, isStage),
    ...(said.during === undefined ? {} : { during: said.during }),
  };
}

/** The words a mark is about, and what follows them behind a comma or the like. */
function splitOff({ mark, text }: Piece): readonly [words: string, rest: string] {
  const parts = mark === null ? null : /^(.*?)[,;:](?!\d)\s*(.*)$/u.exec(text);
  const [, words = '', rest = ''] = parts ?? [];
  const isWhole = mark !== 'until' || COMES.test(words) || DONE.test(words);
  return parts === null || !isWhole ? [trimmed(text), ''] : [trimmed(words), trimmed(rest)];
}

/** "until first start" names a stage; "until after first start" lets it last through that one. */
function untilOf(
  { until, before }: { readonly until?: string; readonly before?: MeasureSentence['before'] },
  isStage: IsStage,
): Pick<MeasureSentence, 'until' | 'untilIs' | 'before'> {
  const kept = before === undefined ? {} : { before };
  if (until === undefined) return kept;
  const through = /^(?:after|past|through)\s+/iu.test(until);
  const stage = bare(until.replace(/^(?:after|past|through)\s+/iu, ''));
  if (before === undefined && isStage(stage)) return { before: { words: stage, through } };
  const comes = COMES.test(until);
  const done = DONE.test(until);
  const thing = bare(until.replace(comes ? COMES : DONE, ''));
  return {
    ...kept,
    until: thing === '' ? until : thing,
    ...(comes ? { untilIs: 'part' as const } : done ? { untilIs: 'job' as const } : {}),
  };
}

function cut(sentence: string): readonly Piece[] {
  const marks = [...sentence.matchAll(MARK)];
  const pieces: Piece[] = [];
  let mark: Mark | null = null;
  let lead = '';
  let explicit = false;
  let undo = false;
  let from = 0;
  const close = (to: number): void => {
    const text = sentence.slice(from, to);
    const tail = UNDO.exec(text);
    pieces.push({ mark, text, lead, undo, explicit });
    undo = tail !== null;
  };
  for (const found of marks) {
    close(found.index);
    const word = (found[2] ?? '').toLowerCase();
    mark = markOf(word);
    explicit = /^(?:required|needed|wanted|must|not past|no later)/u.test(word);
    lead = found[0];
    from = found.index + found[0].length;
  }
  close(sentence.length);
  // what only says that it is undone belongs to the "before" behind it
  return pieces.map((piece, at) =>
    pieces[at + 1]?.mark === 'before' && pieces[at + 1]?.undo === true
      ? { ...piece, text: piece.text.replace(UNDO, '') }
      : piece,
  );
}

function markOf(word: string): Mark {
  if (/^(?:until|till|'?til|pending|awaiting|waiting)/u.test(word)) return 'until';
  return /^(?:before|must|not past|no later)/u.test(word) ? 'before' : 'during';
}

const bare = (words: string): string => words.replace(ARTICLE, '').replace(/["“”]/gu, '').trim();
const trimmed = (words: string): string => words.replace(/^[\s,;.:–-]+|[\s,;.:(–-]+$/gu, '');
