import type { Guide } from '../../calc/guide/guide.ts';
import { UserError } from '../../core/user-error.ts';
import { guides } from '../../tables/guide.ts';

const bySymptom = new Map<string, Guide>(guides.map((guide) => [guide.id, guide]));

/** Every guide, in the order in which they are offered. */
export const allGuides: readonly Guide[] = guides;

/** @throws UserError 'stale-message' when the guide of an older search is gone. */
export function guideOf(symptom: string): Guide {
  const guide = bySymptom.get(symptom);
  if (guide !== undefined) return guide;
  throw new UserError(
    'stale-message',
    'That search belongs to a guide that is no longer here. Nothing was changed. /fault start begins another.',
  );
}
