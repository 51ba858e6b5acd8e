import type { JsonObject } from '../../core/json.ts';
import { threadName } from '../threads/wording.ts';
import type { End } from './end.ts';

/** An end as scripts get it; ids as in the thread and fitting tables. */
export function endData({ id, fittingId, thread, gender, seat, dash, tapered }: End): JsonObject {
  return {
    end: id,
    designation: thread.id,
    fitting: fittingId ?? null,
    gender,
    seat,
    dash: dash ?? null,
    tapered,
    majorMm: thread.basic.majorMm,
    pitchMm: thread.pitchMm,
  };
}

/** Its name with its thread, where the name does not say it: "JIC -6 male (9/16-18 UNF)". */
export function endLabel({ id, thread, fittingId }: End): string {
  return fittingId === undefined || id.includes(thread.id) ? id : `${id} (${threadName(thread)})`;
}
