import { describe, expect, it } from 'vitest';
import { expectSum, refusalOf, sumOf } from '../../support/sum.ts';

describe('/oil', () => {
  it.each([
    {
      line: '/oil viscosity temp:"120 °C" v40:"100 cSt" v100:"14 cSt"',
      result: '9.16 mm²/s at 120 °C (248 °F)',
    },
    {
      line: '/oil temperature viscosity:"13 cSt" v40:"46 cSt" v100:"6.8 cSt"',
      result: '13 mm²/s at 74 °C (166 °F)',
    },
    { line: '/oil grade grade:10W-40', result: 'SAE 10W-40: 12.5 to below 16.3 mm²/s at 100 °C' },
    { line: '/oil grade grade:"sae 5w"', result: 'SAE 5W: at least 3.8 mm²/s at 100 °C' },
    { line: '/oil grade grade:50', result: 'SAE 50: 16.3 to below 21.9 mm²/s at 100 °C' },
    { line: '/oil grade v100:"10.5 cSt" hths:3', result: 'SAE 30', data: { hotGrade: 30 } },
    {
      line: '/oil line flow:"40 L/min" bore:"12.7 mm" length:"2 m"',
      result: '5.26 m/s, loses 0.697 bar (10.1 psi)',
      data: { velocityMPerS: 5.2627 },
    },
    {
      line: '/oil line flow:"40 L/min" bore:"10 mm" side:suction',
      result: '8.49 m/s, loses 1.08 bar (15.6 psi): narrow for a suction line',
    },
    {
      line: '/oil line flow:"40 L/min"',
      result: '13.7 mm (0.541 in) bore at least for a pressure line, loses 0.241 bar',
      data: { boreMm: 13.734 },
    },
    {
      line: '/oil cooler flow:"20 L/min" bore:"4 mm" length:"300 mm" tubes:20',
      result: 'Costs 93.6 mbar (1.36 psi) at 20 L/min through 20 tubes of 4 mm',
    },
    {
      line: '/oil cooler drop:"100 kPa" bore:"4 mm" length:"300 mm"',
      result: '6.17 L/min (1.63 US gal/min) through one tube of 4 mm at 100 kPa',
    },
    {
      // the flow below, asked the other way round
      line: '/oil restrictor flow:"2.2892 L/min" pressure:"4 bar"',
      result: '1.5 mm (0.059 in) hole for 2.3 L/min (0.6 US gal/min) at 4 bar (58 psi)',
    },
    {
      line: '/oil restrictor bore:"1.5 mm" pressure:"4 bar"',
      result: '2.3 L/min (0.61 US gal/min) through 1.5 mm at 4 bar (58 psi)',
    },
    {
      line: '/oil pressure pressure:"55 psi" speed:"4000 rpm"',
      result: '55 psi (3.79 bar) at 4000 rpm: enough by the usual rule',
      data: { wantedKPa: 275.79 },
    },
  ])('answers $line', expectSum);

  it('gives the index and the grade beside the viscosity', async () => {
    const { working } = await sumOf('/oil viscosity temp:"90 °C" v40:"135 cSt" v100:"18.5 cSt"');
    expect(working).toContain('viscosity index 154');
    expect(working).toContain('SAE 50 by its 100 °C value');
    const thick = await sumOf('/oil viscosity temp:"90 °C" v40:"230 cSt" v100:"24 cSt"');
    expect(thick.working).toContain('viscosity index 130');
    expect(thick.smallPrint?.join(' ')).toContain('parabolas of ASTM D2270, from memory');
    const gear = await sumOf('/oil viscosity temp:"90 °C" v40:"1500 cSt" v100:"80 cSt"');
    expect(gear.working?.join(' ')).toContain('no engine-oil grade');
    expect(gear.working?.join(' ')).not.toContain('index');
  });

  it('asks more at high shear of a 40 that is thick in the cold', async () => {
    const working = async (line: string) => (await sumOf(line)).working?.join(' ');
    expect(await working('/oil grade grade:10W-40')).toContain('at least 3.5 mPa·s');
    expect(await working('/oil grade grade:15W-40')).toContain('at least 3.7 mPa·s');
  });

  it('passes through a cooler tube what Hagen and Poiseuille say', async () => {
    const { data } = await sumOf(
      '/oil cooler drop:"10 kPa" bore:"4 mm" length:"500 mm" tubes:10 v40:"100 cSt" v100:"14 cSt"',
    );
    // π·d⁴·Δp/(128·η·L) by hand: 0.004⁴·10 000·π/(128·0.01176·0.5) m³/s, ten times
    const one = (Math.PI * 0.004 ** 4 * 10_000) / (128 * 0.011_76 * 0.5);
    expect(Math.abs(Number(data['flowCcMin']) / (one * 10 * 6e7) - 1)).toBeLessThan(1e-3);
  });

  it('warns of low pressure, cold oil and a restrictor', async () => {
    const low = await sumOf('/oil pressure pressure:"35 psi" speed:"4000 rpm" temp:"40 °C"');
    expect(low.tone).toBe('late');
    expect(low.caution).toContain('Do not load the engine');
    expect(low.caution).toContain('Cold oil reads high');
    expect((await sumOf('/oil restrictor bore:"1 mm" pressure:"4 bar" temp:"20 °C"')).caution).toContain(
      'Oil this thick passes less',
    );
    expect((await sumOf('/oil viscosity temp:"-20 °C"')).caution).toContain('cold test');
  });

  it.each([
    ['/oil cooler bore:"4 mm" length:"300 mm"', 'Give either flow or drop'],
    ['/oil cooler bore:"50 mm" length:"10 mm" tubes:200 drop:"1500 kPa"', 'more than 1000 L/min'],
    ['/oil grade', 'Give either grade or v100'],
    ['/oil grade grade:10W-45', 'no grade of SAE J300'],
    ['/oil grade v100:"30 cSt"', 'No grade of SAE J300 has 30'],
    ['/oil grade v100:"14 cSt" hths:2', 'would be SAE 40'],
    ['/oil viscosity temp:"250 °C"', 'takes -40 to 200 °C'],
  ])('refuses %s and says what would do', async (line, message) => {
    expect((await refusalOf(line)).message).toContain(message);
  });
});
