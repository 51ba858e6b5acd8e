import { INCH_MM } from '../units/definitions.ts';

/** A dash size: the tube it is the number of, and the hose that goes by it. */
export interface DashRow {
  readonly dash: number;
  /** Bore of hose that is named by its bore, in. */
  readonly byBoreIn: number;
  /** Bore of hose that is named by the tube it stands in for, in; undefined where there is none. */
  readonly byTubeIn: number | undefined;
}

/** What a measured diameter was taken across. */
export type DashMeasure = 'tube' | 'bore' | 'tube-sized bore';

export interface DashMatch {
  readonly row: DashRow;
  readonly measure: DashMeasure;
  readonly nominalMm: number;
  /** Measured less nominal, mm. */
  readonly offMm: number;
}

/** Outside diameter of the tube of a dash size, in: dash/16. Source: definition (key DASH). */
export const tubeOdIn = (dash: number): number => dash / 16;

/**
 * The dash size nearest to a measured tube or hose bore, for each thing it could have been taken across, nearest first.
 *
 * Sources: tube, definition (key DASH); hose bores, key HOSEBORE. Valid: 0 < diameter, mm; how far off it is stands beside
 * each, and a tube more than half a millimetre off is hardly of that size.
 */
export function nearestDash(
  diameterMm: number,
  rows: readonly DashRow[],
  measures: readonly DashMeasure[],
): readonly DashMatch[] {
  return measures
    .flatMap((measure) => {
      const matches = rows.flatMap((row): readonly DashMatch[] => {
        const nominalIn = nominalOf(row, measure);
        if (nominalIn === undefined) return [];
        const nominalMm = nominalIn * INCH_MM;
        return [{ row, measure, nominalMm, offMm: diameterMm - nominalMm }];
      });
      return matches.toSorted((a, b) => Math.abs(a.offMm) - Math.abs(b.offMm)).slice(0, 1);
    })
    .toSorted((a, b) => Math.abs(a.offMm) - Math.abs(b.offMm));
}

/**
 * The smallest hose, of those named by their bore, that is at least this wide; undefined when none is.
 *
 * Source: hose bores, key HOSEBORE. Valid: 0 < bore, mm.
 */
export function smallestHose(boreMm: number, rows: readonly DashRow[]): DashRow | undefined {
  return rows
    .filter(({ byBoreIn }) => byBoreIn * INCH_MM >= boreMm)
    .toSorted((a, b) => a.byBoreIn - b.byBoreIn)[0];
}

function nominalOf(row: DashRow, measure: DashMeasure): number | undefined {
  switch (measure) {
    case 'tube':
      return tubeOdIn(row.dash);
    case 'bore':
      return row.byBoreIn;
    case 'tube-sized bore':
      return row.byTubeIn;
  }
}
