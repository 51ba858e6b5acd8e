import { beforeAll, describe, expect, it } from 'vitest';
import { writeActionRef } from '../../../src/bot/action-ref.ts';
import type { Catalogue } from '../../../src/bot/catalogue.ts';
import type { Runnable } from '../../../src/bot/command.ts';
import type { Hand } from '../../../src/bot/hand.ts';
import type { Answer } from '../../../src/core/reply.ts';
import { allCommands, type CrewBot, cardIn, openCrewBot, refusalIn, TEAM } from '../../support/bot.ts';
import { pressed } from '../../support/pressed.ts';

let catalogue: Catalogue;
beforeAll(async () => {
  catalogue = await allCommands();
});

const bot = () => openCrewBot(catalogue);
const recent = (crew: CrewBot) => crew.teams.at(TEAM).ledger.recent(1);
const add = async (crew: CrewBot, name: string, options = {}) =>
  cardIn(await crew.run('job add', { name, ...options }));
const press = async (crew: CrewBot, card: Answer, label: string, options = {}) => {
  const all = [...(card.buttons ?? []), ...(card.items ?? []).flatMap(({ buttons }) => buttons ?? [])];
  const found = all.find((one) => one.label === label);
  if (!found) throw new Error(`no button ${label}, only ${all.map((one) => one.label).join(', ')}`);
  return crew.press(writeActionRef(found.does), {}, options);
};

describe('/job add', () => {
  it('writes a job down with all that is said of it', async () => {
    const crew = await bot();
    const card = await add(crew, 'align the gearbox', {
      stage: 'assembly',
      minutes: '1-2 h, likely 90 min',
      people: 2,
      tools: 'hoist, torque wrench',
      note: 'dowels first',
    });
    expect(card).toMatchObject({
      subject: 'Job #1',
      result: 'align the gearbox: can be done now',
      certainty: '“1-2 h, likely 90 min” read as least, likely and most.',
    });
    expect(card.data).toMatchObject({
      job: 1,
      stage: 'assembly',
      leastMin: 60,
      likelyMin: 90,
      mostMin: 120,
      people: 2,
      tools: ['hoist', 'torque wrench'],
      unblocked: true,
    });
  });

  it('asks about all new parts of a list at once, and about a slip with what it is nearly called', async () => {
    const crew = await bot();
    await crew.run('part add', { name: 'sump gasket' });
    const slip = await add(crew, 'refit it', { needs: 'sump gaskit' });
    expect(slip.buttons?.map(({ label }) => label)).toEqual(['sump gasket', 'New part: sump gaskit']);
    expect(cardIn(await pressed(crew, slip, 'sump gasket')).data['waitsFor']).toEqual([
      'sump gasket (not ordered)',
    ]);
    const asked = await add(crew, 'fit it', { needs: '2 x copper washer, oil filter, stage:assembly' });
    expect(asked.buttons?.map(({ label }) => label)).toEqual(['New parts: copper washer, oil filter']);
    const card = cardIn(await pressed(crew, asked, 'New parts: copper washer, oil filter'));
    expect(card.data['waitsFor']).toEqual([
      '2 × copper washer (not ordered)',
      'oil filter (not ordered)',
      'the stage Assembly',
    ]);
  });

  it('takes what it needs by names: a part still to be got, another job, a stage', async () => {
    const crew = await bot();
    await add(crew, 'align the gearbox');
    const card = await add(crew, 'fill it', { needs: 'part:2 +dowel, align, stage:assembly' });
    expect(card.result).toBe('fill it: waits for 3 things');
    expect(card.data['waitsFor']).toEqual([
      '2 × dowel (not ordered)',
      '#1 align the gearbox',
      'the stage Assembly',
    ]);
    expect(crew.teams.at(TEAM).record.parts.ofBuild(1)).toMatchObject([{ name: 'dowel', needed: 2 }]);
  });

  it('asks about a name nobody knows, and the answer finishes it', async () => {
    const crew = await bot();
    const asked = cardIn(await crew.run('job add', { name: 'fit it', needs: 'copper washer' }));
    expect(asked.result).toContain('Nothing here is called "copper washer"');
    expect(recent(crew)).toEqual([]);
    const card = cardIn(await press(crew, asked, 'New part: copper washer'));
    expect(card.data['waitsFor']).toEqual(['copper washer (not ordered)']);
  });

  it('asks which one is meant where a name is a part and a job', async () => {
    const crew = await bot();
    await add(crew, 'dowel', { needs: 'part:+dowel pin' });
    const asked = cardIn(await crew.run('job add', { name: 'fit it', needs: 'dow' }));
    expect(asked.buttons?.map(({ label }) => label)).toEqual(['dowel pin', '#1 dowel']);
    expect(cardIn(await press(crew, asked, '#1 dowel')).data['waitsFor']).toEqual(['#1 dowel']);
  });

  it('offers what its joint uses once, checked against the shelf', async () => {
    const crew = await bot();
    const card = await add(crew, 'refit the sump');
    expect(card.items).toMatchObject([
      {
        text: 'sump gasket',
        note: 'Renewed whenever this is opened. None in hand, none on order; sealant where the maker asks: at the corners of the caps.',
      },
    ]);
    const taken = cardIn(await press(crew, card, 'Needs it'));
    expect(taken.result).toBe('refit the sump: waits for one thing');
    expect(taken.items).toBeUndefined();
    expect(crew.teams.at(TEAM).record.parts.ofBuild(1)).toMatchObject([
      { name: 'sump gasket', singleUse: true },
    ]);
  });

  it('counts what is on order, and takes one of several or all', async () => {
    const crew = await bot();
    await crew.run('order place', { what: 'head gasket', supplier: 'Norvale', due: '2026-12-04' });
    const card = await add(crew, 'fit head');
    expect(card.items?.map(({ text, note }) => [text, note])).toEqual([
      ['head gasket', 'Renewed whenever this is opened. None in hand, 1 on order.'],
      ['head bolt set', 'Renewed whenever this is opened. None in hand, none on order.'],
    ]);
    const taken = cardIn(await press(crew, card, 'Needs it'));
    expect(taken.data['waitsFor']).toEqual(['head gasket (expected Fri 4 Dec)']);
    expect(taken.items?.map(({ text }) => text)).toEqual(['head bolt set']);
    const all = cardIn(await press(crew, card, 'Needs all 2'));
    expect(all.data['waitsFor']).toEqual(['head gasket (expected Fri 4 Dec)', 'head bolt set (not ordered)']);
    expect(refusalIn(await press(crew, card, 'Needs all 2')).code).toBe('already-done');
  });

  it.each([
    [{ name: 'x'.repeat(121) }, 'name: must be at most 120 characters'],
    [{ name: '   ' }, 'name: nothing was typed'],
    [{ name: 'a job', minutes: 'soon' }, '“soon” is no time'],
    [{ name: 'a job', minutes: '2-1 h' }, 'not in order'],
    [{ name: 'a job', people: 0 }, 'people: must be at least 1'],
    [{ name: 'a job', stage: 'lunch' }, 'No stage is called "lunch"'],
    [{ name: 'a job', needs: ' , ;' }, 'needs: nothing was named'],
    [{ name: 'a job', needs: 'job:nothing' }, 'There is no job called "nothing"'],
    [{ name: 'a job', needs: 'stage:lunch' }, 'There is no stage called "lunch"'],
  ])('refuses %j and writes nothing', async (options, said) => {
    const crew = await bot();
    const { message } = refusalIn(await crew.run('job add', options));
    expect(message).toContain(said);
    expect(recent(crew)).toEqual([]);
    expect(crew.reported).toEqual([]);
  });

  it('refuses a name that is on the list, whatever its letters, and says how to go on', async () => {
    const crew = await bot();
    await add(crew, 'Fit head');
    const { code, message } = refusalIn(await crew.run('job add', { name: 'fit  HEAD' }));
    expect(code).toBe('already-done');
    expect(message).toContain('/job edit changes it');
    await crew.run('job drop', { job: '1' });
    expect(refusalIn(await crew.run('job add', { name: 'fit head' })).message).toContain(', dropped');
  });
});

describe('/job needs', () => {
  it('adds and takes off in one line', async () => {
    const crew = await bot();
    for (const name of ['one', 'two', 'three']) await add(crew, name);
    await crew.run('job needs', { job: 'three', add: 'one' });
    const card = cardIn(await crew.run('job needs', { job: 'three', add: 'two', remove: '#1' }));
    expect(card.data['waitsFor']).toEqual(['#2 two']);
  });

  it('refuses a loop in words, through jobs and through stages', async () => {
    const crew = await bot();
    await add(crew, 'one', { stage: 'assembly' });
    await add(crew, 'two', { needs: 'one' });
    await add(crew, 'three', { needs: 'two' });
    const looped = refusalIn(await crew.run('job needs', { job: 'one', add: 'three' }));
    expect(looped.code).toBe('not-now');
    expect(looped.message).toContain('one → three → two → one');
    const staged = refusalIn(await crew.run('job needs', { job: 'one', add: 'stage:fluids' }));
    expect(staged.message).toContain('one → the stage Fluids in → the stage Assembly → one');
    expect(refusalIn(await crew.run('job needs', { job: 'one', add: 'one' })).message).toContain('one → one');
  });

  it('refuses to move a job to a stage that would close a loop', async () => {
    const crew = await bot();
    await add(crew, 'one', { stage: 'first-start', needs: 'stage:fluids' });
    const { message } = refusalIn(await crew.run('job edit', { job: 'one', stage: 'assembly' }));
    expect(message).toContain('would wait for itself');
    expect(cardIn(await crew.run('job show', { job: 'one' })).data['stage']).toBe('first-start');
  });

  it.each([
    [{ job: 'one', remove: 'two' }, 'does not need'],
    [{ job: 'three', add: 'two' }, 'needs #2 two already'],
    [{ job: 'zzzz', add: 'two' }, 'No job here is called "zzzz"'],
  ])('refuses %j', async (options, said) => {
    const crew = await bot();
    for (const name of ['one', 'two']) await add(crew, name);
    await add(crew, 'three', { needs: 'two' });
    const { message } = refusalIn(await crew.run('job needs', options));
    expect(message).toContain(said);
    expect(message).toContain('Nothing was changed');
  });
});

describe('what is not on record any more', () => {
  it('is told by the words that take it off', async () => {
    const crew = await bot();
    await add(crew, 'one', { needs: 'part:+dowel' });
    await crew.run('fluid case', { name: 'gearbox', grade: '75W-90', capacity: '2 L' });
    await crew.run('job needs', { job: '1', add: 'fluid:gearbox' });
    const { ledger, record } = crew.teams.at(TEAM);
    ledger.change({ interactionId: 'x', personId: 'ada', personName: 'Ada', atMs: 0 }, () => {
      record.parts.remove(1);
      record.fluids.removeCase(1);
      record.jobs.need(1, { kind: 'stage', stage: 'dyno' });
      return { value: null, said: 'gone' };
    });
    const before = cardIn(await crew.run('job show', { job: '1' }));
    expect(before.data['waitsFor']).toEqual([
      'part #1 (not on record any more: /job needs with remove:"part #1")',
      'fluid case #1 (not on record any more: /job needs with remove:"fluid case #1")',
      'stage dyno (not on record any more: /job needs with remove:"stage dyno")',
    ]);
    const remove = 'part #1, fluid case #1, stage dyno';
    expect(cardIn(await crew.run('job needs', { job: '1', remove })).data['waitsFor']).toEqual([]);
  });
});

describe('/job done, reopen, drop and edit', () => {
  it('says who and when, what can be done because of it, and fits its parts', async () => {
    const crew = await bot();
    await add(crew, 'one', { needs: 'part:+gasket' });
    await add(crew, 'two', { needs: 'one' });
    const card = cardIn(await crew.run('job done', { job: 'one' }, { as: 'Bram' }));
    expect(card.result).toBe('one: done Mon 23 Nov by Bram');
    expect(card.certainty).toBe(
      'The record had it waiting for: gasket (not ordered). Can be done now: #2 two.',
    );
    expect(card.data['said']).toBe('job #1 "one" done; gasket fitted, though the record had fewer in hand');
    expect(
      crew.teams
        .at(TEAM)
        .record.parts.movesOf(1)
        .map(({ kind }) => kind),
    ).toContain('fitted');
  });

  it('asks whether a part that is still on order came, and logs it', async () => {
    const crew = await bot();
    await crew.run('order place', { what: 'gasket', supplier: 'Norvale', due: '2026-12-04' });
    await add(crew, 'one', { needs: 'part:gasket' });
    const asked = cardIn(await crew.run('job done', { job: 'one' }));
    expect(asked.result).toContain('Has it come?');
    await press(crew, asked, 'Yes, it came');
    expect(cardIn(await crew.run('order show', { order: '1' })).data['state']).toBe('arrived');
    expect(cardIn(await crew.run('job show', { job: 'one' })).data['doneBy']).toBe('Ada');
  });

  it('tells the second who presses Done that it is done', async () => {
    const crew = await bot();
    const card = await add(crew, 'one');
    await press(crew, card, 'Done');
    const { code, message } = refusalIn(await press(crew, card, 'Done', { as: 'Bram' }));
    expect(code).toBe('already-done');
    expect(message).toBe('#1 one is done already: Ada, Mon 23 Nov. Nothing was changed.');
  });

  it('wants what is used once anew when a job is reopened', async () => {
    const crew = await bot();
    const card = await add(crew, 'refit the sump');
    await press(crew, card, 'Needs it');
    const done = cardIn(await crew.run('job done', { job: '1' }));
    const open = cardIn(await press(crew, done, 'Reopen'));
    expect(open.data['waitsFor']).toEqual(['sump gasket (not ordered)']);
    expect(open.data['said']).toContain('used up, to be renewed');
  });

  it('blocks nothing any more once it is dropped, and can be undone', async () => {
    const crew = await bot();
    await add(crew, 'one');
    await add(crew, 'two', { needs: 'one' });
    const dropped = cardIn(await crew.run('job drop', { job: 'one' }));
    expect(cardIn(await crew.run('job show', { job: 'two' })).data['unblocked']).toBe(true);
    await press(crew, dropped, 'Undo');
    expect(cardIn(await crew.run('job show', { job: 'two' })).data['unblocked']).toBe(false);
  });

  it('changes only what is said', async () => {
    const crew = await bot();
    await add(crew, 'one', { minutes: '2 h', people: 2 });
    const card = cardIn(await crew.run('job edit', { job: '1', name: 'first', tools: 'hoist' }));
    expect(card.data).toMatchObject({ name: 'first', likelyMin: 120, people: 2, tools: ['hoist'] });
  });

  it.each([
    ['job edit', { job: 'one' }, 'Nothing to change was typed'],
    ['job edit', { job: 'one', people: 1 }, 'is like that already'],
    ['job edit', { job: 'one', name: 'TWO' }, '#2 two is on the list already'],
    ['job reopen', { job: 'one' }, 'is open as it is'],
    ['job drop', { job: 'gone' }, 'is dropped already'],
    ['job done', { job: 'gone' }, '/job reopen takes it up again'],
    ['job show', { job: 'zzz' }, '/job list shows them'],
    ['job list', { stage: 'zzz' }, 'No stage is called "zzz"'],
    ['job from-set', { set: 'zzz' }, 'No stage is called "zzz"'],
  ])('%s %j is refused: %s', async (line, options, said) => {
    const crew = await bot();
    for (const name of ['one', 'two', 'gone']) await add(crew, name);
    await crew.run('job drop', { job: 'gone' });
    const before = recent(crew);
    expect(refusalIn(await crew.run(line, options)).message).toContain(said);
    expect(recent(crew)).toEqual(before);
    expect(crew.reported).toEqual([]);
  });

  it('asks which of several, and offers names while typing', async () => {
    const crew = await bot();
    await add(crew, 'fit head left');
    await add(crew, 'fit head right');
    const asked = cardIn(await crew.run('job done', { job: 'head' }));
    expect(asked.buttons?.map(({ label }) => label)).toEqual(['#1 fit head left', '#2 fit head right']);
    expect(cardIn(await press(crew, asked, '#2 fit head right')).data['doneBy']).toBe('Ada');
  });
});

describe('/job list', () => {
  it('goes by stages, open ones first, and pages', async () => {
    const crew = await bot();
    await crew.run('job from-set', { set: 'assembly' });
    await crew.press('job/take?set=assembly&key=*');
    const first = cardIn(await crew.run('job list'));
    expect(first.result).toBe('34 to do, 0 done');
    expect(first.certainty).toBe('1 to 8 of 34.');
    const second = cardIn(await press(crew, first, 'Next page'));
    expect(second.certainty).toBe('9 to 16 of 34.');
    expect(cardIn(await crew.run('job list', { page: 99 })).certainty).toBe('33 to 34 of 34.');
    expect(cardIn(await crew.run('job list', { stage: 'fluids' })).result).toBe(
      'No job of Fluids in is written down yet',
    );
  });
});

describe('/job from-set', () => {
  it('shows what it would add and writes nothing, then one, then the rest, and nothing twice', async () => {
    const crew = await bot();
    const offer = cardIn(await crew.run('job from-set', { set: 'fluids' }));
    expect(offer.result).toBe('7 jobs to choose from');
    expect(recent(crew)).toEqual([]);
    const one = cardIn(await press(crew, offer, 'Take'));
    expect(one).toMatchObject({ result: '6 jobs to choose from', inPlace: true });
    const rest = cardIn(await press(crew, one, 'Take all 6'));
    expect(rest.result).toBe('6 jobs written down');
    expect(refusalIn(await press(crew, offer, 'Take')).code).toBe('already-done');
    expect(cardIn(await crew.run('job from-set', { set: 'fluids' })).result).toBe(
      'Nothing more to choose for Fluids in',
    );
    expect(crew.teams.at(TEAM).record.jobs.ofBuild(1)).toHaveLength(7);
  });

  it('knows what a bearing failure asks for, and has the assembly wait for it whichever is chosen first', async () => {
    for (const order of [
      ['bearing-failure', 'assembly'],
      ['assembly', 'bearing-failure'],
    ]) {
      const crew = await bot();
      for (const set of order) await crew.press(`job/take?set=${set}&key=*`);
      const plugs = cardIn(await crew.run('job show', { job: 'fit gallery plugs' }));
      expect(JSON.stringify(plugs.data['waitsFor'])).toContain('take every gallery plug out');
      const cooler = cardIn(await crew.run('job show', { job: 'renew the oil cooler' }));
      expect(JSON.stringify(cooler.facts)).toContain('May it go back? No, unless a specialist');
    }
  });

  it('uses the names the crew has for parts and cases', async () => {
    const crew = await bot();
    await crew.run('order place', {
      what: 'multi-layer head gasket',
      supplier: 'Norvale',
      due: '2026-12-04',
    });
    await crew.press('job/take?set=assembly&key=head');
    const { data } = cardIn(await crew.run('job show', { job: 'cylinder head' }));
    expect(data['waitsFor']).toEqual([
      'multi-layer head gasket (expected Fri 4 Dec)',
      'head bolt set (not ordered)',
    ]);
  });

  it('waits for the fluid of the case it fills, under any of its names', async () => {
    const crew = await bot();
    await crew.run('fluid case', { name: 'Oil tank', grade: '10W-40', capacity: '6 L' });
    await crew.press('job/take?set=fluids&key=fill-oil');
    const waits = async () => cardIn(await crew.run('job show', { job: 'running-in oil' })).data['waitsFor'];
    expect(await waits()).toEqual(['Oil tank (6 L short)']);
    await crew.run('fluid bought', { what: '2 x 5 L 10W-40' });
    expect(await waits()).toEqual([]);
  });

  it('has a job wait for what a left out one would have waited for', async () => {
    const crew = await bot();
    for (const key of ['engine-in', 'exhaust']) await crew.press(`job/take?set=assembly&key=${key}`);
    const { data } = cardIn(await crew.run('job show', { job: 'exhaust system' }));
    expect(data['waitsFor']).toContain('#1 lower engine and gearbox into the car');
  });

  it('is undone as it was chosen, in one', async () => {
    const crew = await bot();
    const card = cardIn(await crew.press('job/take?set=fluids&key=*'));
    await press(crew, card, 'Undo');
    expect(crew.teams.at(TEAM).record.jobs.ofBuild(1)).toEqual([]);
    expect(crew.teams.at(TEAM).ledger.audit()).toEqual([]);
  });

  it('refuses a job that belongs to no set', async () => {
    const crew = await bot();
    expect(refusalIn(await crew.press('job/take?set=fluids&key=forged')).message).toContain(
      'belongs to no set',
    );
    expect(crew.reported).toEqual([]);
  });
});

describe('what is offered while typing', () => {
  it('is open jobs to be done or dropped, closed ones to be taken up again, and what a list already holds is kept', async () => {
    const crew = await bot();
    for (const name of ['fit head', 'fit sump']) await add(crew, name, { needs: 'part:+copper washer' });
    await crew.run('job done', { job: '1' });
    const entry = catalogue.find('job');
    const offered = (line: string, option: string, typed: string) => {
      const does = entry?.command.does as Readonly<Record<string, Runnable>>;
      const { record } = crew.teams.at(TEAM);
      const place = { teamId: TEAM, channelId: '600', channelName: 'hill-climb' };
      const hand = { record, place, clock: crew.clock } as unknown as Hand; // suggestions look at nothing else
      return does[line]?.suggest[option]?.(typed, hand, {}).map(({ value }) => value);
    };
    expect(offered('done', 'job', 'fit')).toEqual(['#2']);
    expect(offered('reopen', 'job', 'fit')).toEqual(['#1']);
    expect(offered('add', 'needs', 'job #1, wash')).toEqual(['job #1, copper washer']);
    expect(offered('add', 'stage', 'first')).toContain('first-start');
    expect(offered('from-set', 'set', 'bear')).toEqual(['bearing-failure']);
  });
});

describe('buttons that nobody made', () => {
  it.each([
    'job/take?set=__proto__&key=*',
    'job/take?set=fluids&key=__proto__',
    'job/from-set?set=fluids&page=-1',
    'job/from-set?set=fluids&page=x',
    'job/done?job=999',
    'job/done?job=1&came=stolen',
    'job/renew?job=1&part=gold',
    'job/show?job=%27%3B--',
    'job/list?page=0',
    'now/page?page=1.5',
    'now/page?minutes=-5',
    'when/back?from=2026-13-45&to=x',
    'when/date?stage=__proto__',
    'when/order-by?stage=nowhere',
  ])('%s is refused and changes nothing', async (ref) => {
    const crew = await bot();
    await add(crew, 'one');
    const before = recent(crew);
    expect(refusalIn(await crew.press(ref)).code).not.toBe('outage');
    expect(recent(crew)).toEqual(before);
    expect(crew.reported).toEqual([]);
  });
});
