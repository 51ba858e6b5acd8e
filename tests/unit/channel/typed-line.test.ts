import { describe, expect, it } from 'vitest';
import { nearest } from '../../../src/channel/people/nearest.ts';
import { parseCommandLine } from '../../../src/channel/people/typed-line.ts';
import { parseJson } from '../../../src/channel/wire/json.ts';
import type { Command } from '../../../src/channel/world/things.ts';

const text = (name: string, required = false) => ({ name, description: `The ${name}`, type: 3, required });

const command = (name: string, options: readonly object[]): Command => ({
  id: '1',
  version: '1',
  kind: 1,
  name,
  body: { name, description: name, options: parseJson(JSON.stringify(options)) },
});

const COMMANDS = [
  command('thread', [text('size', true), text('side')]),
  command('order', [
    { name: 'place', description: 'Place', type: 1, options: [text('what', true), text('due')] },
    {
      name: 'report',
      description: 'Reports',
      type: 2,
      options: [{ name: 'late', description: 'Late ones', type: 1 }],
    },
  ]),
];

const given = (line: string) => {
  const typed = parseCommandLine(line, COMMANDS);
  if (typed.kind === 'problem') return typed.problem;
  return {
    path: [typed.command.name, ...typed.branches.map(({ name }) => name)],
    ...Object.fromEntries(typed.given),
  };
};

describe('a typed command line', () => {
  it.each([
    { line: '/thread 21.9 x 1.5', read: { path: ['thread'], size: '21.9 x 1.5' } },
    { line: '/thread side:male 21.9', read: { path: ['thread'], side: 'male 21.9' } },
    { line: '/THREAD size:21.9', read: { path: ['thread'], size: '21.9' } },
    {
      line: '/order place what:"head gasket" due:Friday',
      read: { path: ['order', 'place'], what: 'head gasket', due: 'Friday' },
    },
    { line: '/order  Place gasket', read: { path: ['order', 'place'], what: 'gasket' } },
    { line: '/thread "side: as found"', read: { path: ['thread'], size: 'side: as found' } },
    { line: '/thread size:"3/4" bolt: as found"', read: { path: ['thread'], size: '3/4" bolt: as found' } },
    { line: '/order report late', read: { path: ['order', 'report', 'late'] } },
  ])('reads $line', ({ line, read }) => {
    expect(given(line)).toEqual(read);
  });

  it.each([
    { line: '/thred 21.9', says: 'There is no command /thred. Try /thread.' },
    { line: '/zzz', says: 'There is no command /zzz. Try /thread, /order.' },
    { line: '/order', says: '/order needs one word more: /order place, /order report.' },
    { line: '/order plcae x', says: '/order has no "plcae". Try /order place.' },
    { line: '/order report', says: '/order report needs one word more: /order report late.' },
    { line: '/order report late x', says: '/order report late takes no options; leave out "x".' },
    { line: '/thread sise:21.9', says: '/thread has no option "sise". Did you mean "size" or "side"?' },
    {
      line: '/thread size:"21.9" depth:"3 mm"',
      says: '/thread has no option "depth". It takes size:, side:',
    },
    { line: '/thread size:1 size:2', says: '"size" is given twice; give it once.' },
  ])('says what is wrong with $line', ({ line, says }) => {
    expect(given(line)).toBe(says);
  });

  it('says that no bot is there when there are no commands at all', () => {
    expect(parseCommandLine('/x', [])).toMatchObject({
      problem: expect.stringContaining('no bot has registered') as unknown,
    });
  });
});

describe('the nearest names', () => {
  it('come nearest first and leave out what is far', () => {
    expect(nearest('sise', ['side', 'what', 'size', 'sizes'])).toEqual(['side', 'size', 'sizes']);
    expect(nearest('ord', ['order', 'thread'])).toEqual(['order']);
    expect(nearest('qqqq', ['order', 'thread'])).toEqual([]);
  });
});
