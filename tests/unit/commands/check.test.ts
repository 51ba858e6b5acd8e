import { describe, expect, it } from 'vitest';
import { expectSum, refusalOf, sumOf } from '../../support/sum.ts';

const COMPRESSION = '/check compression readings:';

describe('/check compression', () => {
  it.each([
    {
      line: `${COMPRESSION}"12.1 12 11.8 11.9 bar"`,
      result: 'Spread 2.48 %: even, the lowest 11.8 bar (171 psi)',
      data: { spreadRatio: 0.024793, meanKPa: 1195, weakest: 3 },
    },
    {
      line: `${COMPRESSION}"12,1 12,0 11,8 9,6 bar"`,
      result: 'Spread 20.7 %: cylinder 4 is weak, 9.6 bar (139 psi)',
    },
    {
      line: `${COMPRESSION}"1: 165, 2: 170, 3: 120, 4: 90 psi"`,
      result: 'Spread 47.1 %: cylinders 3 and 4 are weak, 90 psi (6.21 bar)',
    },
    {
      line: `${COMPRESSION}"40 41 42 41" unit:psi`,
      result: 'Spread 4.76 %: even, the lowest 40 psi (2.76 bar)',
    },
    {
      line: `${COMPRESSION}"165/170/168/162 psi"`,
      result: 'Spread 4.71 %: even, the lowest 162 psi (11.2 bar)',
    },
    {
      line: `${COMPRESSION}"165,170,168,162"`,
      result: 'Spread 4.71 %: even, the lowest 162 psi (11.2 bar)',
    },
    {
      line: `${COMPRESSION}"150 120 148 152 psi" limit:"25 %"`,
      result: 'Spread 21.1 %: even, the lowest 120 psi (8.27 bar)',
    },
    {
      line: `${COMPRESSION}"8.1 8.0 8.2 8.1 bar" least:"10 bar"`,
      result: "Even, but cylinder 2 at 8 bar (116 psi) is below the maker's least",
    },
  ])('answers $line', expectSum);

  it('says by what size a figure without a unit was read', async () => {
    for (const [typed, unit] of [
      ['12.1 12 11.8', 'bar'],
      ['165 170 168', 'psi'],
      ['1210 1200 1180', 'kPa'],
    ]) {
      const { smallPrint } = await sumOf(`${COMPRESSION}"${typed ?? ''}"`);
      expect(smallPrint?.[0]).toBe(`Assumed: figures without a unit are ${unit ?? ''}`);
    }
  });

  it('doubts a reading that falls with oil', async () => {
    const wet = async (typed: string) =>
      (await sumOf(`${COMPRESSION}"165 170 168 160 psi" wet:"${typed}"`)).caution;
    expect(await wet('172 176 172 100 psi')).toContain('A reading that falls with oil is a slip');
    expect(await wet('172 176 172 165 psi')).not.toContain('falls with oil');
  });

  it.each([
    ['172 176 175 140 psi', 'Cylinder 4 rises with oil: rings, piston or bore.'],
    ['172 176 175 92 psi', 'Cylinder 4 does not rise with oil: a valve, its seat or the gasket.'],
  ])('tells by wet readings of %s what leaks', async (wet, certainty) => {
    expect((await sumOf(`${COMPRESSION}"165 170 168 90 psi" wet:"${wet}"`)).certainty).toBe(certainty);
  });

  it('looks at the gasket between two neighbours that stay weak', async () => {
    const { certainty } = await sumOf(`${COMPRESSION}"165 90 92 168 psi" wet:"170 91 93 172 psi"`);
    expect(certainty).toContain('most likely the gasket between them');
  });

  it('reckons the height of the place in, and the maker at sea level', async () => {
    const high = await sumOf(`${COMPRESSION}"10 10 10 9.9 bar" altitude:"1600 m" least:"11 bar"`);
    expect(high.working).toContainEqual(expect.stringContaining('At sea level the mean would read 12.1 bar'));
    expect(high.tone).toBe('done');
    const low = await sumOf(`${COMPRESSION}"10 10 10 9.9 bar" least:"11 bar"`);
    expect(low.tone).toBe('late');
  });

  it('draws a bar for each cylinder, and warns before cranking', async () => {
    const { pictures, caution } = await sumOf(`${COMPRESSION}"165 170 168 90 psi"`);
    expect(pictures?.[0]?.alt).toContain('4: 90 weak; 10 % below the best');
    expect(caution).toContain('Fuel and ignition off');
  });

  it.each([
    [`${COMPRESSION}165`, 'two to 16 readings'],
    [`${COMPRESSION}"40 41 42"`, '40 of what?'],
    [`${COMPRESSION}"165 170 pigs"`, 'pigs'],
    [`${COMPRESSION}"165 ~ 170"`, 'Type one after the other'],
    [`${COMPRESSION}"165 170 psi" wet:"170 psi"`, '2 dry readings and 1 wet'],
    [`${COMPRESSION}"165 170 psi" altitude:"100 m" barometer:"980 mbar"`, 'not both'],
  ])('refuses %s and says what would do', async (line, message) => {
    expect((await refusalOf(line)).message).toContain(message);
  });
});

describe('/check leak-down', () => {
  it.each([
    {
      line: '/check leak-down held:"95 94 71 90 psi" supply:"100 psi"',
      result: 'Cylinder 3 leaks 29 %: look into it',
    },
    { line: '/check leak-down leak:"5 6 29 24 %"', result: 'Cylinders 3, 4 leak up to 29 %: look into it' },
    { line: '/check leak-down leak:"5 6 8 9"', result: 'All good: cylinder 4 leaks most, 9 %' },
    { line: '/check leak-down leak:"15 %"', result: 'Leaks 15 %: worn, serviceable' },
    { line: '/check leak-down leak:"5 12 %" limit:"12 %"', result: 'Cylinder 2 leaks 12 %: look into it' },
  ])('answers $line', expectSum);

  it('tells what hisses, and that the crankshaft is to be locked', async () => {
    const { certainty, caution } = await sumOf('/check leak-down leak:"5 29 %" hiss:exhaust');
    expect(certainty).toBe('Hissing at the exhaust: an exhaust valve or its seat.');
    expect(caution).toContain('lock it at top dead centre');
  });

  it.each([
    ['/check leak-down', 'Give either held or leak'],
    ['/check leak-down held:"110 psi" supply:"100 psi"', 'The pressure held'],
  ])('refuses %s', async (line, message) => {
    expect((await refusalOf(line)).message).toContain(message);
  });
});

describe('/check pressure-hold', () => {
  it.each([
    {
      line: '/check pressure-hold before:"3 bar" after:"2.7 bar"',
      result: 'Falls 10 % in 5 min: holds',
      data: { fallRatio: 0.1 },
    },
    { line: '/check pressure-hold before:"43.5 psi" after:"30 psi"', result: 'Falls 31 % in 5 min: leaks' },
    // 19 % in half the time is 34 % in the whole
    {
      line: '/check pressure-hold before:"300 kPa" after:"243 kPa" minutes:2.5',
      result: 'Falls 19 % in 2.5 min: leaks',
    },
  ])('answers $line', expectSum);

  it('says where to pinch, and not to start on a wet cylinder', async () => {
    const { working, caution } = await sumOf('/check pressure-hold before:"3 bar" after:"1 bar"');
    expect(working?.join(' ')).toContain('return pinched: the regulator');
    expect(caution).toContain('lock solid');
  });
});

describe('/check ring-gap', () => {
  it.each([
    {
      line: '/check ring-gap bore:"86 mm"',
      result: 'Top 0.43 to 0.473 mm (0.0169 to 0.0186 in); second 0.43 to 0.516 mm',
      data: { topMinMm: 0.43, topMaxMm: 0.473, oilRailMinMm: 0.38 },
    },
    {
      line: '/check ring-gap bore:"3.5 in" use:natural',
      result: 'Top 0.014 to 0.0157 in (0.356 to 0.4 mm); second 0.014 to 0.0175 in',
    },
    {
      line: '/check ring-gap bore:"86 mm" measured:"0.44 0.45 0.40 mm"',
      result: 'Too small in bore 3: the top ring wants 0.43 to 0.473 mm',
    },
    {
      line: '/check ring-gap bore:"86 mm" measured:"0.40 0.41" least:"0.38 mm"',
      result: 'All wide enough: the top ring wants at least 0.38 mm',
    },
  ])('answers $line', expectSum);

  it('says that a gap too small breaks the piston, and that the maker outranks it', async () => {
    const { caution } = await sumOf('/check ring-gap bore:"86 mm"');
    expect(caution).toContain('ring maker’s figure outranks');
    expect(caution).toContain('breaks the ring land');
  });
});

describe('/check bearing and /check piston', () => {
  it.each([
    {
      line: '/check bearing journals:"54.98 54.97 54.98 mm" shells:"55.03 55.04 55.03 mm"',
      result: '0.05 to 0.07 mm (0.002 to 0.0028 in): journal 2 too wide',
    },
    {
      line: '/check bearing journals:"2.165 2.164" shells:2.167',
      result: '0.002 to 0.003 in (0.051 to 0.076 mm): journal 2 too wide',
    },
    {
      line: '/check bearing journals:"54.98 mm" shells:"54.99 mm"',
      result: '0.01 mm (0.0004 in): too tight',
    },
    {
      line: '/check bearing journals:"54.98 54.97 mm" shells:"55.05 mm" least:"0.05 mm" most:"0.08 mm"',
      result: '0.07 to 0.08 mm (0.0028 to 0.0031 in): all 2 good',
    },
    {
      line: '/check piston bores:"86.07 86.07 86.08 mm" pistons:"85.99 85.98 85.99 mm"',
      result: '0.08 to 0.09 mm (0.0031 to 0.0035 in): all 3 good',
    },
    {
      line: '/check piston bores:"86.07 mm" pistons:"85.99 mm" type:cast',
      result: '0.08 mm (0.0031 in): too wide',
    },
  ])('answers $line', expectSum);

  it.each([
    [
      '/check bearing journals:"54.98 54.97 mm" shells:"55.03 55.04 55.05 mm"',
      'There are 3 and 2 measurements',
    ],
    ['/check bearing journals:"54.98 mm" shells:"55.03 mm" least:"0.05 mm"', 'Give both least and most'],
    ['/check bearing journals:"54.98 mm" shells:"64.98 mm"', 'A clearance is 10 mm'],
    ['/check piston bores:"10 10" pistons:"9.9 9.9 mm"', 'of what?'],
  ])('refuses %s', async (line, message) => {
    expect((await refusalOf(line)).message).toContain(message);
  });
});
