import { describe, expect, it } from 'vitest';
import { cardIn, openCrewBot } from '../../support/bot.ts';
import { expectSum, refusalOf, sumOf } from '../../support/sum.ts';

describe('/cable', () => {
  it.each([
    {
      line: '/cable size length:"4.5 m" current:"300 A"',
      result: '50 mm² (between 1 and 1/0 AWG): loses 0.47 V at 300 A over 4.5 m',
      data: { areaMm2: 46.5517, sizeMm2: 50 },
    },
    {
      line: '/cable drop length:"5 m" current:"15 A" area:"2.5 mm2" back:cable',
      result: 'Loses 1.03 V, 8.62 % of 12 V',
      data: { dropV: 1.03448 },
    },
    {
      line: '/cable size length:"4.5 m" current:"30 A" drop:"3 %"',
      result: '10 mm² (between 8 and 7 AWG): loses 0.23 V at 30 A over 4.5 m',
    },
    {
      line: '/cable crank length:"4.5 m" area:"50 mm2" current:"250 A"',
      result: 'Starter sees 9.8 V at 250 A',
    },
    {
      line: '/cable crank length:"4.5 m" area:"50 mm2" starter:"1 kW"',
      result: 'Starter sees 10.7 V at 170 A',
    },
    { line: '/cable gauge size:"2/0 AWG"', result: '67.4 mm² (2/0 AWG)', data: { gaugeNumber: -1 } },
    { line: '/cable gauge size:"25 mm2"', result: '25 mm² (between 4 and 3 AWG)' },
    { line: '/cable load power:"60 W" supply:"12 V"', result: '5 A at 12 V' },
    { line: '/cable load resistance:"12.5 ohm" supply:"14 V"', result: '1.12 A at 14 V' },
  ])('answers $line', expectSum);

  it('tells what the standard allows a bought cable to lose beside its copper', async () => {
    const { working } = await sumOf('/cable drop length:"4.5 m" current:"250 A" area:"35 mm2"');
    expect(working?.join(' ')).toContain('up to 0.62 V for the worst flexible cable IEC 60228 allows');
  });

  it('says when the positive cable loses more than a starter should', async () => {
    const { working } = await sumOf('/cable crank length:"4.5 m" area:"16 mm2" current:"250 A"');
    expect(working?.join(' ')).toContain('more than the usual 0.5 V');
  });

  it('gives the caution of a live cable', async () => {
    expect((await sumOf('/cable size length:"4.5 m" current:"300 A"')).caution).toContain(
      'fuse every live cable',
    );
  });

  it('asks a bare length in metres and feet first', async () => {
    expect((await refusalOf('/cable size length:4,5 current:"300 A"')).message).toContain('4,5 of what?');
    const bot = await openCrewBot();
    const { buttons } = cardIn(await bot.run('cable size', { length: '4.5', current: '300 A' }));
    expect(buttons?.map(({ label }) => label)).toEqual(['4.5 m', '4.5 ft', '4.5 mm', '4.5 in']);
  });

  it.each([
    ['/cable crank length:"4.5 m" area:"50 mm2"', 'Give either current or starter'],
    ['/cable crank length:"4.5 m" area:"2.5 mm2" starter:"2 kW"', 'can give a starter at most'],
    ['/cable crank length:"4.5 m" area:"50 mm2" current:"1500 A"', 'would leave nothing for the starter'],
    ['/cable size length:"9 m" current:"2000 A"', 'more than the 240 mm² of the thickest cable'],
    ['/cable load', 'Give either power or resistance'],
    ['/cable gauge size:"300 mm2"', 'this sum takes'],
    ['/cable gauge size:"50 AWG"', 'from 4/0, the thickest, to 40'],
    ['/cable drop length:"5 m" current:"1500 A" area:"1 mm2"', 'at most 139 A can flow'],
    ['/cable gauge size:0000', 'American wire gauge?'],
  ])('refuses %s and says what would do', async (line, message) => {
    expect((await refusalOf(line)).message).toContain(message);
  });
});
