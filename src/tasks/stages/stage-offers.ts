import type { Suggest } from '../../bot/command.ts';
import { buildHere } from '../../bot/crew.ts';
import type { Hand } from '../../bot/hand.ts';
import { suggestCases } from '../../records/fluids/find-case.ts';
import { litresOf } from '../../records/fluids/say-fluid.ts';
import { suggestParts } from '../../records/parts/find-part.ts';
import { suggestStages } from '../../records/stages/find-stage.ts';
import { sayCondition } from '../../records/stages/say-condition.ts';
import type { StageCondition } from '../../records/stages/stage.ts';
import { plain } from '../../records/suppliers/supplier.ts';
import { casesHere } from '../fluids/fluids.ts';
import { kindsHere } from '../readings/readings.ts';
import { saidConditions } from './stage-deeds.ts';
import { stageFactsHere, stagesHere } from './stage-names.ts';

/** Names the front of the list of stages, where a stage is asked for. */
export const FIRST = 'first';

export const offerStages: Suggest = (typed, hand) => suggestStages(stagesHere(hand), typed);
export const offerBehind: Suggest = (typed, hand) => [
  ...(FIRST.includes(plain(typed)) ? [{ label: 'In front of all', value: FIRST }] : []),
  ...suggestStages(stagesHere(hand), typed),
];
export const offerSaid: Suggest = (typed, hand) =>
  offerConditions(hand, saidConditions(stageFactsHere(hand)), typed);
export const offerAll: Suggest = (typed, hand) =>
  offerConditions(
    hand,
    stagesHere(hand).flatMap(({ conditions }) => conditions),
    typed,
  );
export const offerJobs: Suggest = (typed, hand) => {
  const build = buildHere(hand);
  const jobs = build === undefined ? [] : hand.record.jobs.ofBuild(build.id);
  return jobs
    .filter(({ name, dropped }) => !dropped && plain(name).includes(plain(typed)))
    .map(({ id, name }) => ({ label: name.slice(0, 100), value: `#${id}` }));
};
export const offerParts: Suggest = (typed, hand) => {
  const build = buildHere(hand);
  return build === undefined ? [] : suggestParts(hand.record, build.id, typed);
};
export const offerKinds: Suggest = (typed, hand) =>
  kindsHere(hand)
    .filter(({ name }) => name.includes(plain(typed)))
    .map(({ name }) => ({ label: name, value: name }));
export const offerCases: Suggest = (typed, hand) =>
  suggestCases(casesHere(hand), typed, litresOf(hand.record));

function offerConditions(
  hand: Hand,
  conditions: readonly StageCondition[],
  typed: string,
): ReturnType<Suggest> {
  const facts = stageFactsHere(hand);
  return conditions
    .map(({ id, condition: one }) => ({ label: sayCondition(one, facts).slice(0, 100), value: `#${id}` }))
    .filter(({ label }) => plain(label).includes(plain(typed)));
}
