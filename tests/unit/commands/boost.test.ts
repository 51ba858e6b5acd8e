import { describe, expect, it } from 'vitest';
import { expectSum, refusalOf, sumOf } from '../../support/sum.ts';

describe('/boost', () => {
  it.each([
    {
      line: '/boost ratio boost:"70 kPa" inlet:"1.5 kPa" loss:"0 kPa"',
      result: 'Pressure ratio 1.72 at 70 kPa (10.2 psi) boost',
      data: { pressureRatio: 1.7163 },
    },
    {
      line: '/boost ratio boost:"10 psi" inlet:"0 kPa" loss:"0 kPa" altitude:"5000 ft"',
      result: 'Pressure ratio 1.82 at 10 psi (0.689 bar) boost',
    },
    {
      line: '/boost ratio boost:"1 bar" barometer:"84.6 kPa" inlet:"0 kPa" loss:"0 kPa"',
      result: 'Pressure ratio 2.18 at 1 bar (14.5 psi) boost',
    },
    {
      line: '/boost charge boost:"1 atm" temp:"25 °C" efficiency:"72 %" cooler:"70 %" inlet:"0 kPa" loss:"0 kPa"',
      result: 'Charge 52 °C (126 °F), 1.83 times as dense as the air taken in',
      data: { compressorOutC: 115.692, chargeC: 52.208 },
    },
    {
      // 115.692 − 0.7·(115.692 − 45)
      line: '/boost charge boost:"1 atm" temp:"25 °C" coolant:"45 °C" efficiency:"72 %" inlet:"0 kPa" loss:"0 kPa"',
      result: 'Charge 66 °C (151 °F), 1.76 times as dense as the air taken in',
      data: { chargeC: 66.208 },
    },
    {
      line: '/boost compressor ratio:2 temp:"20 °C" efficiency:"75 %"',
      result: '106 °C (222 °F) after the compressor',
    },
    {
      line: '/boost compressor ratio:2 temp:"25 °C" out:"118 °C"',
      result: 'Compressor efficiency 70 %',
      data: { efficiencyRatio: 0.7021 },
    },
    {
      line: '/boost cooler in:"140 °C" coolant:"30 °C" out:"62 °C"',
      result: 'Intercooler effectiveness 71 %',
    },
    {
      line: '/boost cooler in:"118 °C" coolant:"25 °C" effectiveness:"70 %"',
      result: '53 °C (127 °F) after the intercooler',
    },
  ])('answers $line', expectSum);

  it('says which losses it assumed', async () => {
    const { smallPrint } = await sumOf('/boost ratio boost:"1 bar"');
    expect(smallPrint?.join(' ')).toContain(
      '10 mbar lost before the compressor, 50 mbar after it (common practice',
    );
    expect(smallPrint?.join(' ')).toContain('sea level on the standard day');
  });

  it.each([
    ['/boost ratio boost:"1 bar" altitude:"500 m" barometer:"95 kPa"', 'not both'],
    ['/boost compressor ratio:2 temp:"25 °C" out:"20 °C"', 'rise in temperature'],
    ['/boost cooler in:"140 °C" coolant:"30 °C"', 'Give either out or effectiveness'],
    ['/boost ratio boost:"12 bar"', 'this sum takes 0 to 500 kPa'],
  ])('refuses %s and says what would do', async (line, message) => {
    expect((await refusalOf(line)).message).toContain(message);
  });
});
