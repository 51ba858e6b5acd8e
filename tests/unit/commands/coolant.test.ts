import { describe, expect, it } from 'vitest';
import { expectSum, refusalOf, sumOf } from '../../support/sum.ts';

describe('/coolant', () => {
  it.each([
    {
      line: '/coolant boil wanted:"130 °C"',
      result: 'A cap of 1.11 bar (16 psi) at least boils at 130 °C (266 °F)',
    },
    {
      line: '/coolant volume drained:"2 L" from:"30 %" after:"47.5 %"',
      result: 'The system holds 8 L (8.45 US qt)',
      data: { volumeL: 8 },
    },
    {
      line: '/coolant freeze share:"50 %"',
      result: '50 % ethylene glycol freezes at −38 °C (−36 °F)',
      data: { glycolRatio: 0.5 },
    },
    {
      line: '/coolant freeze share:"50 %" glycol:propylene',
      result: '50 % propylene glycol freezes at −33 °C (−28 °F)',
      data: { freezingC: -33.3 },
    },
    {
      line: '/coolant freeze share:50/50',
      result: '50 % ethylene glycol freezes at −38 °C (−36 °F)',
    },
    {
      // the table read the other way round
      line: '/coolant freeze wanted:"-30 °C"',
      result: 'Takes 44.3 % ethylene glycol not to freeze above −30 °C (−22 °F)',
      data: { freezingC: -30 },
    },
    {
      line: '/coolant freeze share:1/3',
      result: '33.3 % ethylene glycol freezes at −19 °C (−1 °F)',
    },
    {
      line: '/coolant boil cap:0bar share:0',
      result: 'Boils at 100 °C (212 °F) under 0 bar (0 psi)',
    },
    {
      line: '/coolant boil cap:"1.1 bar" share:"0 %"',
      result: 'Boils at 122 °C (252 °F) under 1.1 bar (16 psi)',
    },
    {
      line: '/coolant boil cap:"13 psi" altitude:"1600 m"',
      result: 'Boils at 124 °C (255 °F) under 13 psi (0.896 bar)',
    },
    {
      line: '/coolant fill volume:"6.5 L" share:"40 %"',
      result: '2.6 L (2.75 US qt) of antifreeze and 3.9 L (4.12 US qt) of water',
      data: { antifreezeL: 2.6, waterL: 3.9 },
    },
    {
      line: '/coolant change volume:"7 L" from:"30 %" to:"50 %"',
      result: 'Drain 2 L (2.11 US qt) and fill in as much at 100 %',
      data: { drainL: 2 },
    },
    {
      line: '/coolant drain volume:"8 L" drained:"2 L" from:"30 %"',
      result: '47.5 % antifreeze, 75 % of the old fluid left',
    },
    {
      line: '/coolant drain volume:"8 L" drained:"4 L" from:"30 %" fresh:"0 %" times:3',
      result: '3.75 % antifreeze, 12.5 % of the old fluid left',
    },
    {
      line: '/coolant mix volume:"3 L" share:"50 %" with:"5 L" at:"30 %"',
      result: '37.5 % antifreeze in 8 L (8.45 US qt)',
    },
    {
      line: '/coolant heat flow:"100 L/min" rise:6',
      result: 'Carries 49.3 hp (36.8 kW) of heat',
      data: { powerKW: 36.75 },
    },
  ])('answers $line', expectSum);

  it('names what the standard asks at half and half, and only there', async () => {
    const working = async (line: string) => (await sumOf(line)).working?.join(' ');
    expect(await working('/coolant freeze share:"50 %"')).toContain('at most −36.4 °C');
    expect(await working('/coolant freeze share:"40 %"')).not.toContain('D3306');
  });

  it('warns of a hot system and of glycol', async () => {
    expect((await sumOf('/coolant boil cap:"1 bar"')).caution).toContain('Never open a hot system');
    expect((await sumOf('/coolant fill volume:"6 L" share:"50 %"')).caution).toContain('glycol poisons');
  });

  it.each([
    ['/coolant boil', 'Give either cap or wanted'],
    ['/coolant freeze', 'Give either share or wanted'],
    ['/coolant freeze wanted:"-80 °C"', 'this sum takes -48.3 to 0 °C'],
    ['/coolant freeze share:60/40', 'which of the two is the antifreeze?'],
    ['/coolant freeze share:0.4', 'of one, or per cent?'],
    ['/coolant boil wanted:"180 °C"', 'without a cap'],
    ['/coolant volume drained:"2 L" from:"30 %" after:"30.5 %"', 'measurably'],
    ['/coolant freeze share:"70 %"', 'takes 0 to 57.4 %'],
    [
      '/coolant change volume:"8 L" from:"30 %" to:"50 %" fresh:"40 %"',
      'anything from 30 % to 40 % can be reached',
    ],
    ['/coolant drain volume:"8 L" drained:"9 L" from:"30 %"', 'this sum takes 0 to 8 L'],
    ['/coolant boil cap:"1 bar" altitude:"900 m" barometer:"900 mbar"', 'not both'],
  ])('refuses %s and says what would do', async (line, message) => {
    expect((await refusalOf(line)).message).toContain(message);
  });
});
