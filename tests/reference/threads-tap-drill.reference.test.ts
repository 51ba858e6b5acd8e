import { describe, expect, it } from 'vitest';
import reference from '../../data/reference/threads/tap-drill.json' with { type: 'json' };
import { threadCatalogue } from '../../src/calc/threads/catalogue.ts';
import { fittingTorques, tapDrill } from '../../src/tables/thread-practice.ts';
import { threadTables } from '../../src/tables/threads.ts';

const threads = threadCatalogue(threadTables);
/** A coarse metric size is written without its pitch in the handbooks, a taper bore as Rc. */
const idOf = (designation: string) =>
  threads.find(
    ({ id, nominal, series }) => id === designation || (series === 'coarse' && `M${nominal}` === designation),
  )?.id ?? designation.replace('Rc ', 'R ');

describe('tap drills against the handbooks', () => {
  it('has the 99 drills', () => expect(reference.tap_drills).toHaveLength(99));

  it.each(reference.tap_drills)('$designation: $drill_mm mm ($source)', ({ designation, drill_mm }) => {
    expect(tapDrill(idOf(designation))?.drill_mm).toBe(drill_mm);
  });

  // A drill has to leave a bore inside the published minor-diameter limits, or say that it does not: an independent
  // check of drills and limits against each other. 0.15 mm below the least minor is what a tap takes away.
  it.each(threads.filter(({ id, tapered }) => !tapered && tapDrill(id) !== undefined).map(({ id }) => id))(
    '%s is drilled inside its minor-diameter limits',
    (id) => {
      const thread = threads.find((each) => each.id === id);
      const drill = tapDrill(id)?.drill_mm ?? 0;
      expect(drill).toBeGreaterThan((thread?.limits.minor.minMm ?? 0) - 0.15);
      expect(drill).toBeLessThan((thread?.limits.minor.maxMm ?? 0) + 0.05);
    },
  );
});

describe('torques', () => {
  const ranged = reference.torque.filter((row) => row.fitting.startsWith('AN 37 -'));
  it.each(ranged)('$fitting ($source)', (row) => {
    const dash = /-(\d+)/.exec(row.fitting)?.[1] ?? '';
    const ours = fittingTorques(`AN -${dash}`);
    expect(ours).toContainEqual(expect.objectContaining({ min_nm: row.min_nm, max_nm: row.max_nm }));
  });

  it.each(reference.torque_missing)('states none where none was published: %s', () => {
    for (const fitting of ['BANJO M10x1', 'ISO6149 M14x1.5', 'ORFS -6', 'G 1/4']) {
      expect(fittingTorques(fitting)).toEqual([]);
    }
  });
});
