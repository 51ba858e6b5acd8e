import { describe, expect, it } from 'vitest';
import { expectSum, refusalOf, sumOf } from '../../support/sum.ts';

const LINE = '/coil inductance:4.2 resistance:"0.6 ohm" current:"7.5 A"';

describe('/coil', () => {
  it.each([{ line: LINE, result: 'Dwell 2.71 ms at 14 V, 118 mJ', data: { dwellS: 0.00271436 } }])(
    'answers $line',
    expectSum,
  );

  it('gives the dwell table over battery voltage, longer the lower it is', async () => {
    const lines = (await sumOf(LINE)).drafts?.[0]?.text.split('\n') ?? [];
    expect(lines).toHaveLength(9);
    expect(lines[6]).toBe('14 V\t2.71 ms');
    const times = lines.map((line) => Number(/\t([\d.]+)/.exec(line)?.[1]));
    expect(times.toSorted((one, other) => other - one)).toEqual(times);
  });

  it('leaves out of the table what the battery cannot drive', async () => {
    const { drafts } = await sumOf('/coil inductance:5 resistance:"1 ohm" current:"10 A"');
    expect(drafts?.[0]?.text.split('\n')[0]).toMatch(/^11 V/);
  });

  it('refuses a current the coil never reaches, and gives the usual caution', async () => {
    const { message } = await refusalOf('/coil inductance:5 resistance:"2 ohm" current:"10 A"');
    expect(message).toContain('never reaches 10 A, only 7.0 A');
    expect((await sumOf(LINE)).caution).toContain('never hold a lead');
  });
});
