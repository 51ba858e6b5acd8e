import type { Cause, GuideTest } from '../../calc/guide/guide.ts';
import { speaksOf } from '../../calc/guide/raise.ts';
import type { Answer, Fact } from '../../core/reply.ts';
import { guideCautions } from '../../tables/guide.ts';
import { guideOf } from './guide-book.ts';
import type { Step } from './position.ts';
import { findingsNow } from './position.ts';
import { sayOutcome, sayStep } from './say-finding.ts';
import { saySources } from './source-words.ts';
import {
  againButton,
  beyondButtons,
  causeButtons,
  goOnButton,
  measureButtons,
  soFarButton,
  tailButtons,
  testButtons,
} from './walk-buttons.ts';
import { walkData } from './walk-data.ts';
import { finishedAnswer } from './walk-ended.ts';
import { sayCause, sayHowFar, sayRuledOut, subjectOf, type WalkView } from './walk-view.ts';

/** A search as a card: the next test, or what it has come to. */
export function walkAnswer(view: WalkView): Answer {
  if (view.walk.state === 'finished')
    return finishedAnswer(view, [soFarButton(view.walk), againButton(view.walk)]);
  const asked = stepAnswer(view, view.position.step);
  if (view.walk.state === 'open') return asked;
  return {
    ...asked,
    certainty: `${view.walk.leftBy ?? ''} left it here; anybody can go on. ${asked.certainty ?? ''}`.trim(),
    buttons: [goOnButton(view.walk), ...(asked.buttons ?? [])],
  };
}

function stepAnswer(view: WalkView, step: Step): Answer {
  switch (step.kind) {
    case 'measure':
      return measureAnswer(view, step);
    case 'test':
      return testAnswer(view, step);
    case 'found':
      return foundAnswer(view, step);
    case 'beyond':
      return beyondAnswer(view, step);
  }
}

function testAnswer(view: WalkView, { test, wasPutOff }: Step & { readonly kind: 'test' }): Answer {
  return {
    ...frame(view),
    result: test.test,
    certainty: [wasPutOff ? 'Only what was put off is left.' : '', sayHowFar(view)].filter(Boolean).join(' '),
    items: [{ text: `Expect: ${test.expect}`, note: test.how.join(' ') }],
    facts: [['Takes', [`about ${test.minutes} min`, ...test.tools].join(', ')]],
    working: workingOf(view),
    ...cautionOf(test.cautions),
    smallPrint: [`Expected by ${saySources(test.source)}; the maker’s figure comes first.`],
    buttons: [...testButtons(view.walk, test, !wasPutOff), ...tailButtons(view.walk)],
  };
}

function measureAnswer(view: WalkView, { measure, causes }: Step & { readonly kind: 'measure' }): Answer {
  const likely = causes.slice(0, 2).map(sayCause).join(', or ');
  return {
    ...frame(view),
    result: `First: is “${measure.what}” still so?`,
    certainty: `It is on the list of temporary measures and could be it: ${likely}. ${sayRuledOut(view)}`,
    items: [
      {
        text: 'Look at it before anything else',
        note: 'If it may be undone at this stage, undo it and try again. If it must stay for now, say so, and the search goes on.',
      },
    ],
    working: workingOf(view, measure.what),
    ...cautionOf(cautionsAround(view, causes)),
    buttons: [...measureButtons(view.walk, measure.id), ...tailButtons(view.walk)],
  };
}

function foundAnswer(view: WalkView, { cause, by }: Step & { readonly kind: 'found' }): Answer {
  const next = cause.goesOn === undefined ? undefined : guideOf(cause.goesOn).name;
  const proof =
    by === 'test'
      ? 'A test leaves nothing else.'
      : 'Not proved: everything else in this guide is ruled out, and no test here shows it by itself.';
  const stage = view.record.stages.ofBuild(view.walk.buildId).find(({ key }) => key === cause.stage);
  return {
    ...frame(view),
    result: cause.name,
    tone: 'soon',
    certainty: `${proof} ${sayRuledOut(view)}`,
    items: [{ text: cause.do, note: `Check again: ${cause.recheck}` }],
    facts: [...(stage === undefined ? [] : [['Belongs to', stage.name] as const]), ...jobsAbout(view, cause)],
    working: workingOf(view),
    ...cautionOf(cautionsAround(view, [cause])),
    smallPrint: ['The maker’s instructions come before these.'],
    buttons: [...causeButtons(view.walk, cause, next), ...tailButtons(view.walk)],
  };
}

function beyondAnswer(view: WalkView, { left }: Step & { readonly kind: 'beyond' }): Answer {
  const names = left.map(({ cause }) => sayCause(cause)).join('; ');
  return {
    ...frame(view),
    result:
      left.length === 0
        ? 'Beyond this guide: nothing in it fits'
        : 'Beyond this guide: it cannot tell the rest apart',
    tone: 'soon',
    certainty:
      left.length === 0
        ? 'All it knows is ruled out, or two findings do not go together: there may be two faults, or one finding is wrong.'
        : `Left: ${names}.`,
    facts: [['Ask', capital(view.guide.ask)]],
    working: [
      ...findingsNow(view.walk).map(({ step, outcome }) => sayFound(view, step, outcome)),
      `Ruled out: ${view.position.ruledOut.map(sayCause).join('; ') || 'nothing'}.`,
    ],
    buttons: [...beyondButtons(view.walk), ...tailButtons(view.walk)],
  };
}

/** What every card of a search shares. */
const frame = (view: WalkView): Pick<Answer, 'kind' | 'subject' | 'audience' | 'data'> => ({
  kind: 'answer',
  subject: subjectOf(view),
  audience: 'crew',
  data: walkData(view),
});

/** What was found last, why something comes first, and what is out. `saidAlready` is what the card names anyway. */
function workingOf(view: WalkView, saidAlready?: string): readonly string[] {
  const { walk, position } = view;
  const last = findingsNow(walk).at(-1);
  const most = position.beliefs.suspects.slice(0, 2).map(({ cause }) => cause.id);
  const because = [
    ...new Set(position.raises.filter(({ cause }) => most.includes(cause)).map((raise) => raise.because)),
  ].filter((words) => saidAlready === undefined || !words.includes(saidAlready));
  return [
    ...(last === undefined ? [] : [`Last: ${sayFound(view, last.step, last.outcome)} (${last.byName}).`]),
    ...(because.length === 0 ? [] : [`From the record: ${because.join('; ')}.`]),
    ...(position.ruledOut.length === 0 ? [] : [`Ruled out: ${position.ruledOut.map(sayCause).join('; ')}.`]),
  ];
}

const sayFound = ({ record, guide }: WalkView, step: string, outcome: string): string =>
  `${sayStep(record, guide, step)} → ${sayOutcome(guide, step, outcome)}`;

/** Dangers of the tests that point at a cause are those of mending it. */
function cautionsAround({ guide }: WalkView, causes: readonly Cause[]): readonly string[] {
  const pointsAt = ({ outcomes }: GuideTest): boolean =>
    outcomes.some(({ leaves }) => leaves?.length === 1 && causes.some(({ id }) => id === leaves[0]));
  return guide.tests.filter(pointsAt).flatMap(({ cautions }) => cautions);
}

function cautionOf(kinds: readonly string[]): { readonly caution?: string } {
  const words = [...guideCautions].filter(([kind]) => kinds.includes(kind)).map(([, said]) => said);
  return words.length === 0 ? {} : { caution: words.join(' ') };
}

/** Jobs of the build that speak of the same things. */
function jobsAbout({ record, walk }: WalkView, { touches }: Cause): readonly Fact[] {
  const jobs = record.jobs
    .ofBuild(walk.buildId)
    .filter(({ name, dropped }) => !dropped && touches.some((words) => speaksOf(name, words)))
    .slice(0, 3)
    .map(({ id, name, doneOn }) => `#${id} ${name}${doneOn === null ? '' : ' (done)'}`);
  return jobs.length === 0 ? [] : [[jobs.length === 1 ? 'Job' : 'Jobs', jobs.join('; ')]];
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
