import { z } from 'zod';

/** The message of a morning. */
export const MorningNotice = z.object({
  kind: z.literal('morning'),
  buildId: z.int(),
  day: z.string(),
  /** The orders it named when it was decided; later presses show their state in place. */
  orderIds: z.array(z.int()),
  /** What else it spoke of; notices from before there were remarks have none. */
  remarks: z.array(z.object({ kind: z.string(), id: z.int() })).optional(),
});
export type MorningNotice = z.infer<typeof MorningNotice>;

/** A reading that went wrong. */
const AlertNotice = z.object({
  kind: z.literal('alert'),
  buildId: z.int(),
  readingId: z.int(),
  /** Beyond a limit, or falling towards one. */
  about: z.enum(['limit', 'trend']),
});
export type AlertNotice = z.infer<typeof AlertNotice>;

/** A step of running in that comes up or is due. */
const RunInNotice = z.object({
  kind: z.literal('run-in'),
  buildId: z.int(),
  stepId: z.int(),
  when: z.enum(['ahead', 'due']),
});
export type RunInNotice = z.infer<typeof RunInNotice>;

/** What a reminder is about, as kept in the outbox: facts, not wording, so that it is worded from the record as it then is. */
export const Notice = z.discriminatedUnion('kind', [MorningNotice, AlertNotice, RunInNotice]);
export type Notice = z.infer<typeof Notice>;

/** A notice that is due, under a key that is the same whenever and however often it is worked out. */
export interface DueNotice<Of extends Notice = Notice> {
  readonly key: string;
  readonly channelId: string;
  readonly notice: Of;
}
