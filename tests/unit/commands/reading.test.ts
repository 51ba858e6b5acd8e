import { describe, expect, it } from 'vitest';
import { writeActionRef } from '../../../src/bot/action-ref.ts';
import type { Answer } from '../../../src/core/reply.ts';
import { instantOf } from '../../../src/core/time.ts';
import { type CrewBot, cardIn, formIn, openCrewBot, refusalIn, TEAM } from '../../support/bot.ts';
import { pressed } from '../../support/pressed.ts';

const log = (bot: CrewBot, reading: string) => bot.run('reading log', { reading });
const record = (bot: CrewBot) => bot.teams.at(TEAM).record;
const logged = (bot: CrewBot, kind: string) => {
  const build = record(bot).builds.all()[0];
  return build === undefined ? [] : record(bot).readings.ofKind(build.id, kind);
};
const on = (bot: CrewBot, day: string) => bot.clock.set(instantOf(day, '10:00', 'Europe/London'));
const factOf = ({ facts = [] }: Answer, name: string): string | undefined =>
  facts.find(([label]) => label === name)?.[1];

describe('/reading log', () => {
  it('keeps what was typed with its conditions, and judges it by common practice', async () => {
    const bot = await openCrewBot();
    const card = cardIn(await log(bot, 'oil 4.2 bar at 2500 rpm 92C'));
    expect(card.result).toBe('Oil pressure 4.2 bar: within limits (at least 1.72 bar)');
    expect(card.tone).toBe('done');
    expect(factOf(card, 'Limit')).toContain('common practice, no source');
    expect(card.data['readings']).toMatchObject([
      {
        reading: 1,
        kind: 'oil pressure',
        pressureKPa: 420,
        grade: 'good',
        conditions: { speedRpm: 2500, temperatureC: 92 },
      },
    ]);
    expect(logged(bot, 'oil pressure')).toMatchObject([
      {
        value: 420,
        unit: 'kPa',
        shownIn: 'bar',
        typed: 'oil 4.2 bar at 2500 rpm 92C',
        byName: 'Ada',
        firstValue: null,
      },
    ]);
  });

  it('says what to do first when it is wrong', async () => {
    const bot = await openCrewBot();
    const card = cardIn(await log(bot, 'oil 0.5 bar hot idle 850 rpm'));
    expect(card.tone).toBe('late');
    expect(card.result).toBe('Oil pressure 0.5 bar: too low: at least 0.689 bar');
    expect(card.caution).toMatch(/^Stop the engine\./);
  });

  it('judges hot oil as such only where that was said', async () => {
    const bot = await openCrewBot();
    expect(cardIn(await log(bot, 'oil 4.2 bar at 2500 rpm')).result).toContain('if the oil was hot');
    expect(cardIn(await log(bot, 'oil 1 bar at 2500 rpm')).tone).toBe('late');
  });

  it('keeps a line of cylinders together, with its spread', async () => {
    const bot = await openCrewBot();
    const card = cardIn(await log(bot, 'compression 11 11.2 10.9 9.6 bar'));
    expect(card.result).toBe(
      'Compression 11, 11.2, 10.9, 9.6 bar: spread 14 %, higher than usual (at most 10 %)',
    );
    expect(card.data['weakest']).toBe('cylinder 4');
    expect(cardIn(await log(bot, 'comp 165 170 168 110')).caution).toContain('Repeat it wet');
    expect(logged(bot, 'compression').map(({ setId }) => setId)).toEqual([1, 1, 1, 1, 5, 5, 5, 5]);
    expect(cardIn(await bot.run('reading show', { reading: 'compression' })).result).toContain('spread 35 %');
  });

  it('tells the rest voltage from the cranking one', async () => {
    const bot = await openCrewBot();
    const card = cardIn(await log(bot, 'battery 12.4 cranking 9.1'));
    expect(card.tone).toBe('late');
    expect(logged(bot, 'battery voltage').map(({ conditions }) => conditions.states)).toEqual([
      ['at rest'],
      ['cranking'],
    ]);
  });

  it('asks where a line means several things, and finishes by a press', async () => {
    const bot = await openCrewBot();
    const asked = await log(bot, 'oil 60');
    expect(refusalIn(asked).code).toBe('which-one');
    const card = cardIn(asked);
    const done = cardIn(await pressed(bot, card, 'oil 60 psi'));
    expect(done.result).toContain('Oil pressure 60 psi');
    expect(logged(bot, 'oil pressure')).toMatchObject([{ shownIn: 'psi' }]);
  });

  it('asks once about what is unlikely, and takes it as typed when told so', async () => {
    const bot = await openCrewBot();
    const asked = await log(bot, 'oil 41 bar at 2500 rpm 92C');
    expect(refusalIn(asked).message).toContain('unlikely');
    expect(logged(bot, 'oil pressure')).toEqual([]);
    const card = cardIn(asked);
    expect(card.buttons?.map(({ label }) => label)).toContain('4.1 bar');
    await pressed(bot, card, 'As typed: 41 bar');
    expect(logged(bot, 'oil pressure')).toMatchObject([{ value: 4100 }]);
    // the like of it was accepted before
    expect((await log(bot, 'oil 42 bar at 2500 rpm 92C')).ok).toBe(true);
  });

  it('takes the likelier value when that is picked, with its conditions', async () => {
    const bot = await openCrewBot();
    await pressed(bot, cardIn(await log(bot, 'oil 41 bar at 2500 rpm 92C')), '4.1 bar');
    expect(logged(bot, 'oil pressure')).toMatchObject([
      { value: 410, conditions: { speedRpm: 2500, temperatureC: 92 } },
    ]);
  });

  it('asks about an odometer that goes back, or leaps', async () => {
    const bot = await openCrewBot();
    await log(bot, 'odo 84210 km');
    expect(refusalIn(await log(bot, 'odo 8425 km')).message).toContain('less than the 84\u202f210 km before');
    expect(refusalIn(await log(bot, 'odo 842150 km')).message).toContain('far more than');
    expect((await log(bot, 'odo 84250 km')).ok).toBe(true);
    expect(logged(bot, 'distance')).toHaveLength(2);
  });

  it.each([
    ['oil', 'There is no value in it.'],
    ['oil -4 bar', 'cannot be'],
    ['battery 124 V at rest', 'cannot be'],
    ['leak 140 % cyl 2', 'cannot be'],
    ['compression 12.1 mm', 'is no compression'],
    ['oil 4.2 bar and fuel 3.1 bar', 'One line, one kind'],
    ['hello there', 'There is no value in it.'],
    ['compression 10.5:1', 'That is a ratio'],
  ])('refuses %s, says why and what to type, and logs nothing', async (typed, why) => {
    const bot = await openCrewBot();
    const { message } = refusalIn(await log(bot, typed));
    expect(message).toContain(why);
    expect(message).toContain('Nothing was logged. Type it like');
    expect(record(bot).builds.all()).toEqual([]);
  });

  it('keeps a note and the address of a photo', async () => {
    const bot = await openCrewBot();
    const options = {
      reading: 'cyl 3 leak 8 % note heard at the filler',
      link: 'https://example.org/leak.jpg',
    };
    const card = cardIn(await bot.run('reading log', options));
    expect(factOf(card, 'Note')).toBe('heard at the filler');
    expect(factOf(card, 'Photo')).toBe('https://example.org/leak.jpg');
  });

  it('takes the same from a form', async () => {
    const bot = await openCrewBot();
    const form = formIn(await bot.run('reading form'));
    expect(form.fields.map(({ name }) => name)).toEqual(['what', 'value', 'conditions', 'note', 'link']);
    const filled = await bot.press(writeActionRef(form.does), {
      what: 'oil',
      value: '4.2 bar',
      conditions: '2500 rpm 92C',
      note: '',
      link: '',
    });
    expect(cardIn(filled).result).toContain('Oil pressure 4.2 bar');
  });

  it('is undone with all its cylinders', async () => {
    const bot = await openCrewBot();
    const card = cardIn(await log(bot, 'leak down 5 6 4 7 %'));
    await pressed(bot, card, 'Undo');
    expect(logged(bot, 'leak-down')).toEqual([]);
  });
});

describe('/reading correct', () => {
  it('keeps the value it was first given as', async () => {
    const bot = await openCrewBot();
    await log(bot, 'oil 4.2 bar at 2500 rpm 92C');
    await bot.run('reading correct', { reading: 'oil pressure', value: '4.1 bar' });
    const card = cardIn(await bot.run('reading correct', { reading: '#1', value: '4.0 bar at 2600 rpm' }));
    expect(factOf(card, 'First given as')).toBe('4.2 bar');
    expect(logged(bot, 'oil pressure')).toMatchObject([
      { value: 400, firstValue: 420, conditions: { speedRpm: 2600, temperatureC: 92 } },
    ]);
  });

  it('refuses another sort of value and changes nothing', async () => {
    const bot = await openCrewBot();
    await log(bot, 'oil 4.2 bar at 2500 rpm');
    expect(refusalIn(await bot.run('reading correct', { reading: '1', value: '92C' })).code).toBe(
      'bad-input',
    );
    expect(logged(bot, 'oil pressure')).toMatchObject([{ value: 420, firstValue: null }]);
  });

  it('comes as a form from the button', async () => {
    const bot = await openCrewBot();
    const card = cardIn(await log(bot, 'coolant 92C idle'));
    const form = formIn(await pressed(bot, card, 'Correct'));
    expect(form.fields[0]?.value).toBe('92 °C');
    await bot.press(writeActionRef(form.does), { value: '94 °C' });
    expect(logged(bot, 'coolant temperature')).toMatchObject([{ value: 94, firstValue: 92 }]);
  });
});

describe('/reading limits', () => {
  it("puts the maker's figure before the crew's and common practice", async () => {
    const bot = await openCrewBot();
    await bot.run('reading limits', { kind: 'oil pressure', limit: 'at least 3 bar at 2500 rpm' });
    expect(cardIn(await log(bot, 'oil 2.5 bar at 2500 rpm 92C')).result).toContain('too low: at least 3 bar');
    await bot.run('reading limits', {
      kind: 'oil pressure',
      limit: 'at least 2 bar at 2500 rpm',
      from: 'maker',
    });
    const card = cardIn(await log(bot, 'oil 2.5 bar at 2500 rpm 92C'));
    expect(card.result).toContain('within limits (at least 2 bar)');
    expect(factOf(card, 'Limit')).toContain("the maker's figure");
    const list = cardIn(await bot.run('reading limits', { kind: 'oil pressure' }));
    expect(list.items?.map(({ text }) => text).slice(0, 2)).toEqual([
      'Oil pressure at least 2 bar (2500 rpm)',
      'Oil pressure at least 3 bar (2500 rpm)',
    ]);
  });

  it('takes one off again', async () => {
    const bot = await openCrewBot();
    await bot.run('reading limits', { kind: 'coolant', limit: 'max 98 C' });
    const list = cardIn(await bot.run('reading limits'));
    await pressed(bot, list, 'Take off');
    expect(cardIn(await bot.run('reading limits')).result).toBe('No limit of your own');
  });

  it('says what is missing', async () => {
    const bot = await openCrewBot();
    expect(refusalIn(await bot.run('reading limits', { limit: 'max 98 C' })).message).toContain(
      'kind: say what',
    );
    expect(
      refusalIn(await bot.run('reading limits', { kind: 'oil pressure', limit: '3 bar' })).message,
    ).toContain('whether it is the least or the most');
  });
});

describe('/reading kind', () => {
  it('makes a kind with unit and limits, logged and judged like any other', async () => {
    const bot = await openCrewBot();
    await bot.run('reading kind', { name: 'belt tension', unit: 'N', limit: '300 to 500 N' });
    expect(cardIn(await log(bot, 'belt tension 380 N')).result).toBe(
      'Belt tension 380 N: within limits (300 N to 500 N)',
    );
    expect(cardIn(await log(bot, 'belt tension 120 lbf')).tone).toBe('late');
    await bot.run('reading kind', { name: 'wastegate preload', unit: 'turns' });
    expect(cardIn(await log(bot, 'wastegate preload 6 turns')).result).toBe(
      'Wastegate preload 6 turns: no limit known',
    );
  });

  it('refuses a name that is taken, one with a figure, and a kind without unit', async () => {
    const bot = await openCrewBot();
    expect(refusalIn(await bot.run('reading kind', { name: 'oil pressure', unit: 'bar' })).code).toBe(
      'already-done',
    );
    expect(refusalIn(await bot.run('reading kind', { name: 'gap 2', unit: 'mm' })).code).toBe('bad-input');
    expect(refusalIn(await bot.run('reading kind', { name: 'belt tension' })).message).toContain('unit: say');
    expect(record(bot).builds.all()).toEqual([]);
  });

  it('leaves the readings when a kind is taken off', async () => {
    const bot = await openCrewBot();
    await bot.run('reading kind', { name: 'belt tension', unit: 'N' });
    await log(bot, 'belt tension 380 N');
    await bot.run('reading kind', { name: 'belt tension', remove: true });
    expect(cardIn(await bot.run('reading list')).items?.[0]?.text).toContain('Belt tension 380 N');
  });
});

describe('a falling oil pressure', () => {
  const fall = async (bot: CrewBot, values: readonly number[]) => {
    for (const [index, value] of values.entries()) {
      on(bot, `2026-12-${String(index + 1).padStart(2, '0')}`);
      await log(bot, `oil ${value} bar at 2500 rpm ${90 + (index % 3)}C`);
    }
  };

  it('is said when the data carry it, with what to do first', async () => {
    const bot = await openCrewBot();
    await fall(bot, [4.3, 4.2, 4.15, 4, 3.9]);
    const card = cardIn(await bot.run('reading show', { reading: 'oil pressure' }));
    expect(factOf(card, 'Trend')).toMatch(
      /^falls 0\.4 bar in 4 days, by 5 readings under like conditions; at this rate at its limit in 3 weeks$/,
    );
    expect(card.tone).toBe('soon');
    expect(card.caution).toContain('Do not load it hard');
  });

  it('is not made of four readings, of noise, or of readings taken otherwise', async () => {
    const bot = await openCrewBot();
    await fall(bot, [4.3, 4.2, 4.1, 4]);
    expect(
      factOf(cardIn(await bot.run('reading show', { reading: 'oil pressure' })), 'Trend'),
    ).toBeUndefined();
    const noisy = await openCrewBot();
    await fall(noisy, [4.2, 4.3, 4.1, 4.25, 4.2, 4.3, 4.15]);
    expect(
      factOf(cardIn(await noisy.run('reading show', { reading: 'oil pressure' })), 'Trend'),
    ).toBeUndefined();
    const warmer = await openCrewBot();
    for (const [index, value] of [5, 4.6, 4.2, 3.8, 3.4].entries()) {
      on(warmer, `2026-12-0${index + 1}`);
      await log(warmer, `oil ${value} bar at 2500 rpm ${40 + 15 * index}C`);
    }
    expect(
      factOf(cardIn(await warmer.run('reading show', { reading: 'oil pressure' })), 'Trend'),
    ).toBeUndefined();
  });
});

describe('/reading chart', () => {
  it('draws one kind, several over the same time, and cylinders side by side', async () => {
    const bot = await openCrewBot();
    await log(bot, 'oil 4.2 bar at 2500 rpm 92C');
    await log(bot, 'coolant 92C idle');
    await log(bot, 'compression 12.1 12.0 11.8 9.9 bar');
    const one = cardIn(await bot.run('reading chart', { kind: 'oil pressure' }));
    expect(one.result).toBe('Oil pressure 4.2 bar is within limits (at least 1.72 bar)');
    expect(one.pictures?.[0]?.alt).toContain('Oil pressure, bar');
    const two = cardIn(await bot.run('reading chart', { kind: 'oil pressure, coolant temperature' }));
    expect(two.data['kinds']).toEqual(['oil pressure', 'coolant temperature']);
    const bars = cardIn(await bot.run('reading chart', { kind: 'compression' }));
    expect(bars.result).toBe(
      'Compression spreads 18 %, cylinder 4 the lowest: higher than usual (at most 10 %)',
    );
  });

  it('says when there is nothing to draw, or too much', async () => {
    const bot = await openCrewBot();
    expect(refusalIn(await bot.run('reading chart', { kind: 'oil pressure' })).message).toContain(
      'nothing to draw',
    );
    const many = 'oil pressure, fuel pressure, boost, lambda, compression';
    expect(refusalIn(await bot.run('reading chart', { kind: many })).code).toBe('out-of-range');
    expect(refusalIn(await bot.run('reading chart', { kind: 'vibration' })).message).toContain(
      'is no kind of reading here',
    );
  });
});

describe('/reading list', () => {
  it('turns its pages, and takes one off', async () => {
    const bot = await openCrewBot();
    for (let at = 0; at < 10; at += 1) await log(bot, `coolant ${80 + at}C idle`);
    const first = cardIn(await bot.run('reading list'));
    expect(first.items).toHaveLength(8);
    const second = cardIn(await pressed(bot, first, 'Older'));
    expect(second.items).toHaveLength(2);
    await bot.run('reading remove', { reading: '#1' });
    expect(logged(bot, 'coolant temperature')).toHaveLength(9);
    expect(refusalIn(await bot.run('reading show', { reading: '#1' })).message).toContain(
      'There is no reading #1',
    );
  });
});
