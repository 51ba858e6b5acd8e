import { spreadAround } from '../records/readings/look-at.ts';
import type { Reading } from '../records/readings/reading.ts';
import type { JudgedBy } from '../records/readings/verdict.ts';
import type { TeamRecord } from '../records/team-record.ts';

/**
 * The spell of uneven compressions that is still open: the weakest cylinder of the line it began with, and of the newest one.
 * Nothing when the newest line is even, or when `last` is not its weakest: one line is one alert, not one for each cylinder.
 *
 * Wet readings are taken to find out why, and neither begin nor end a spell.
 */
export function openSpread(
  record: TeamRecord,
  last: Reading,
  by: JudgedBy,
): { readonly began: Reading; readonly newest: Reading } | undefined {
  if (last.setId === null || last.kind !== 'compression') return undefined;
  const lines = new Map<number, Reading>();
  for (const reading of record.readings.ofKind(last.buildId, last.kind)) {
    const { setId, conditions } = reading;
    if (setId === null || conditions.states.includes('wet')) continue;
    lines.set(setId, reading);
  }
  let began: Reading | undefined;
  let newest: Reading | undefined;
  const inOrder = [...lines.values()].toSorted((a, b) => a.takenAtMs - b.takenAtMs || a.id - b.id);
  for (const line of inOrder) {
    const spread = spreadAround(record, line, by)?.spread;
    if (spread === undefined) continue;
    newest = spread.verdict.grade === 'bad' ? spread.weakest : undefined;
    began = newest === undefined ? undefined : (began ?? newest);
  }
  return began === undefined || newest === undefined || newest.id !== last.id ? undefined : { began, newest };
}
