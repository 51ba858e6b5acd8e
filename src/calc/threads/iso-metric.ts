import { UserError } from '../../core/user-error.ts';
import { femaleCrest, maleCrest } from './crest.ts';
import type { Range, Thread } from './thread.ts';

export interface IsoMetricRow {
  readonly id: string;
  readonly nominalMm: number;
  readonly pitchMm: number;
  readonly series: string;
  readonly source: readonly string[];
}

/** ISO 965-1 deviations in micrometres: crest diameters by pitch, pitch diameters by diameter range and pitch. */
export interface Iso965Table {
  readonly crest: readonly { pitchMm: number; esUm: number; tdUm: number; td1Um: number }[];
  readonly pitchDiameter: readonly {
    overMm: number;
    toMm: number;
    pitchMm: number;
    /** Of the male (T_d2) and the female (T_D2) pitch diameter. */
    td2Um: number;
    femaleTd2Um: number;
  }[];
}

/**
 * Basic diameters of the ISO metric profile: d2 = d − 0.649519·P, d1 = D1 = d − 1.082532·P, in mm.
 *
 * Source: ISO 68-1, ISO 724 (key ISO724). Valid: 60° profile, 0 < P < d/1.082532.
 * @throws UserError 'out-of-range' when no core would be left.
 */
export function isoBasic(size: { readonly nominalMm: number; readonly pitchMm: number }): Thread['basic'] {
  const { nominalMm, pitchMm } = size;
  const minorMm = nominalMm - 1.082532 * pitchMm;
  if (!(pitchMm > 0 && minorMm > 0)) {
    throw new UserError(
      'out-of-range',
      `A pitch of ${pitchMm} mm leaves no core in a ${nominalMm} mm thread.`,
    );
  }
  return { majorMm: nominalMm, pitchDiameterMm: nominalMm - 0.649519 * pitchMm, minorMm };
}

/**
 * Limits of size in mm for 6g outside and 6H inside.
 *
 * d = [d − es − T_d, d − es], d2 likewise with T_d2, D1 = [D1, D1 + T_D1], D2 likewise with T_D2.
 * Source: ISO 965-1, tabulated deviations (key ISO965). Valid: normal length of engagement, uncoated.
 * @throws RangeError when the table has no row for the size: a fault of the table, not of the person.
 */
export function isoLimits(
  size: { readonly nominalMm: number; readonly pitchMm: number },
  table: Iso965Table,
): { major: Range; malePitch: Range; minor: Range; femalePitch: Range } {
  const { nominalMm, pitchMm } = size;
  const crest = table.crest.find((row) => row.pitchMm === pitchMm);
  const pitch = table.pitchDiameter.find(
    (row) => row.pitchMm === pitchMm && nominalMm > row.overMm && nominalMm <= row.toMm,
  );
  if (crest === undefined || pitch === undefined) {
    throw new RangeError(`no ISO 965-1 deviation for ${nominalMm} x ${pitchMm}`);
  }
  const basic = isoBasic(size);
  const male = (basicMm: number, toleranceUm: number): Range => ({
    minMm: basicMm - (crest.esUm + toleranceUm) / 1000,
    maxMm: basicMm - crest.esUm / 1000,
  });
  const female = (basicMm: number, toleranceUm: number): Range => ({
    minMm: basicMm,
    maxMm: basicMm + toleranceUm / 1000,
  });
  return {
    major: male(nominalMm, crest.tdUm),
    malePitch: male(basic.pitchDiameterMm, pitch.td2Um),
    minor: female(basic.minorMm, crest.td1Um),
    femalePitch: female(basic.pitchDiameterMm, pitch.femaleTd2Um),
  };
}

export function isoMetricThread(row: IsoMetricRow, table: Iso965Table): Thread {
  const limits = isoLimits(row, table);
  return {
    id: row.id,
    family: 'iso-metric',
    series: row.series,
    nominal: String(row.nominalMm),
    pitchMm: row.pitchMm,
    tpi: undefined,
    formAngleDeg: 60,
    tapered: false,
    basic: isoBasic(row),
    classes: { male: '6g', female: '6H' },
    limits,
    crest: { male: maleCrest(limits.major, row.nominalMm), female: femaleCrest(limits.minor) },
    sameAs: [],
    sources: [...row.source, 'ISO724', 'ISO965'],
  };
}
