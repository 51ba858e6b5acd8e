import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { type CrewBot, cardIn, formIn, openCrewBot, refusalIn, TEAM } from '../../support/bot.ts';
import { buttonsOf, pressed } from '../../support/pressed.ts';

const DAY = 24 * 3_600_000;
const changes = (bot: CrewBot) => bot.teams.at(TEAM).ledger.recent(100).length;
const ready = async (bot: CrewBot, stage?: string) =>
  cardIn(await bot.run('ready', stage === undefined ? {} : { stage }));
/** What is missing, on all pages. */
async function missing(bot: CrewBot, stage: string): Promise<readonly string[]> {
  const { data } = await ready(bot, stage);
  return z
    .array(z.object({ says: z.string() }))
    .parse(data['missing'])
    .map(({ says }) => says);
}

/** Passes stages with a reason, whatever is open. */
async function passAll(bot: CrewBot, ...stages: readonly string[]): Promise<void> {
  for (const stage of stages) await bot.run('stage pass', { stage, reason: 'for the test' });
}

/** Everything that a stage asks people for is said. */
async function sayAll(bot: CrewBot, stage: string): Promise<void> {
  for (;;) {
    const card = await ready(bot, stage);
    const yes = buttonsOf(card).find(({ label }) => label === 'Yes, I say so');
    if (yes === undefined) return;
    await pressed(bot, card, 'Yes, I say so');
  }
}

describe('/ready', () => {
  it('asks about the next stage that is not passed, and writes nothing down', async () => {
    const bot = await openCrewBot();
    const card = await ready(bot);
    expect(card.result).toBe('No: three things before Assembly');
    expect(card.data).toMatchObject({ stage: 'assembly', ready: false, standing: 'open' });
    expect(changes(bot)).toBe(0);
  });

  it('names exactly what is missing, each with its button, and says yes once it is there', async () => {
    const bot = await openCrewBot();
    await bot.run('job add', { name: 'fit the sump', stage: 'assembly' });
    await bot.run('temporary put', { what: 'drain blanked, undo before assembly' });
    await sayAll(bot, 'assembly');
    const card = await ready(bot, 'assembly');
    expect(card.result).toBe('No: two things before Assembly');
    expect(card.items?.map(({ text }) => text)).toEqual([
      'Job still open: fit the sump',
      '“drain blanked” must be undone before Assembly',
    ]);
    expect(buttonsOf(card).map(({ label }) => label)).toEqual([
      'Done',
      'Undone',
      'How it is done',
      'Pass it',
      'All stages',
    ]);
    await pressed(bot, card, 'Done');
    await pressed(bot, card, 'Undone');
    const yes = await ready(bot, 'assembly');
    expect(yes.result).toBe('Yes: ready for Assembly');
    expect(yes.caution).toContain('An engine on a crane or stand falls');
  });

  it('counts many jobs as one thing', async () => {
    const bot = await openCrewBot();
    for (const name of 'abcde') await bot.run('job add', { name: `job ${name}`, stage: 'assembly' });
    const card = await ready(bot, 'assembly');
    expect(card.result).toBe('No: four things before Assembly');
    expect(card.items?.[0]).toMatchObject({
      text: '5 jobs still open',
      note: 'job a, job b, job c and 2 more',
    });
  });

  it('asks for a stage’s fluids, its required measures and fresh readings within limits', async () => {
    const bot = await openCrewBot();
    await bot.run('fluid case', { name: 'sump', grade: '10W-40', capacity: '5.6 L' });
    await passAll(bot, 'assembly', 'fluids');
    await bot.run('reading log', { reading: 'battery 11.8 V at rest' });
    await bot.run('temporary put', { what: 'fuses out, required for cranking' });
    expect(await missing(bot, 'oil pressure')).toEqual([
      'Required: no spark. Is it “fuses out”?',
      'Required: no fuel. Is it “fuses out”?',
      'Sump is empty, takes 5.6 L 10W-40',
      'Battery voltage (at rest): 11.8 V, wanted at least 12.4 V',
    ]);
    const card = await ready(bot, 'oil pressure');
    const form = formIn(await pressed(bot, card, 'Poured in'));
    expect(form.fields[0]?.value).toBe('5.6 L');
    await bot.press('fluid/pour-done?case=1', { volume: '5.6 L', grade: '10W-40' });
    await pressed(bot, card, 'Yes: fuses out');
    await bot.run('reading log', { reading: 'battery 12.7 V at rest' });
    expect(await missing(bot, 'oil pressure')).toEqual(['Required: no fuel. Is it “fuses out”?']);
    bot.clock.set(bot.clock.nowMs() + 3 * DAY);
    expect(await missing(bot, 'oil pressure')).toContain(
      'Battery voltage (at rest): 12.7 V is 3 days old, and may be 2 at most',
    );
  });

  it('takes a longer name for the part it asks for, but not what only belongs to it', async () => {
    const bot = await openCrewBot();
    await bot.run('part shelf', { part: '+oil filter housing seal' });
    expect(await missing(bot, 'fluids')).toContain('Oil filter: no part of this name is noted');
    await bot.run('part shelf', { part: '+spin-on oil filter (long)' });
    expect((await missing(bot, 'fluids')).filter((says) => /oil filter/i.test(says))).toEqual([]);
  });

  it('is in doubt about a reading that does not say when it was taken', async () => {
    const bot = await openCrewBot();
    await bot.run('reading log', { reading: 'oil pressure 1.4 bar' });
    expect(await missing(bot, 'first start')).toContain(
      'Oil pressure (cranking): 1.4 bar was read on Mon 23 Nov, but nobody said whether cranking',
    );
  });

  it('goes by the crew’s own limit where it has set one', async () => {
    const bot = await openCrewBot();
    await bot.run('reading log', { reading: 'battery 12.2 V at rest' });
    expect((await missing(bot, 'first start')).join()).toContain('wanted at least 12.4 V');
    await bot.run('reading limits', { kind: 'battery voltage', limit: 'at least 12 V at rest' });
    expect((await missing(bot, 'first start')).join()).not.toContain('wanted at least');
  });

  it('shows what is temporary, and what was passed with something open, at every later stage', async () => {
    const bot = await openCrewBot();
    await bot.run('temporary put', { what: 'undertray left off until mapping' });
    await passAll(bot, 'assembly');
    const { working } = await ready(bot, 'first start');
    expect(working).toEqual([
      'Assembly was passed with something open, Mon 23 Nov by Ada: “for the test”',
      'Temporary: undertray left off, since Mon 23 Nov, undo before Mapping',
    ]);
  });

  it('lets nothing temporary outlive the last stage, whatever was said of it', async () => {
    const bot = await openCrewBot();
    await bot.run('temporary put', { what: 'tie on the throttle spring' });
    expect(await missing(bot, 'mapping')).not.toContain(
      '“tie on the throttle spring” must be undone before Sign-off',
    );
    expect(await missing(bot, 'sign-off')).toContain(
      '“tie on the throttle spring” must be undone before Sign-off',
    );
  });

  it('asks for what was required and undone too early', async () => {
    const bot = await openCrewBot();
    await bot.run('temporary put', { what: 'plugs out, required for cranking' });
    await bot.run('temporary undone', { measure: 'plugs out' }, { as: 'Bram' });
    const text = '“plugs out” is required at Oil pressure by cranking; Bram undid it on Mon 23 Nov';
    expect(await missing(bot, 'oil pressure')).toContain(text);
    await pressed(bot, await ready(bot, 'oil pressure'), 'Put in place again');
    expect(await missing(bot, 'oil pressure')).not.toContain(text);
  });

  it('says readings as the crew counts them', async () => {
    const bot = await openCrewBot();
    await bot.run('team', { units: 'US' });
    await bot.run('reading log', { reading: 'oil pressure 10 psi cranking' });
    // exact: 100 kPa = 14.50 lbf/in² (NIST SP 811, B.8)
    expect(await missing(bot, 'first start')).toContain(
      'Oil pressure (cranking): 10 psi, wanted at least 14.5 psi',
    );
  });

  it('pages what does not fit a phone', async () => {
    const bot = await openCrewBot();
    await bot.run('stage ask', { stage: 'first start', said: 'horn sounds' });
    const card = await ready(bot, 'first start');
    expect(card.certainty).toBe('1 to 6 of 7.');
    const next = cardIn(await pressed(bot, card, 'Next page'));
    expect(next.items).toHaveLength(1);
  });

  it.each([
    ['ignition key', 'No stage is called "ignition key"'],
    ['fuelling', 'Several stages fit'],
    ['', 'nothing was typed'],
  ])('refuses %j as a stage', async (stage, said) => {
    const bot = await openCrewBot();
    expect(refusalIn(await bot.run('ready', { stage })).message).toContain(said);
  });
});

describe('/stage pass', () => {
  it('records who, when and against what', async () => {
    const bot = await openCrewBot();
    await bot.run('job add', { name: 'fit the sump', stage: 'assembly' });
    await bot.run('job done', { job: 'fit the sump' });
    await sayAll(bot, 'assembly');
    const card = cardIn(await bot.run('stage pass', { stage: 'assembly' }, { as: 'Bram' }));
    expect(card).toMatchObject({ result: 'Assembly is passed', tone: 'done' });
    expect(card.data).toMatchObject({ passedOn: '2026-11-23', by: 'Bram', reason: null });
    expect(card.data['against']).toContain('Its one job is done');
    expect((await ready(bot)).data['stage']).toBe('fluids');
    const again = await ready(bot, 'assembly');
    expect(again).toMatchObject({ result: 'Assembly is passed, Mon 23 Nov by Bram', items: [] });
    expect(again.working?.[0]).toBe('Passed against: Its one job is done');
  });

  it('wants a reason when something is open, and keeps the request for a tap', async () => {
    const bot = await openCrewBot();
    const asked = await bot.run('stage pass', { stage: 'assembly' });
    expect(refusalIn(asked).message).toContain('Assembly has three things open');
    expect(changes(bot)).toBe(0);
    const card = cardIn(await pressed(bot, cardIn(asked), 'Checked another way'));
    expect(card).toMatchObject({ result: 'Assembly is passed', tone: 'soon' });
    expect(card.data['reason']).toBe('Checked another way');
  });

  it('also wants what only going through it can show', async () => {
    const bot = await openCrewBot();
    await passAll(bot, 'assembly', 'fluids', 'oil pressure');
    await sayAll(bot, 'fuel pressure');
    const card = await ready(bot, 'fuel pressure');
    expect(card.result).toBe('Yes: ready for Fuel pressure and leaks');
    expect(card.facts).toEqual([
      [
        'Passed once',
        'Fuel pressure (at rest) is read and within limits; somebody says: every joint from tank to rail and back dry under pressure, looked at twice',
      ],
    ]);
    expect(refusalIn(await bot.run('stage pass', { stage: 'fuel pressure' })).message).toContain(
      'two things open',
    );
  });

  it('leaves what others have said since when it is taken back', async () => {
    const bot = await openCrewBot();
    const passed = cardIn(await bot.run('stage pass', { stage: 'assembly', reason: 'seen' }));
    await bot.run('stage said', { what: 'guards, shields' }, { as: 'Cleo' });
    await pressed(bot, passed, 'Undo');
    expect((await ready(bot, 'assembly')).data['standing']).toBe('open');
    expect((await missing(bot, 'sign-off')).join()).not.toContain('guards, shields');
  });

  it('is done once, and taken back by undo', async () => {
    const bot = await openCrewBot();
    const passed = cardIn(await bot.run('stage pass', { stage: 'assembly', reason: 'seen' }));
    expect(refusalIn(await bot.run('stage pass', { stage: 'assembly' })).code).toBe('already-done');
    await pressed(bot, passed, 'Undo');
    expect((await ready(bot, 'assembly')).data['standing']).toBe('open');
  });
});

describe('a pass', () => {
  /** Assembly and fluids passed on what they stand on: a job done, a sump full. */
  async function passedBot(): Promise<CrewBot> {
    const bot = await openCrewBot();
    await bot.run('job add', { name: 'fit the sump', stage: 'assembly' });
    await bot.run('job done', { job: 'fit the sump' });
    await bot.run('part add', { name: 'oil filter' });
    await bot.run('part shelf', { part: 'oil filter' });
    await bot.run('fluid case', { name: 'sump', grade: '10W-40', capacity: '5.6 L' });
    await bot.run('fluid poured', { what: '5.6 L into sump' });
    await sayAll(bot, 'assembly');
    await bot.run('stage pass', { stage: 'assembly' });
    await passAll(bot, 'fluids');
    return bot;
  }

  const standing = async (bot: CrewBot, stage: string) => (await ready(bot, stage)).data['standing'];

  it('reopens with every stage behind it when a job of an earlier stage is taken up again', async () => {
    const bot = await passedBot();
    await bot.run('job reopen', { job: 'fit the sump' });
    expect(await standing(bot, 'assembly')).toBe('reopened');
    expect(await standing(bot, 'fluids')).toBe('reopened');
    expect((await ready(bot, 'fluids')).certainty).toBe(
      'Passed Mon 23 Nov, open again: Job still open: fit the sump.',
    );
    await bot.run('job done', { job: 'fit the sump' });
    expect(await standing(bot, 'fluids')).toBe('reopened');
    const { items } = cardIn(await bot.run('stage list'));
    expect(items?.[0]?.note).toBe(
      'Open again: Job still open: fit the sump. It was passed Mon 23 Nov by Ada',
    );
  });

  it('stands again when what reopened it is undone, since both are one change', async () => {
    const bot = await passedBot();
    const reopened = cardIn(await bot.run('job reopen', { job: 'fit the sump' }));
    await pressed(bot, reopened, 'Undo');
    expect(await standing(bot, 'fluids')).toBe('passed');
  });

  it('reopens when a fluid it rests on is drained, and not when the oil is changed in one go', async () => {
    const bot = await passedBot();
    await bot.run('fluid changed', { case: 'sump' });
    expect(await standing(bot, 'fluids')).toBe('passed');
    const drained = cardIn(await bot.run('fluid drained', { what: 'sump' }));
    expect(drained.data['said']).toContain('open again: Fluids in');
    expect(await standing(bot, 'fluids')).toBe('reopened');
    expect(await standing(bot, 'assembly')).toBe('passed');
  });

  it('reopens when something is put in again that it must not outlive', async () => {
    const bot = await passedBot();
    await bot.run('temporary put', { what: 'drain blanked, undo before first start' });
    expect(await standing(bot, 'fluids')).toBe('passed');
    await bot.run('temporary put', { what: 'filter left off, undo before fluids' });
    expect(await standing(bot, 'fluids')).toBe('reopened');
    expect(await standing(bot, 'assembly')).toBe('passed');
  });

  it('reopens when a part it rests on is gone again', async () => {
    const bot = await passedBot();
    await bot.run('part sent-back', { part: 'oil filter' });
    expect(await standing(bot, 'fluids')).toBe('reopened');
  });

  it('lets what people said at that stage lapse', async () => {
    const bot = await passedBot();
    await bot.run('job reopen', { job: 'fit the sump' });
    expect((await missing(bot, 'assembly')).join()).toContain('Nobody has said yet: turned over by hand');
  });

  it('stands when what was open at the time is still open', async () => {
    const bot = await openCrewBot();
    await bot.run('job add', { name: 'paint the block', stage: 'assembly' });
    await passAll(bot, 'assembly');
    await bot.run('temporary put', { what: 'hook left on' });
    expect(await standing(bot, 'assembly')).toBe('passed');
  });

  it('reopens when the reading that showed it is taken back', async () => {
    const bot = await passedBot();
    await bot.run('temporary put', { what: 'no spark and no fuel while cranking' });
    await bot.run('reading log', { reading: 'battery 12.7 V at rest' });
    const logged = cardIn(await bot.run('reading log', { reading: 'oil pressure 1.4 bar cranking' }));
    await sayAll(bot, 'oil pressure');
    await bot.run('stage said', { what: 'oil seen at the top' });
    expect(cardIn(await bot.run('stage pass', { stage: 'oil pressure' })).result).toContain('is passed');
    bot.clock.set(bot.clock.nowMs() + 30 * DAY);
    expect(await standing(bot, 'oil pressure')).toBe('passed');
    await bot.run('temporary undone', { measure: 'no spark' });
    expect(await standing(bot, 'oil pressure')).toBe('passed');
    await pressed(bot, logged, 'Undo');
    expect((await ready(bot, 'oil pressure')).certainty).toContain(
      'A reading that it rested on was taken back',
    );
  });
});

describe('/stage said', () => {
  it('takes a yes and takes it back', async () => {
    const bot = await openCrewBot();
    await bot.run('stage said', { what: 'turned over by hand' }, { as: 'Cleo' });
    expect(cardIn(await bot.run('stage show', { stage: 'assembly' })).items?.[2]?.note).toBe(
      'Cleo said so on Mon 23 Nov.',
    );
    await bot.run('stage said', { what: 'turned over', answer: 'no' });
    expect(await missing(bot, 'assembly')).toHaveLength(3);
  });

  it.each([
    ['moon is full', 'Nothing that is asked for fits'],
    ['the', 'Several things fit'],
  ])('refuses %j', async (what, said) => {
    const bot = await openCrewBot();
    expect(refusalIn(await bot.run('stage said', { what })).message).toContain(said);
    expect(changes(bot)).toBe(0);
  });
});

describe('editing the stages', () => {
  it('asks for more, and for less, without losing what was said', async () => {
    const bot = await openCrewBot();
    await bot.run('part add', { name: 'drain hose' });
    const asked = cardIn(await bot.run('stage ask', { stage: 'first start', part: 'drain hose' }));
    expect(asked.items?.at(-1)?.text).toBe('Part here or fitted: drain hose');
    expect(await missing(bot, 'first start')).toContain('Drain hose: not ordered');
    const dropped = cardIn(await bot.run('stage drop', { condition: 'drain hose' }));
    expect(await missing(bot, 'first start')).not.toContain('Drain hose: not ordered');
    await pressed(bot, dropped, 'Undo');
    expect(await missing(bot, 'first start')).toContain('Drain hose: not ordered');
  });

  it('asks for a reading in any unit, in place of the one asked for before', async () => {
    const bot = await openCrewBot();
    const wanted = { stage: 'first start', reading: 'battery voltage', states: 'at rest', min: '12.6 V' };
    const card = cardIn(await bot.run('stage ask', wanted));
    expect(card.items?.at(-1)?.text).toBe(
      'Battery voltage (at rest): at least 12.6 V, no older than 14 days',
    );
    const said = z
      .array(z.object({ says: z.string() }))
      .parse(card.data['conditions'])
      .filter(({ says }) => says.startsWith('Battery voltage'));
    expect(said).toHaveLength(1);
    const psi = { stage: 'first start', reading: 'oil pressure', states: 'hot, idle', min: '15 psi' };
    const { items } = cardIn(await bot.run('stage ask', psi));
    // exact: 15 lbf/in² = 103.42 kPa (NIST SP 811)
    expect(items?.at(-1)?.text).toContain('at least 1.03 bar');
  });

  it('leaves a condition of the starting set out by a button made before anything was written down', async () => {
    const bot = await openCrewBot();
    const card = cardIn(await bot.run('stage show', { stage: 'assembly' }));
    await bot.run('stage said', { what: 'turned over by hand' });
    const left = cardIn(await pressed(bot, card, 'Leave it out'));
    expect(left.data['conditions']).toHaveLength(4);
    expect(refusalIn(await pressed(bot, card, 'Leave it out')).code).toBe('stale-message');
  });

  it('knows a stage by its own name first, then by what another is also called', async () => {
    const bot = await openCrewBot();
    expect((await ready(bot, 'dyno')).data['stage']).toBe('mapping');
    await bot.run('stage add', { name: 'Dyno', after: 'mapping' });
    expect((await ready(bot, 'dyno')).data['stage']).toBe('dyno');
  });

  it('adds, moves, renames and removes stages, each undone by a tap', async () => {
    const bot = await openCrewBot();
    const names = async (): Promise<readonly string[]> =>
      z
        .array(z.object({ name: z.string() }))
        .parse(cardIn(await bot.run('stage list')).data['stages'])
        .map(({ name }) => name)
        .slice(0, 4);
    const before = await names();
    const added = cardIn(await bot.run('stage add', { name: 'Brake test', after: 'assembly' }));
    expect(await names()).toEqual(['Assembly', 'Brake test', 'Fluids in', 'Oil pressure by cranking']);
    await bot.run('stage move', { stage: 'brake test', after: 'first' });
    expect((await names())[0]).toBe('Brake test');
    const renamed = cardIn(await bot.run('stage rename', { stage: 'brake test', name: 'Brakes' }));
    expect((await names())[0]).toBe('Brakes');
    await pressed(bot, renamed, 'Undo');
    expect((await names())[0]).toBe('Brake test');
    await bot.run('stage remove', { stage: 'brake test' });
    expect(await names()).toEqual(before);
    expect(added.data['stage']).toBe('brake-test');
  });

  it.each([
    ['stage ask', { stage: 'first start' }, 'Give one thing to ask for'],
    ['stage ask', { stage: 'first start', said: 'a', job: 'b' }, 'Give one thing to ask for'],
    ['stage ask', { stage: 'first start', job: 'weld' }, 'No job'],
    ['stage ask', { stage: 'first start', fluid: 'sump' }, 'No case'],
    ['stage ask', { stage: 'first start', reading: 'mood' }, 'no kind is called'],
    ['stage ask', { stage: 'first start', reading: 'oil pressure', min: 'plenty' }, 'min:'],
    [
      'stage ask',
      { stage: 'first start', reading: 'oil pressure', min: '3 bar', max: '2 bar' },
      'is above max',
    ],
    ['stage ask', { stage: 'first start', said: 'x', fresh_days: 0 }, 'fresh_days'],
    ['stage ask', { stage: 'dinner', said: 'x' }, 'No stage is called'],
    ['stage drop', { condition: 'moon' }, 'Nothing that is asked for fits'],
    ['stage add', { name: '...', after: 'assembly' }, 'needs a letter'],
    ['stage add', { name: 'Assembly', after: 'first' }, 'already'],
    ['stage move', { stage: 'assembly', after: 'assembly' }, 'behind itself'],
    ['stage move', { stage: 'assembly', after: 'supper' }, 'No stage is called'],
    ['stage steps', { stage: 'supper' }, 'No stage is called'],
    ['stage pass', { stage: 'supper' }, 'No stage is called'],
  ])('%s %j is refused and changes nothing', async (line, options, said) => {
    const bot = await openCrewBot();
    expect(refusalIn(await bot.run(line, options)).message).toContain(said);
    expect(changes(bot)).toBe(0);
    expect(bot.reported).toEqual([]);
  });

  it('goes back to the starting set with the first edit’s undo, unless somebody has edited since', async () => {
    const bot = await openCrewBot();
    await bot.run('stage said', { what: 'turned over by hand' });
    const added = cardIn(await bot.run('stage add', { name: 'Brake test', after: 'assembly' }));
    await pressed(bot, added, 'Undo');
    expect(cardIn(await bot.run('stage list')).data['stages']).toHaveLength(11);
    expect(await missing(bot, 'assembly')).toHaveLength(2);
    const again = cardIn(await bot.run('stage add', { name: 'Brake test', after: 'assembly' }));
    await bot.run('stage ask', { stage: 'brake test', said: 'lights seen' }, { as: 'Cleo' });
    expect(refusalIn(await pressed(bot, again, 'Undo')).message).toContain('Cleo has changed this since');
    expect(cardIn(await bot.run('stage list')).data['stages']).toHaveLength(12);
  });

  it('keeps a stage that something names, or that was passed', async () => {
    const bot = await openCrewBot();
    await bot.run('temporary put', { what: 'tray off until mapping' });
    expect(refusalIn(await bot.run('stage remove', { stage: 'mapping' })).message).toContain(
      'named by tray off',
    );
    await passAll(bot, 'assembly');
    expect(refusalIn(await bot.run('stage remove', { stage: 'assembly' })).code).toBe('not-now');
  });
});

describe('/stage steps', () => {
  it('shows a few steps at a time, with figures and their source, and what stops it', async () => {
    const bot = await openCrewBot();
    const card = cardIn(await bot.run('stage steps', { stage: 'oil pressure' }));
    expect(card.certainty).toBe('Steps 1 to 4 of 7');
    expect(card.caution).toContain('No spark and no fuel');
    const next = cardIn(await pressed(bot, card, 'Next page'));
    expect(next.items?.[0]?.note).toContain('at most 30 s at a time, then 2 min of rest (OMM-3666112)');
    expect(next.items?.[0]?.note).toContain('60 s of rest (common practice, no source)');
    expect(next.items?.[0]?.note).toContain('Stop: No pressure after six bursts');
  });

  it('says that a stage of the crew’s own has none', async () => {
    const bot = await openCrewBot();
    await bot.run('stage add', { name: 'Brake test', after: 'assembly' });
    expect(refusalIn(await bot.run('stage steps', { stage: 'brake test' })).code).toBe('not-found');
  });
});

describe('the buttons of a question', () => {
  it('open the form that a reading, a part or a case wants', async () => {
    const bot = await openCrewBot();
    await passAll(bot, 'assembly');
    const fluids = await ready(bot, 'fluids');
    expect(formIn(await pressed(bot, fluids, 'What it takes')).fields[0]?.value).toBe('sump');
    const order = formIn(await pressed(bot, fluids, 'Order it'));
    expect(order.fields[0]?.value).toBe('oil filter');
    const placed = await bot.press('stage/order-done', {
      what: 'oil filter',
      supplier: 'Oxmere',
      due: '2026-11-27',
      quantity: '1',
    });
    expect(cardIn(placed).data['order']).toBe(1);
    expect(await missing(bot, 'fluids')).toContain('Oil filter: on order, expected Fri 27 Nov');
    expect(buttonsOf(await ready(bot, 'fluids')).map(({ label }) => label)).toContain('Arrived');
    const start = await ready(bot, 'first start');
    const form = formIn(await pressed(bot, start, 'Log the reading'));
    expect(form.fields.map(({ name }) => name)).toEqual(['value', 'conditions']);
    const logged = await bot.press('reading/log?what=battery+voltage', {
      value: '12.7 V',
      conditions: 'at rest',
    });
    expect(cardIn(logged).result).toContain('12.7 V');
    expect((await missing(bot, 'first start')).join()).not.toContain('Battery');
  });
});
