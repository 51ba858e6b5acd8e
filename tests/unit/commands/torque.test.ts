import { describe, expect, it } from 'vitest';
import { expectSum, refusalOf, sumOf } from '../../support/sum.ts';

describe('/torque', () => {
  it.each([
    {
      line: '/torque bolt size:M10 class:10.9',
      result: '65 N·m (47.9 lbf·ft) for M10 × 1.5 10.9, oiled',
      data: { torqueNm: 64.9774, diameterMm: 10, pitchMm: 1.5, nutFactor: 0.18 },
    },
    {
      line: '/torque bolt size:m8 class:8.8 friction:dry',
      result: '25.5 N·m (18.8 lbf·ft) for M8 × 1.25 8.8, dry',
    },
    {
      line: '/torque bolt size:7/16-20 class:gr8 k:0.15',
      result: '79.2 N·m (58.4 lbf·ft) for 7/16-20 UNF grade 8, K 0.15',
    },
    {
      line: '/torque bolt size:M8 class:8.8 maker:"26 Nm"',
      result: "The maker's 26 N·m (19.2 lbf·ft) stands; the sum says 22.9 N·m",
      data: { torqueNm: 26 },
    },
    {
      line: '/torque clamp size:M12 class:10.9 torque:"90 Nm"',
      result: '90 N·m (66.4 lbf·ft) clamps 41.7 kN, 60 % of proof load',
      data: { clampN: 41_666.7 },
    },
    {
      line: '/torque change torque:"100 Nm" from:dry to:moly',
      result: '60 N·m (44.3 lbf·ft) moly clamps as 100 N·m dry',
    },
    {
      line: '/torque angle size:M10 class:10.9 grip:"50 mm" snug:"20 Nm"',
      result: 'About 28° after 20 N·m clamps 36.1 kN, 75 % of proof',
    },
    {
      line: '/torque angle size:M10 class:10.9 grip:"50 mm" snug:"20 Nm" turn:"90°" load:"10 kN"',
      result: 'Past proof load: it is reached about 42° after 20 N·m',
    },
    {
      line: '/torque stretch size:M10x1.25 class:12.9 length:"45 mm"',
      result: 'M10 × 1.25 12.9 stretches 0.16 mm (0.0063 in) at 44.5 kN',
    },
    {
      line: '/torque stretch size:M10x1.25 class:12.9 length:"45 mm" shank:"8 mm"',
      result: 'M10 × 1.25 12.9 stretches 0.194 mm (0.0077 in) at 44.5 kN',
    },
    {
      line: '/torque engagement size:M8 class:8.8',
      result: 'M8 × 1.25 8.8 needs 12.6 mm (0.497 in) of full thread in aluminium, 1.6 × d',
    },
    {
      line: '/torque engagement size:M8 class:8.8 strength:"290 MPa"',
      result: 'M8 × 1.25 8.8 needs 10 mm (0.394 in) of full thread in aluminium, 1.3 × d',
    },
    { line: '/torque pattern bolts:10 layout:rows torque:"90 Nm"', result: '3 8 2 9 4 7 1 10 5 6' },
    { line: '/torque pattern bolts:5', result: '1 3 5 2 4' },
    { line: '/torque pattern bolts:20', result: '20 bolts, circle: the order is below' },
    {
      line: '/torque wrench torque:"130 Nm" wrench:"500 mm" extension:"150 mm"',
      result: 'Set 100 N·m (73.8 lbf·ft) for 130 N·m at the bolt',
    },
  ])('answers $line', expectSum);

  it('puts the maker first, and says when the sum is far from it', async () => {
    const near = await sumOf('/torque bolt size:M8 class:8.8 maker:"26 Nm"');
    expect(near.certainty).toBeUndefined();
    const far = await sumOf('/torque bolt size:M8 class:8.8 maker:"40 Nm"');
    expect(far.certainty).toContain('43 % apart');
    expect(far.caution).toContain("The maker's figure outranks this");
  });

  it('holds the stress area against the table, and the torque against friction', async () => {
    const working = async (line: string) => (await sumOf(line)).working?.join(' ');
    expect(await working('/torque bolt size:M14x1.5 class:8.8')).toContain('125 mm² in the table');
    expect(await working('/torque bolt size:M10x1.25 class:8.8')).toContain(
      'VDI 2230 at friction 0.12, 90 % of yield: 50.',
    );
    expect(await working('/torque bolt size:3/8-16 class:"grade 5"')).toContain(
      'the same clamp force at friction 0.12',
    );
    expect(await working('/torque bolt size:M11 class:8.8')).not.toContain('in the table');
  });

  it('says what stands for the proof load of a stainless bolt, and that it seizes', async () => {
    const { smallPrint, caution } = await sumOf('/torque bolt size:M8 class:"a2 70"');
    expect(smallPrint?.join(' ')).toContain('0.2 % proof stress of 450 MPa stands for it');
    expect(caution).toContain('Stainless threads seize');
  });

  it('warns when a torque takes a bolt near or past its proof load', async () => {
    const { caution, tone } = await sumOf('/torque clamp size:M10 class:8.8 torque:"70 Nm"');
    expect(caution).toContain('more than 90 % of the proof load');
    expect(tone).toBe('late');
  });

  it.each([
    ['/torque bolt size:M10 class:11.9', 'Known: 4.6, 4.8'],
    ['/torque bolt size:M20 class:9.8', 'has 9.8 for more than 0 mm up to 16 mm only'],
    ['/torque bolt size:M10x2 class:8.8', 'There are M10 × 1.5'],
    ['/torque bolt size:M55 class:8.8', 'No bolt of that size'],
    ['/torque bolt size:"1/2 bsw" class:8.8', 'for metric and Unified bolts only'],
    ['/torque bolt size:"10.3 x 1.5" class:8.8', 'names no size of bolt'],
    ['/torque angle size:M10 class:10.9 grip:"50 mm" load:"90 kN"', 'more than that parts it'],
    ['/torque angle size:M6 class:8.8 grip:"30 mm" snug:"20 Nm"', 'Take a smaller snug torque'],
    ['/torque pattern bolts:7 layout:rows', 'Two rows take an even number of bolts, and 7 is odd'],
  ])('refuses %s and says what would do', async (line, message) => {
    expect((await refusalOf(line)).message).toContain(message);
  });
});
