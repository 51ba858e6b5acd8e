import type { Answer, Button, Form } from '../core/reply.ts';
import type { QuickAsk, QuickCandidate } from '../phrases/quick/reading.ts';
import { runRef } from './again.ts';
import type { RunCommand } from './request.ts';

/** The command that free text goes to. */
export const ASK = 'ask';

/** What can be typed, in one sentence. */
export const WHAT_CAN_BE_TYPED =
  'Type what you measured or want to know: 21.9 x 1.5, 12.4 afr, 58 psi, 85 lbft in Nm, m10 10.9 torque, 550cc to lb/h. /help lists the rest.';

/** More than these do not fit one row of buttons on a phone. */
const MOST_BUTTONS = 5;
/** A phone's width. */
const LONGEST_LABEL = 34;

export const askFor = (text: string): RunCommand => ({
  kind: 'run',
  command: ASK,
  subcommand: null,
  options: { text },
});

/** A question with its likeliest readings as buttons. Each carries its own text, so it works anywhere and after a restart. */
export function questionCard({ kind, question, candidates }: QuickAsk): Answer {
  const offered = candidates.slice(0, MOST_BUTTONS);
  return {
    kind: 'answer',
    subject: 'Which one?',
    result: question,
    certainty: 'Pick one, or type it again more exactly.',
    tone: 'soon',
    buttons: offered.flatMap((candidate) => buttonOf(candidate) ?? []),
    audience: 'asker',
    data: {
      kind,
      candidates: offered.map((candidate) => ({ ...candidate })),
      question: { field: 'text', choices: offered.map(({ label, text }) => ({ label, value: text })) },
    },
  };
}

function buttonOf({ label, text, open }: QuickCandidate): Button | undefined {
  const does = open === true ? { command: ASK, action: 'fill', args: { text } } : runRef(askFor(text));
  return does === null ? undefined : { label: label.slice(0, LONGEST_LABEL), does };
}

/** Where a figure is missing in a text that was begun. */
const GAP = '…';
/** The platform's forms hold five fields, each under a label of at most 45 characters. */
const MOST_FIELDS = 5;
const LONGEST_FIELD = 45;

/** Asks for the figures that a text still lacks, each in a field of its own under the words it stands between. */
export function fillForm(text: string): Form {
  const pieces = text.split(GAP);
  const gaps = pieces.slice(1, MOST_FIELDS + 1);
  return {
    kind: 'form',
    title: 'What is missing',
    does: { command: ASK, action: 'filled', args: { text } },
    fields: gaps.map((behind, gap) => {
      const before = pieces[gap]?.trim() ?? '';
      const last = gap === gaps.length - 1 || before === '';
      const label = `${before} ${GAP} ${last ? behind.trim() : ''}`.trim();
      return {
        name: `gap${gap + 1}`,
        label: label === GAP ? 'Figure' : label.slice(0, LONGEST_FIELD),
        required: true,
      };
    }),
  };
}

/** The text with the figures that were filled in. */
export function filled(text: string, figures: readonly string[]): string {
  const [start = '', ...rest] = text.split(GAP);
  return rest.reduce((so, behind, gap) => `${so}${figures[gap]?.trim() ?? ''}${behind}`, start);
}

/** For a line that asks nothing, when somebody waits for an answer all the same. */
export function nothingAsked(): Answer {
  return {
    kind: 'answer',
    subject: 'Nothing to work out',
    result: 'There is nothing in that to work out.',
    certainty: WHAT_CAN_BE_TYPED,
    audience: 'asker',
    data: { kind: 'none' },
  };
}
