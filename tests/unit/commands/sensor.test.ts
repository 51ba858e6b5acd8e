import { describe, expect, it } from 'vitest';
import { expectSum, refusalOf, sumOf } from '../../support/sum.ts';

const THREE = '/sensor thermistor points:"32128 ohm @ 0 C; 9814 ohm @ 25 C; 3542 ohm @ 50 C"';

describe('/sensor', () => {
  it.each([
    { line: '/sensor linear low:"0 bar" high:"10 bar" voltage:"1.5 V"', result: '1.5 V is 2.5 bar' },
    { line: '/sensor linear low:"-40 °C" high:"150 °C" voltage:"2.2 V"', result: '2.2 V is 40.75 °C' },
    {
      line: '/sensor linear low:"0 bar" high:"10 bar" reading:"5 bar" supply:"4.92 V"',
      result: '2.46 V is 5 bar',
    },
    { line: '/sensor linear low:0 high:10', result: '2.5 per volt, −1.25 at 0 V' },
    { line: '/sensor linear low:"0 psi" high:"150 psi"', result: '37.5 psi per volt, −18.75 psi at 0 V' },
    {
      line: `${THREE} resistance:"19549 ohm" pullup:"10 kohm"`,
      result: '10 °C: 19\u202f549 Ω, 3.308 V',
    },
    {
      line: '/sensor thermistor points:"10000 ohm @ 25 C" beta:3950 temp:"100 °C" pullup:"2490 ohm"',
      result: '100 °C: 697.5 Ω, 1.094 V',
      data: { betaK: 3950 },
    },
    {
      line: '/sensor thermistor points:"2500@20; 320@80" voltage:"0.5694 V"',
      result: '80 °C: 320 Ω, 0.569 V',
      data: { betaK: 3547.0138 },
    },
    { line: '/sensor platinum resistance:"1194 ohm"', result: '50.01 °C (122 °F) is 1194.0 Ω' },
    { line: '/sensor platinum temp:"100 °C" type:pt100', result: '100 °C (212 °F) is 138.51 Ω' },
    { line: '/sensor thermocouple temp:"800 °C" cold:"0 °C"', result: '800 °C (1472 °F) is 33.275 mV' },
    {
      line: '/sensor thermocouple voltage:"33.2754 mV" cold:"0 °C"',
      result: '800 °C (1472 °F) is 33.275 mV',
    },
    { line: '/sensor trigger teeth:60 speed:7000rpm', result: '7000 Hz at 7000 rpm' },
  ])('answers $line', expectSum);

  it('gives the curve through three points, and the table to type in', async () => {
    const { result, drafts, data } = await sumOf(THREE);
    expect(result).toBe('A = 1.104159e−3, B = 2.389179e−4, C = 6.931627e−8');
    const lines = drafts?.[0]?.text.split('\n') ?? [];
    expect(lines).toHaveLength(21);
    expect(lines[0]).toBe('°C\tΩ\tV');
    expect(lines[1]).toMatch(/^-40\t/);
    expect(lines[5]).toBe('0\t32128\t4.640');
    expect(data['table']).toHaveLength(20);
  });

  it('gives a linear sensor in nine rows', async () => {
    const { drafts } = await sumOf('/sensor linear low:"0 bar" high:"10 bar"');
    const lines = drafts?.[0]?.text.split('\n') ?? [];
    expect(lines).toHaveLength(10);
    expect(lines.slice(0, 3)).toEqual(['V\tbar', '0.500\t0', '1.000\t1.25']);
  });

  it('warns of a voltage only a fault gives', async () => {
    const { caution } = await sumOf('/sensor linear low:"0 bar" high:"10 bar" voltage:"0.1 V"');
    expect(caution).toContain('a broken wire, a short');
  });

  it.each([
    ['/sensor thermistor points:"2500@20"', 'give its beta, or a second point'],
    ['/sensor thermistor points:"2500@20; 320@80" beta:3500', 'Leave beta out'],
    ['/sensor thermistor points:"1@0;2@20;3@40;4@60"', 'one, two or three points'],
    ['/sensor thermistor points:"320@20; 2500@80"', 'The B value of these points'],
    ['/sensor thermistor points:"9814@25; 9000@26"', 'The distance between the points'],
    ['/sensor thermistor points:"2500@20; 320@80" voltage:"5 V"', 'the circuit is open'],
    ['/sensor thermistor points:"2500@20; 320@80" step:1', 'it takes 2 to 60'],
    ['/sensor platinum', 'Give either temp or resistance'],
    ['/sensor thermocouple', 'Give either temp or voltage'],
    ['/sensor linear low:"0 bar" high:"150 psi"', 'say all in one unit'],
    ['/sensor linear low:"5 bar" high:"5 bar"', 'A line takes two different readings'],
  ])('refuses %s and says what would do', async (line, message) => {
    expect((await refusalOf(line)).message).toContain(message);
  });
});
