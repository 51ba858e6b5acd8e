import { type Day, sayDay } from '../core/time.ts';
import { isInPlace, type Measure } from '../records/measures/measure.ts';
import { undoneButton } from '../records/measures/measure-answer.ts';
import { canBeUndone } from '../records/measures/what-undoes.ts';
import { NOTICE_ARG } from '../records/orders/order-buttons.ts';
import { partStanding, standings } from '../records/parts/standings.ts';
import type { TeamRecord } from '../records/team-record.ts';
import type { RemarkSource } from './remark.ts';

/**
 * Temporary measures whose part has come or whose job is done: said every morning until somebody says that they are undone,
 * since coming is not fitting.
 */
export const measureRemarks: RemarkSource = {
  kind: 'measure',
  due(record, { id: buildId }, day) {
    const inPlace = record.measures.ofBuild(buildId).filter(isInPlace);
    if (inPlace.length === 0) return [];
    const known = knownOf(record, buildId, inPlace, day);
    return inPlace.filter((measure) => canBeUndone(measure, known) !== null).map(({ id }) => id);
  },
  say(record, id, { day, noticeId }) {
    const measure = record.measures.find(id);
    if (measure === undefined) return undefined;
    const { what, buildId, undoneBefore, undoneByName, putOn } = measure;
    if (!isInPlace(measure)) {
      const note = `Undone, noted by ${undoneByName ?? ''}.`;
      return { open: false, item: { text: `Temporary: ${what}`, note, tone: 'done' } };
    }
    const known = knownOf(record, buildId, [measure], day);
    const by = canBeUndone(measure, known);
    const stage = record.stages.ofBuild(buildId).find(({ key }) => key === undoneBefore);
    const before = stage === undefined ? '' : ` It must be undone before ${stage.name}.`;
    const why =
      by === null ? 'still in place' : by.kind === 'part' ? `${by.name} is here` : `“${by.name}” is done`;
    const { does, ...button } = undoneButton(id);
    return {
      open: true,
      item: {
        text: `Temporary: ${what}`,
        note: `${why.slice(0, 1).toUpperCase()}${why.slice(1)}. In place since ${sayDay(putOn, day)}.${before}`,
        tone: 'soon',
        buttons: [{ ...button, does: { ...does, args: { ...does.args, [NOTICE_ARG]: noticeId } } }],
      },
    };
  },
  count: (open) => `${open} temporary ${open === 1 ? 'measure' : 'measures'} can be undone`,
};

/** The parts and jobs that may undo these measures: all parts only where one is looked for by its words. */
function knownOf(
  record: TeamRecord,
  buildId: number,
  measures: readonly Measure[],
  day: Day,
): Parameters<typeof canBeUndone>[1] {
  const byWords = measures.some(
    ({ partId, jobId, until }) =>
      until !== null && jobId === null && (partId === null || record.parts.find(partId) === undefined),
  );
  const parts = byWords
    ? standings(record, buildId, day)
    : measures
        .flatMap(({ partId }) => (partId === null ? [] : (record.parts.find(partId) ?? [])))
        .map((part) => partStanding(record, part, day));
  return { parts, jobs: record.jobs.ofBuild(buildId) };
}
