import { describe, expect, it } from 'vitest';
import { expectSum, refusalOf, sumOf } from '../../support/sum.ts';

const VOLUMES =
  '/engine compression bore:"86 mm" stroke:"86 mm" chamber:"45 cc" gasket:"1 mm" ring:"87 mm" deck:"0.2 mm" dish:"5 cc"';

describe('/engine', () => {
  it.each([
    {
      line: '/engine size bore:"86 mm" stroke:"86 mm" cylinders:4',
      result: '1998 cc (121.9 in³)',
      data: { displacementL: 1.99823 },
    },
    { line: '/engine size bore:"4 in" stroke:"3.48 in" cylinders:8', result: '349.8 in³ (5733 cc)' },
    { line: '/engine size bore:"86 mm" stroke:"86 mm" oversize:"0,5 mm"', result: '2022 cc (123.4 in³)' },
    { line: VOLUMES, result: 'Compression ratio 9.75 to 1', data: { compressionRatio: 9.7478 } },
    { line: `${VOLUMES} cut:"0.5 mm"`, result: 'Compression ratio 10.22 to 1 after 0.5 mm off, 9.75 before' },
    {
      line: '/engine compression bore:"86 mm" stroke:"86 mm" chamber:"42 cc" gasket:"0.7 mm" ring:"87 mm" proud:"0.1 mm" dome:"6 cc"',
      result: 'Compression ratio 13.62 to 1',
      data: { compressionRatio: 13.6213 },
    },
    { line: '/engine volumes swept:"499.6 cc" clearance:"50 cc"', result: 'Compression ratio 10.99 to 1' },
    {
      line: '/engine volumes swept:"716 cc" ratio:9.5',
      result: '84.2 cc (5.14 in³) of clearance for 9.5 to 1',
    },
    {
      line: '/engine effective ratio:9 boost:"1 atm"',
      result: 'Effective ratio 18.0 to 1 at 1.01 bar (14.7 psi) boost',
    },
    {
      line: '/engine piston stroke:"86 mm" speed:7000rpm rod:"139 mm"',
      result: 'Mean piston speed 20.1 m/s (3950 ft/min) at 7000 rpm',
      data: { rodRatio: 1.61628 },
    },
    {
      line: '/engine piston stroke:"86 mm" limit:"20 m/s"',
      result: '6977 rpm for a mean piston speed of 20 m/s (3937 ft/min)',
    },
    {
      line: '/engine bmep displacement:"350 ci" torque:"300 lbft"',
      result: 'Mean effective pressure 8.91 bar (129 psi)',
    },
    {
      line: '/engine bmep displacement:"2 L" pressure:"12.5 bar"',
      result: '199 N·m (147 lbf·ft) at 12.5 bar (181 psi)',
    },
    {
      line: '/engine power speed:6000rpm torque:"200 Nm"',
      result: '169 hp (126 kW) at 6000 rpm',
      data: { powerKW: 125.664 },
    },
    { line: '/engine power speed:6200rpm power:"150 kW"', result: '231 N·m (170 lbf·ft) at 6200 rpm' },
    {
      line: '/engine bmep displacement:"2 L" torque:"300 Nm" cycle:two-stroke',
      result: 'Mean effective pressure 9.42 bar (137 psi)',
    },
  ])('answers $line', expectSum);

  it('says what a wanted ratio takes, either way', async () => {
    const lower = await sumOf(`${VOLUMES} want:9`);
    expect(lower.working?.join(' ')).toContain(
      'for 9 to 1: 5.34 cc more clearance, e.g. 0.919 mm more gasket',
    );
    const higher = await sumOf(`${VOLUMES} want:10.5`);
    expect(higher.working?.join(' ')).toContain('for 10.5 to 1: 4.52 cc less clearance, e.g. 0.778 mm off');
  });

  it('warns of a piston too near the head', async () => {
    const line = VOLUMES.replace('gasket:"1 mm"', 'gasket:"0.3 mm"');
    expect((await sumOf(line)).caution).toContain('Piston to head is 0.50 mm');
    expect((await sumOf(VOLUMES)).caution).toBeUndefined();
  });

  it.each([
    ['/engine volumes swept:"500 cc"', 'Give either clearance or ratio'],
    ['/engine piston stroke:"86 mm"', 'Give either speed or limit'],
    ['/engine bmep displacement:"2 L"', 'Give either torque or pressure'],
    ['/engine power speed:6000rpm', 'Give either torque or power'],
    ['/engine volumes swept:"500 cc" clearance:"5 cc"', 'this sum takes 3 to 25'],
    ['/engine size bore:"86 Nm" stroke:"86 mm"', 'bore'],
  ])('refuses %s and says what would do', async (line, message) => {
    expect((await refusalOf(line)).message).toContain(message);
  });
});
