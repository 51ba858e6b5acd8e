import { describe, expect, it } from 'vitest';
import { type Iso965Table, isoBasic, isoLimits } from '../../../../src/calc/threads/iso-metric.ts';
import { nptThread } from '../../../../src/calc/threads/pipe.ts';
import { unifiedLimits } from '../../../../src/calc/threads/unified.ts';
import { whitworthLimits } from '../../../../src/calc/threads/whitworth.ts';
import { UserError } from '../../../../src/core/user-error.ts';

const table: Iso965Table = {
  crest: [{ pitchMm: 1.5, esUm: 32, tdUm: 236, td1Um: 300 }],
  pitchDiameter: [{ overMm: 11.2, toMm: 22.4, pitchMm: 1.5, td2Um: 140, femaleTd2Um: 190 }],
};

describe('ISO metric limits', () => {
  it.each([0, -1, 21])('refuses a pitch of %s mm on a 22 mm thread', (pitchMm) => {
    expect(() => isoBasic({ nominalMm: 22, pitchMm })).toThrow(UserError);
  });
  it('says which size the table lacks', () => {
    expect(() => isoLimits({ nominalMm: 30, pitchMm: 1.5 }, table)).toThrow(
      'no ISO 965-1 deviation for 30 x 1.5',
    );
    expect(() => isoLimits({ nominalMm: 14, pitchMm: 2 }, table)).toThrow(
      'no ISO 965-1 deviation for 14 x 2',
    );
  });
  it('takes the end of a diameter range into it', () => {
    const size = { nominalMm: 22.4, pitchMm: 1.5 };
    expect(isoLimits(size, table).femalePitch.maxMm).toBeCloseTo(isoBasic(size).pitchDiameterMm + 0.19, 9);
  });
});

describe('the minor tolerance of a 2B thread', () => {
  // ASME B1.1 clause 8.3, from memory: 0.15·P for pitches coarser than 4 tpi.
  it('is fifteen hundredths of a very coarse pitch', () => {
    const { minorMin, minorMax } = unifiedLimits({ majorIn: 3, tpi: 3.5, series: 'UN' });
    expect(minorMax - minorMin).toBeCloseTo(0.15 / 3.5, 9);
  });
  it('takes the diameter as engagement for 8-UN too', () => {
    const one = unifiedLimits({ majorIn: 2, tpi: 8, series: 'UN' });
    const other = unifiedLimits({ majorIn: 2, tpi: 8, series: 'UNS' });
    expect(one.malePitchMin).toBeLessThan(other.malePitchMin);
  });
});

describe('the minor tolerance of a Whitworth nut', () => {
  // BS 84, from memory: 0.2·p + 0.004, 0.005 or 0.007 in.
  it.each([
    { tpi: 26, extra: 0.004 },
    { tpi: 22, extra: 0.005 },
    { tpi: 20, extra: 0.007 },
  ])('has $extra in at $tpi tpi', ({ tpi, extra }) => {
    const [least, most] = whitworthLimits({ majorIn: 0.5, tpi }).minor;
    expect(most - least).toBeCloseTo(0.2 / tpi + extra, 9);
  });
});

describe('an NPT bore', () => {
  it.each([27, 18, 14, 11.5])('opens with cut crests at %s tpi', (tpi) => {
    const { limits, basic } = nptThread({
      id: 'x',
      nominal: 'x',
      tpi,
      pipeOdIn: 1,
      e0In: 0.9,
      e1In: 0.92,
      l2In: 0.5,
    });
    expect(limits.minor.maxMm - basic.minorMm).toBeGreaterThan(basic.minorMm - limits.minor.minMm);
  });
});
