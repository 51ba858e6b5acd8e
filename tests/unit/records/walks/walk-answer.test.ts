import { describe, expect, it } from 'vitest';
import type { Found } from '../../../../src/calc/guide/beliefs.ts';
import type { Guide } from '../../../../src/calc/guide/guide.ts';
import { cardOf } from '../../../../src/discord/card.ts';
import { allGuides } from '../../../../src/records/walks/guide-book.ts';
import type { Walk } from '../../../../src/records/walks/walk.ts';
import { walkAnswer } from '../../../../src/records/walks/walk-answer.ts';
import { viewOf } from '../../../../src/records/walks/walk-view.ts';
import { pathsOf } from '../../../support/guide-tree.ts';
import { openRecord, TODAY } from '../../../support/record.ts';

const { record, buildId } = openRecord();

/** A search with these findings; numbers as long as they get. */
const walkAfter = (guide: Guide, found: readonly Found[]): Walk => ({
  id: 99_999,
  buildId,
  symptom: guide.id,
  cameFrom: null,
  state: 'open',
  startedBy: 'Ada',
  startedAtMs: 0,
  leftBy: null,
  cause: null,
  endedBy: null,
  endedAtMs: null,
  note: null,
  findings: found.map(({ test, outcome }, at) => ({
    id: 99_000 + at,
    walkId: 99_999,
    round: 1,
    step: test,
    outcome,
    note: null,
    byName: 'Ada',
    atMs: 0,
    firstOutcome: null,
  })),
});

/** Every point a search by this guide can be at. */
function pointsOf(guide: Guide): readonly (readonly Found[])[] {
  const points = pathsOf(guide).flatMap(({ found }) =>
    found.map((_, at) => found.slice(0, at)).concat([[...found]]),
  );
  return [...new Map(points.map((found) => [JSON.stringify(found), found])).values()];
}

describe.each(allGuides.map((guide) => [guide.id, guide] as const))('cards of %s', (_id, guide) => {
  it('fit a message whole at every point, with a way on', () => {
    const points = pointsOf(guide);
    expect(points.length).toBeGreaterThan(10);
    for (const found of points) {
      const answer = walkAnswer(viewOf(record, walkAfter(guide, found), 0, TODAY));
      expect(JSON.stringify(cardOf(answer).components)).not.toContain('More did not fit here');
      expect(answer.certainty?.length ?? 0).toBeLessThanOrEqual(400);
      expect(answer.caution?.length ?? 0).toBeLessThanOrEqual(700);
      expect(answer.certainty).toMatch(/\d+ of \d+ ruled out|All it knows is ruled out|^Left: /);
      const labels = (answer.buttons ?? []).map(({ label }) => label);
      expect(labels.length).toBeGreaterThanOrEqual(3);
      expect(labels.length).toBeLessThanOrEqual(10);
      expect(labels.filter((label) => label.length > 34)).toEqual([]);
      expect(new Set(labels).size).toBe(labels.length);
    }
  });
});
