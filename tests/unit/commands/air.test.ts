import { describe, expect, it } from 'vitest';
import { expectSum, refusalOf, sumOf } from '../../support/sum.ts';

describe('/air', () => {
  it.each([
    {
      line: '/air flow displacement:"2 L" speed:6000rpm ve:"90 %" map:"1 atm" temp:"25 °C"',
      result: '107 g/s (14.1 lb/min) of air',
      data: { massFlowGs: 106.553 },
    },
    {
      line: '/air flow displacement:"122.05 ci" speed:6000rpm ve:"90 %" map:"1 atm" temp:"77 F"',
      result: '107 g/s (14.1 lb/min) of air',
    },
    {
      line: '/air ve displacement:"2 L" speed:6000rpm air:"105 g/s" map:"100 kPa" temp:"25 C"',
      result: 'Volumetric efficiency 90 % of the air in the manifold',
      data: { veRatio: 0.89863 },
    },
    {
      line: '/air ve displacement:"2 L" speed:6500rpm fuel:"1000 cc/min" lambda:0.85 boost:"1 bar"',
      result: 'Volumetric efficiency 64 % of the air in the manifold',
    },
    { line: '/air power air:"150 g/s"', result: '193 hp (144 kW)', data: { powerKW: 144.058 } },
    { line: '/air power power:"193.2 hp"', result: '150 g/s (19.8 lb/min) of air' },
    {
      line: '/air altitude height:"5000 ft"',
      result: '0.8431 bar (12.23 psi), 14 % less air than at sea level',
    },
    {
      line: '/air density temp:"30 °C" humidity:"60 %"',
      result: '1.153 kg/m³, 94 % of the standard day at sea level',
      data: { vapourKPa: 2.542 },
    },
    {
      line: '/air altitude height:"-200 m"',
      result: '1.038 bar (15.05 psi), 1.9 % more air than at sea level',
    },
    {
      // as much heat from the air as with petrol: 300 g/kWh × 14.7/9.8
      line: '/air power air:"150 g/s" afr:9.8',
      result: '193 hp (144 kW)',
      data: { bsfcGPerKWh: 450 },
    },
    {
      line: '/air correct power:"100 kW" pressure:"97 kPa" temp:"15 °C" rule:j1349',
      result: '100 kW (135 hp) corrected, factor 1.004',
    },
  ])('answers $line', expectSum);

  it('says what it assumed and offers to change it', async () => {
    const { smallPrint, buttons } = await sumOf('/air power air:"150 g/s"');
    expect(smallPrint?.join(' ')).toContain('λ 0.85, stoichiometric ratio 14.7, 300 g/kWh');
    expect(buttons?.map(({ label }) => label)).toContain('Change what was assumed');
  });

  it('warns outside the range of a correction rule', async () => {
    const { caution } = await sumOf('/air correct power:"100 kW" pressure:"80 kPa" temp:"30 °C"');
    expect(caution).toContain('outside 0.93 to 1.07');
  });

  it.each([
    ['/air power', 'Give either air or power'],
    ['/air power air:"150 g/s" power:"200 hp"', 'Give either air or power'],
    ['/air ve displacement:"2 L" speed:6500rpm', 'Give either fuel or air'],
    ['/air flow displacement:"2 L" speed:6000rpm boost:"1 bar" map:"200 kPa"', 'not both'],
    ['/air flow displacement:"2 L" speed:"60 mph"', 'a speed of turning'],
    ['/air flow displacement:"2 L" speed:6000rpm boost:"29 psia"', 'is absolute'],
    ['/air flow displacement:"2 L" speed:6000rpm map:"1 bar gauge"', 'is above the air outside'],
    ['/air power air:"900 cc/min"', 'a flow by mass'],
    ['/air altitude height:5000', '5000 of what?'],
    ['/air density temp:"30 °C" humidity:"160 %"', 'is 160 %; this sum takes 0 to 100 %'],
    ['/air altitude height:"20 km"', 'this sum takes -610 to 11000 m'],
    ['/air power air:"150 g/s" lambda:"12.5 AFR"', 'λ 0.850'],
  ])('refuses %s and says what would do', async (line, message) => {
    expect((await refusalOf(line)).message).toContain(message);
  });
});
