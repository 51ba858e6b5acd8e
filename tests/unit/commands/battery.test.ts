import { describe, expect, it } from 'vitest';
import { expectSum, refusalOf, sumOf } from '../../support/sum.ts';

describe('/battery', () => {
  it.each([
    {
      line: '/battery rest:"12.65 V"',
      result: 'At rest 12.65 V: about 100 % charged',
      data: { chargeRatio: 1 },
    },
    {
      line: '/battery rest:12.35',
      result: 'At rest 12.35 V: about 63 % charged: charge it before it is judged',
    },
    {
      line: '/battery rest:"12.1 V"',
      result: 'At rest 12.10 V: about 31 % charged: charge it at once, it sulphates as it stands',
    },
    { line: '/battery rest:"11.5 V"', result: 'At rest 11.50 V: flat: charge it, then load-test it' },
    {
      line: '/battery rest:"13.1 V"',
      result: 'At rest 13.10 V: not at rest yet: read again after some hours',
    },
    {
      line: '/battery cranking:"9.9 V"',
      result: 'Cranking 9.90 V: above the usual least of 9.6 V, little to spare in the cold',
    },
    {
      line: '/battery charging:"14.9 V"',
      result: 'Charging 14.90 V: above the usual 13.8 to 14.7 V; normal only in the cold',
    },
    {
      line: '/battery charging:"13.5 V"',
      result: 'Charging 13.50 V: below the usual 13.8 to 14.7 V: belt, load, or a control of its own',
    },
    { line: '/battery rest:"9 V"', result: 'At rest 9.00 V: flat, a cell may be shorted' },
    {
      line: '/battery rest:"12.7 V" cranking:"9.1 V" charging:"14.2 V"',
      result: 'Cranking 9.10 V: below the usual least of 9.6 V',
    },
    { line: '/battery charging:"12.4 V"', result: 'Charging 12.40 V: not charging' },
    {
      line: '/battery charging:"15.6 V"',
      result: 'Charging 15.60 V: overcharging: stop the engine before the battery boils dry',
    },
  ])('answers $line', expectSum);

  it.each([
    ['rest:12.7 cranking:9.1', 'load-test the battery'],
    ['rest:12.1 cranking:9.1', 'Charge the battery fully first'],
    ['rest:12.1 charging:14.2', 'Something drains it at rest'],
    ['rest:12.1', 'Charge it fully, let it rest'],
    ['charging:12.4', 'Belt, warning lamp and excitation wire'],
    ['charging:15.6', 'Regulator or its sensing wire'],
    ['rest:12.35', 'Read again after a full charge'],
    ['rest:12.65', 'Nothing wrong in what was measured'],
    ['rest:12.65 cranking:10.8 charging:14.2', 'Nothing to do'],
  ])('tells what %s points to', async (readings, points) => {
    expect((await sumOf(`/battery ${readings}`)).certainty).toContain(points);
  });

  it('marks its limits as common practice, and gives the usual caution', async () => {
    const { smallPrint, caution } = await sumOf('/battery rest:12.65');
    expect(smallPrint?.join(' ')).toContain('common practice, no source');
    expect(caution).toContain('no flame');
  });

  it.each([
    ['/battery', 'Give at least one'],
    ['/battery rest:"24 V"', 'this sum takes 0 to 15 V'],
    ['/battery rest:"12 A"', 'rest'],
  ])('refuses %s and says what would do', async (line, message) => {
    expect((await refusalOf(line)).message).toContain(message);
  });
});
