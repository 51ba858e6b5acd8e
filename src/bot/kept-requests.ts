import { z } from 'zod';
import type { Clock } from '../core/clock.ts';
import { UserError } from '../core/user-error.ts';
import type { Desks } from '../records/desks.ts';
import type { Request, RunCommand } from './request.ts';

const KeptRun = z.object({
  kind: z.literal('run'),
  command: z.string(),
  subcommand: z.string().nullable(),
  options: z.record(z.string(), z.json()),
});

/** What stands where a question would: nothing is asked, the request itself is to be found again. */
const NO_QUESTION = { field: '', choices: [] } as const;

/** Requests that are too long for a button, in the bookkeeping of the crew that asked. */
export interface KeptRequests {
  /** Keeps one and says under which number; null where no crew stands behind the request. */
  readonly keep: ((asks: RunCommand) => number) | null;
  /** @throws UserError 'stale-message' when it is too old to be kept any more, or asked about elsewhere. */
  find(id: number): RunCommand;
}

export function keptRequests(
  { who, place }: Pick<Request, 'who' | 'place'>,
  { desks, clock }: { readonly desks: Desks; readonly clock: Clock },
): KeptRequests {
  return {
    keep:
      place === null
        ? null
        : (asks) => {
            const request = { ...asks, options: { ...asks.options } };
            const draft = { personId: who.id, request, ...NO_QUESTION };
            return desks.at(place.teamId).drafts.keep(draft, clock.nowMs()).id;
          },
    find(id) {
      const kept = place === null ? undefined : desks.at(place.teamId).drafts.find(id);
      const read = KeptRun.safeParse(kept?.request);
      if (read.success) return read.data;
      throw new UserError('stale-message', 'That sum is too old to be changed by a button. Type it again.');
    },
  };
}
