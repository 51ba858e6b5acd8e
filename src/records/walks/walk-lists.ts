import type { Page } from '../../core/pages.ts';
import type { Answer, Item } from '../../core/reply.ts';
import { dayAt, sayDay, wallTime } from '../../core/time.ts';
import { sayOutcome, sayStep } from './say-finding.ts';
import {
  CANNOT,
  CAUSE_STEP,
  type Finding,
  isOpen,
  MEASURE_OUTCOMES,
  measureOfStep,
  roundOf,
} from './walk.ts';
import {
  correctButton,
  correctionButtons,
  goOnButton,
  showButton,
  soFarButton,
  takeBackButton,
} from './walk-buttons.ts';
import { findingData, walkData } from './walk-data.ts';
import { sayHowFar, subjectOf, type WalkView } from './walk-view.ts';

/** Every finding of a search, the newest first, each to be corrected. */
export function soFarAnswer(view: WalkView, { things, buttons, where }: Page<Finding>): Answer {
  const { walk } = view;
  const last = walk.findings.at(-1);
  const open = isOpen(walk);
  return {
    kind: 'answer',
    subject: subjectOf(view),
    result: walk.findings.length === 1 ? '1 finding so far' : `${walk.findings.length} findings so far`,
    certainty: [open ? sayHowFar(view) : 'This search is closed.', where && `Shown: ${where}.`]
      .filter(Boolean)
      .join(' '),
    items: things.map((finding) => findingItem(view, finding)),
    buttons: [
      ...(open ? [showButton(walk)] : []),
      ...(open && last !== undefined ? [takeBackButton(last)] : []),
      ...buttons,
    ],
    audience: 'crew',
    data: { ...walkData(view), shown: things.map(findingData) },
  };
}

function findingItem(view: WalkView, finding: Finding): Item {
  const { walk, guide, record, today, zone } = view;
  const { step, outcome, note, byName, atMs, firstOutcome, round } = finding;
  const at = wallTime(atMs, zone);
  const time = `${String(at.hour).padStart(2, '0')}:${String(at.minute).padStart(2, '0')}`;
  const was = firstOutcome === null ? '' : `First noted as “${sayOutcome(guide, step, firstOutcome)}”. `;
  const by = `${byName}, ${sayDay(dayAt(atMs, zone), today)} ${time}.`;
  const isNow = round === roundOf(walk) && step !== CAUSE_STEP && measureOfStep(step) === undefined;
  return {
    text: `${sayStep(record, guide, step)} → ${sayOutcome(guide, step, outcome)}`,
    note: [note && `${note}.`, was.trim(), by].filter(Boolean).join(' '),
    ...(isOpen(walk) && isNow ? { buttons: [correctButton(finding)] } : {}),
  };
}

/** A finding with the other things that may have been found there. */
export function correctionAnswer(view: WalkView, finding: Finding): Answer {
  const { guide, record, walk } = view;
  const outcomes =
    measureOfStep(finding.step) === undefined
      ? (guide.tests.find(({ id }) => id === finding.step)?.outcomes ?? [])
      : MEASURE_OUTCOMES;
  return {
    kind: 'answer',
    subject: subjectOf(view),
    result: `What was it instead? ${sayStep(record, guide, finding.step)}`,
    certainty: `${finding.byName} noted “${sayOutcome(guide, finding.step, finding.outcome)}”. What was noted first is kept beside it.`,
    buttons: [
      ...correctionButtons(finding, [...outcomes, { id: CANNOT, label: 'It was not done' }]),
      soFarButton(walk),
      showButton(walk),
    ],
    audience: 'crew',
    data: { ...walkData(view), finding: findingData(finding) },
  };
}

/** Searches of a build: those going on, then those closed. */
export function walkList(
  views: Page<WalkView>,
  counts: { readonly open: number; readonly all: number },
): Answer {
  const { things, buttons, where } = views;
  return {
    kind: 'answer',
    subject: 'Faults',
    result:
      counts.open === 0
        ? 'No search is going on'
        : `${counts.open} ${counts.open === 1 ? 'search is' : 'searches are'} going on`,
    ...(counts.all === 0
      ? { certainty: 'Type /fault start and what you see: no spark, will not start, smoke.' }
      : where === undefined
        ? {}
        : { certainty: `Shown: ${where}.` }),
    items: things.map(walkItem),
    buttons,
    audience: 'crew',
    data: { kind: 'walk-list', open: counts.open, walks: things.map(walkData) },
  };
}

function walkItem(view: WalkView): Item {
  const { walk, guide } = view;
  if (!isOpen(walk)) {
    const cause = guide.causes.find(({ id }) => id === walk.cause)?.name;
    return {
      text: `${subjectOf(view)}: ${cause ?? walk.note ?? 'closed without a cause'}`,
      note: `Closed by ${walk.endedBy ?? ''}.`,
      tone: 'done',
      buttons: [soFarButton(walk)],
    };
  }
  const left = walk.state === 'left' ? ` ${walk.leftBy ?? ''} left it for whoever goes on.` : '';
  return {
    text: `${subjectOf(view)}: ${sayNext(view)}`,
    note: `Begun by ${walk.startedBy}. ${sayHowFar(view)}${left}`,
    tone: 'soon',
    buttons: [goOnButton(walk)],
  };
}

/** What comes next, in a few words. */
export function sayNext({ position: { step } }: WalkView): string {
  switch (step.kind) {
    case 'measure':
      return `look first at “${step.measure.what}”`;
    case 'test':
      return step.test.test;
    case 'found':
      return `it looks like ${step.cause.name}`;
    case 'beyond':
      return 'beyond this guide';
  }
}
