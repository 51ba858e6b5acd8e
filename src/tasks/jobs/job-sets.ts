import { buildHere, crewOf, openBuildHere } from '../../bot/crew.ts';
import type { Hand } from '../../bot/hand.ts';
import { undoButton } from '../../bot/undo-button.ts';
import { PAGE_ARG, pageOf } from '../../core/pages.ts';
import type { Answer, Item } from '../../core/reply.ts';
import { UserError } from '../../core/user-error.ts';
import { choose, DEBRIS, type Offer, offerOf } from '../../records/jobs/choose.ts';
import { jobData } from '../../records/jobs/job-answer.ts';
import { readJobBook, stageFacts } from '../../records/jobs/read-facts.ts';
import { sayFew, sayMinutes } from '../../records/jobs/say-job.ts';
import { findStage } from '../../records/stages/find-stage.ts';

type SetJob = Offer['offered'][number];

/** So that each line has room for its button. */
const PAGE_SIZE = 7;

export const DEBRIS_NAME = 'After a bearing failure';

/** @throws UserError 'not-found' naming the stages there are. */
export function setMeant(hand: Hand, typed: string): { readonly key: string; readonly name: string } {
  if (/bearing|debris|failure/i.test(typed)) return { key: DEBRIS, name: DEBRIS_NAME };
  return findStage(hand.record.stages.ofBuild(buildHere(hand)?.id ?? 0), typed, 'set');
}

/** What a set would add, job by job; nothing is written. */
export function offerSet(hand: Hand, typed: string, page: number): Answer {
  const { key, name } = setMeant(hand, typed);
  const { offered, there } = offerOf(hand.record, buildHere(hand)?.id ?? 0, key);
  const does = { command: 'job', action: 'from-set', args: { set: key } };
  const { things, buttons, where } = pageOf(offered, page, does, PAGE_SIZE);
  const already = there === 0 ? '' : `${there} on the list already. `;
  return {
    kind: 'answer',
    subject: name,
    result:
      offered.length === 0
        ? `Nothing more to choose for ${name}`
        : `${offered.length} ${offered.length === 1 ? 'job' : 'jobs'} to choose from`,
    certainty: `${already}Nothing is written down yet${where === undefined ? '' : `; ${where}`}.`,
    items: things.map((one) => itemOf(one, key, page)),
    buttons: [
      ...(offered.length === 0
        ? []
        : [
            {
              label: `Take all ${offered.length}`,
              weight: 'main' as const,
              does: { command: 'job', action: 'take', args: { set: key, key: '*' } },
            },
          ]),
      ...buttons,
    ],
    smallPrint: [
      'Times and needs are common practice, no source. The maker’s instructions stand above them.',
    ],
    audience: 'crew',
    data: { set: key, offered: offered.map((one) => ({ key: one.key, name: one.name })), there },
  };
}

function itemOf(one: SetJob, set: string, page: number): Item {
  const needs = [
    ...one.parts.map(({ name, quantity }) => (quantity === 1 ? name : `${quantity} × ${name}`)),
    ...one.fluids.map((fluid) => `what fills the ${fluid.case}`),
  ];
  const lines = [
    `${sayMinutes(one.minutes)}${one.people > 1 ? `, ${one.people} people` : ''}${needs.length === 0 ? '' : `; needs ${sayFew(needs)}`}.`,
    one.goesBack === undefined ? '' : `${sayAction(one.action)}May it go back? ${one.goesBack}`,
  ].filter(Boolean);
  return {
    text: one.name,
    note: lines.join('\n'),
    buttons: [
      {
        label: 'Take',
        does: { command: 'job', action: 'take', args: { set, key: one.key, [PAGE_ARG]: page } },
      },
    ],
  };
}

const sayAction = (action: SetJob['action']): string =>
  action === undefined ? '' : `${action.slice(0, 1).toUpperCase()}${action.slice(1)}. `;

/** Writes one job of a set down, or all of it; then shows what is left of it, where one was taken from the list. */
export function takeFromSet(hand: Hand, set: string, key: string, page?: number): Answer {
  const { name } = setMeant(hand, set);
  const { today } = crewOf(hand);
  const changed = hand.change((record) => {
    const buildId = openBuildHere(record, hand).id;
    const { offered } = offerOf(record, buildId, set);
    const chosen = key === '*' ? offered : offered.filter((one) => one.key === key);
    if (chosen.length === 0) {
      throw new UserError(
        'already-done',
        'That is on the list already, or belongs to no set. Nothing was changed. /job list shows what is there.',
      );
    }
    return choose(record, buildId, chosen, stageFacts(record.stages.ofBuild(buildId)));
  });
  if (page !== undefined && hand.pressedInPlace) {
    const left = offerSet(hand, set, page);
    return {
      ...left,
      certainty: `Taken: ${changed.value.map((job) => job.name).join(', ')}.`,
      buttons: [...(left.buttons ?? []), undoButton(changed)],
      inPlace: true,
      data: { ...left.data, said: changed.said, change: changed.changeId },
    };
  }
  const book = readJobBook(hand.record, changed.value[0]?.buildId ?? 0, today);
  return {
    kind: 'answer',
    subject: name,
    result: `${changed.value.length} ${changed.value.length === 1 ? 'job' : 'jobs'} written down`,
    certainty: 'Parts they need that nobody had named are written down as not ordered.',
    working: changed.value.map(({ id, name: job }) => `#${id} ${job}`),
    buttons: [
      { label: 'What can be done now', does: { command: 'now', action: 'page', args: {} } },
      undoButton(changed),
    ],
    audience: 'crew',
    data: {
      jobs: changed.value.map((job) => jobData(job, book, today)),
      said: changed.said,
      change: changed.changeId,
    },
  };
}
