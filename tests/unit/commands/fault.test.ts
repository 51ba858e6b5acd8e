import { beforeEach, describe, expect, it } from 'vitest';
import { writeActionRef } from '../../../src/bot/action-ref.ts';
import type { Result } from '../../../src/bot/request.ts';
import { type CrewBot, cardIn, formIn, MONDAY, openCrewBot, refusalIn, TEAM } from '../../support/bot.ts';
import { labelsIn, pressAll, pressLabel } from '../../support/pressing.ts';

let bot: CrewBot;
beforeEach(async () => {
  bot = await openCrewBot();
});

const start = (symptom: string, as = 'Ada'): Promise<Result> => bot.run('fault start', { symptom }, { as });
const record = () => bot.teams.at(TEAM).record;
const data = (result: Result) => cardIn(result).data;

describe('/fault start', () => {
  it('shows the cheapest test with what to expect, how, what it takes and what could hurt', async () => {
    const card = cardIn(await start('it wont crank'));
    expect(card).toMatchObject({ subject: 'No crank #1', result: 'Turn the key and listen at the starter' });
    expect(card.items?.[0]?.text).toBe('Expect: The starter engages and turns the engine evenly');
    expect(card.items?.[0]?.note).toContain('Hold the key for two seconds');
    expect(card.facts).toContainEqual(['Takes', 'about 1 min']);
    expect(card.caution).toContain('Rotating parts');
    expect(card.certainty).toContain('0 of 11 ruled out');
    expect(card.smallPrint?.[0]).toContain('common practice, no source');
    expect(card.data).toMatchObject({
      walk: 1,
      symptom: 'no-crank',
      state: 'open',
      test: 'listen',
      minutes: 1,
    });
  });

  it('has a button for each outcome, and for what else can be done', async () => {
    expect(labelsIn(await start('no crank'))).toEqual([
      'Nothing at all',
      'A click, or clicking',
      'Turns slowly and heavily',
      'Starter spins, engine does not',
      'Can’t do that now',
      'With a note',
      'Leave it here',
      'Undo',
    ]);
  });

  it('goes on with the one begun already for the same symptom', async () => {
    await start('no spark');
    const card = cardIn(await start('kein funke', 'Bram'));
    expect(card.certainty).toContain('Begun already by Ada');
    expect(card.data['walk']).toBe(1);
    expect(record().walks.ofBuild(1)).toHaveLength(1);
  });

  it('asks when words fit several symptoms, and begins the one pressed', async () => {
    const asked = await start('low pressure');
    expect(refusalIn(asked).code).toBe('which-one');
    const label = labelsIn(asked).find((one) => one.startsWith('No oil pressure')) ?? '';
    expect(cardIn(await pressLabel(bot, asked, label)).subject).toBe('No oil pressure #1');
  });

  it('begins nothing for what is no symptom', async () => {
    expect(refusalIn(await start('banana'))).toMatchObject({ code: 'not-found' });
    expect(record().builds.all()).toEqual([]);
  });
});

describe('a finding', () => {
  it('redraws the card with the next test, what was found last and what is ruled out', async () => {
    const next = await pressLabel(bot, await start('no crank'), 'A click, or clicking', { as: 'Bram' });
    const card = cardIn(next);
    expect(card.inPlace).toBe(true);
    expect(card.result).toBe('Measure the battery at its posts, at rest');
    expect(card.working?.[0]).toBe(
      'Last: Turn the key and listen at the starter → A click, or clicking (Bram).',
    );
    expect(card.certainty).toContain('3 of 11 ruled out');
    expect(card.working?.at(-1)).toContain('start inhibited');
  });

  it('ends in a cause with what to do, what to check again and where it belongs', async () => {
    const found = await pressAll(bot, await start('no crank'), 'A click, or clicking', 'Below 12.2 V');
    const card = cardIn(found);
    expect(card.result).toBe('Battery discharged');
    expect(card.certainty).toContain('A test leaves nothing else');
    expect(card.items?.[0]?.text).toContain('Charge it fully');
    expect(card.items?.[0]?.note).toContain('Check again: Rest voltage');
    expect(card.facts?.[0]?.[0]).toBe('Belongs to');
    expect(card.caution).toContain('Battery');
    const closed = cardIn(await pressLabel(bot, found, 'That was it', { as: 'Cleo' }));
    expect(closed).toMatchObject({ result: 'Battery discharged', tone: 'done' });
    expect(closed.certainty).toContain('Closed by Cleo, Mon 23 Nov');
    expect(closed.data).toMatchObject({ state: 'finished', cause: 'flat-battery' });
  });

  it('of what cannot be done now gives the next cheapest, and comes back to it in the end', async () => {
    let result = await start('will not start');
    const asked: unknown[] = [];
    while (labelsIn(result).includes('Can’t do that now')) {
      asked.push(data(result)['test']);
      result = await pressLabel(bot, result, 'Can’t do that now');
    }
    expect(new Set(asked).size).toBe(5);
    expect(cardIn(result).certainty).toContain('Only what was put off is left');
    expect(data(result)['test']).toBe('turn-key');
    const done = await pressLabel(bot, result, 'Fires, then dies');
    expect(data(done)).toMatchObject({ step: 'found', cause: 'dies' });
  });

  it('begins anew without a cause that it was not', async () => {
    const found = await pressAll(bot, await start('no crank'), 'A click, or clicking', 'Below 12.2 V');
    const anew = await pressLabel(bot, found, 'It was not that');
    expect(data(anew)).toMatchObject({ step: 'test', ruledOut: ['flat-battery'] });
    expect(cardIn(anew).certainty).toContain('1 of 11 ruled out');
    const left = data(await pressLabel(bot, anew, 'A click, or clicking'))['left'];
    expect(JSON.stringify(left)).not.toContain('flat-battery');
  });

  it('goes on with the guide a cause leads to, and takes along what was found', async () => {
    const start1 = await start('wont start');
    const found = await pressAll(bot, start1, 'Turns over, never fires', 'No speed at all');
    expect(cardIn(found).result).toBe('The controller sees no speed');
    const next = await pressLabel(bot, found, 'Go on: No speed signal');
    expect(data(next)).toMatchObject({ walk: 2, symptom: 'cranks-no-speed', cameFrom: 1 });
    expect(data(next)['findings']).toMatchObject([{ step: 'speed-signal', outcome: 'none', by: 'Ada' }]);
    expect(record().walks.find(1)).toMatchObject({ state: 'finished', cause: 'no-speed' });
  });

  it('that does not go with the others is honestly beyond the guide', async () => {
    const beyond = await pressAll(bot, await start('boost'), 'Too much at once', 'A big hose off or split');
    const card = cardIn(beyond);
    expect(card.result).toContain('Beyond this guide');
    expect(card.certainty).toContain('two findings do not go together');
    expect(card.facts?.[0]).toEqual(['Ask', expect.stringContaining('The mapper')]);
    expect(card.working?.join('\n')).toContain('A big hose off or split');
    expect(data(await pressLabel(bot, beyond, 'Begin it anew'))).toMatchObject({
      test: 'high-low',
      ruledOut: [],
    });
  });

  it('is refused for a step or outcome that no guide has, and for another build', async () => {
    const forged = (args: Record<string, string | number>) =>
      bot.press(writeActionRef({ command: 'fault', action: 'found', args }));
    await start('no crank');
    for (const args of [
      { walk: 1, step: 'listen', outcome: 'banana' },
      { walk: 1, step: 'no-such', outcome: 'nothing' },
      { walk: 1, step: 'cause', outcome: 'no-such' },
      { walk: 9, step: 'listen', outcome: 'nothing' },
    ]) {
      expect(refusalIn(await forged(args)).code).toBe('stale-message');
    }
    await bot.run('fault start', { symptom: 'smoke' }, { channel: '601' });
    expect(refusalIn(await forged({ walk: 2, step: 'where', outcome: 'blue' })).code).toBe('not-found');
    expect(record().walks.find(1)?.findings).toEqual([]);
    expect(bot.reported).toEqual([]);
  });
});

describe('two people at once', () => {
  it('the second is told what the first found, and nothing is changed', async () => {
    const card = await start('no crank');
    await pressLabel(bot, card, 'A click, or clicking', { as: 'Bram' });
    const second = await pressLabel(bot, card, 'Nothing at all', { as: 'Cleo' });
    const { code, message } = refusalIn(second);
    expect(code).toBe('changed-since');
    expect(message).toContain('Bram was first and found “A click, or clicking”');
    expect(message).toContain('Yours, “Nothing at all”, was not noted');
    expect(record().walks.find(1)?.findings).toMatchObject([{ outcome: 'clicks', byName: 'Bram' }]);
  });

  it('is not told off for finding the same', async () => {
    const card = await start('no crank');
    await pressLabel(bot, card, 'Nothing at all', { as: 'Bram' });
    const second = await pressLabel(bot, card, 'Nothing at all', { as: 'Cleo' });
    expect(refusalIn(second)).toMatchObject({ code: 'already-done' });
    expect(refusalIn(second).message).toContain('Bram noted “Nothing at all” there already');
  });

  it('learns that the search was closed meanwhile', async () => {
    const card = await start('no crank');
    await bot.run('fault close', { was: 'isolator was off' }, { as: 'Bram' });
    const late = await pressLabel(bot, card, 'Nothing at all');
    expect(refusalIn(late).message).toContain('Bram has closed that search');
  });
});

describe('/fault found', () => {
  it('takes a measured value, keeps it as the note, and goes on', async () => {
    await pressLabel(bot, await start('no crank'), 'A click, or clicking');
    const next = await bot.run('fault found', { result: '12.6 V', note: 'after a night' });
    expect(record().walks.find(1)?.findings.at(-1)).toMatchObject({
      step: 'battery-rest',
      outcome: 'good',
      note: '12.6 V; after a night',
    });
    expect(cardIn(next).inPlace).toBeUndefined();
  });

  it.each([
    ['11,9', 'low'],
    ['low', 'low'],
    ['Below 12.2 V', 'low'],
    ['12.2', 'good'],
    ['or more', 'good'],
  ])('reads “%s” as %s', async (result, outcome) => {
    await pressLabel(bot, await start('no crank'), 'A click, or clicking');
    await bot.run('fault found', { result });
    expect(record().walks.find(1)?.findings.at(-1)?.outcome).toBe(outcome);
  });

  it('asks when the words fit none, and finishes with the one pressed', async () => {
    await start('no crank');
    const asked = await bot.run('fault found', { result: 'it went bang', note: 'left side' });
    expect(refusalIn(asked).code).toBe('which-one');
    await pressLabel(bot, asked, 'Nothing at all');
    expect(record().walks.find(1)?.findings).toMatchObject([{ outcome: 'nothing', note: 'left side' }]);
  });

  it('says so where nothing is being searched, or no test is asked for', async () => {
    expect(refusalIn(await bot.run('fault found', { result: 'low' })).message).toContain('/fault start');
    await pressLabel(bot, await start('no crank'), 'Starter spins, engine does not');
    expect(refusalIn(await bot.run('fault found', { result: 'low' })).code).toBe('not-now');
  });

  it('takes a note by a form as well', async () => {
    const form = formIn(await pressLabel(bot, await start('no crank'), 'With a note'));
    expect(form.fields.map(({ name }) => name)).toEqual(['outcome', 'note']);
    const filled = { outcome: 'nothing', note: 'dash went dark' };
    const next = await bot.press(writeActionRef(form.does), filled, { as: 'Cleo' });
    expect(cardIn(next).working?.[0]).toContain('Nothing at all (Cleo)');
    const soFar = cardIn(await pressLabel(bot, next, 'So far'));
    expect(soFar.items?.[0]?.note).toBe('dash went dark. Cleo, Mon 23 Nov 10:00.');
  });
});

describe('leaving and going on', () => {
  it('is left by one and taken up by another, who is told', async () => {
    const card = await pressLabel(bot, await start('no crank'), 'A click, or clicking');
    const left = cardIn(await pressLabel(bot, card, 'Leave it here'));
    expect(left.certainty).toContain('Ada left it here; anybody can go on');
    const listed = cardIn(await bot.run('fault list', {}, { as: 'Bram' }));
    expect(listed.items?.[0]).toMatchObject({
      text: 'No crank #1: Measure the battery at its posts, at rest',
    });
    expect(listed.items?.[0]?.note).toContain('Ada left it');
    const resumed = cardIn(await bot.run('fault resume', {}, { as: 'Bram' }));
    expect(resumed.data).toMatchObject({ state: 'open', test: 'battery-rest' });
    expect(record().walks.find(1)).toMatchObject({ state: 'open', leftBy: null });
  });

  it('a press on a card that was left takes the search up', async () => {
    const card = await start('no crank');
    await pressLabel(bot, card, 'Leave it here');
    await pressLabel(bot, card, 'Nothing at all', { as: 'Bram' });
    expect(record().walks.find(1)?.state).toBe('open');
    expect(refusalIn(await bot.run('fault resume', { search: '#7' })).code).toBe('not-found');
  });

  it('several go on side by side, and which one is asked', async () => {
    await start('no crank');
    await start('overheats');
    const asked = await bot.run('fault resume');
    expect(refusalIn(asked).code).toBe('which-one');
    const one = labelsIn(asked).find((label) => label.includes('Overheating')) ?? '';
    expect(cardIn(await pressLabel(bot, asked, one)).subject).toBe('Overheating #2');
    expect(cardIn(await bot.run('fault resume', { search: 'crank' })).subject).toBe('No crank #1');
    expect(cardIn(await bot.run('fault list')).result).toBe('2 searches are going on');
  });

  it('is closed in the crew’s own words, and stays on the list', async () => {
    await start('no crank');
    const closed = cardIn(await bot.run('fault close', { was: 'isolator was off' }, { as: 'Bram' }));
    expect(closed.result).toBe('isolator was off');
    const listed = cardIn(await bot.run('fault list'));
    expect(listed.result).toBe('No search is going on');
    expect(listed.items?.[0]?.text).toBe('No crank #1: isolator was off');
  });

  it('pages a long list instead of cutting it', async () => {
    const all = ['no crank', 'no spark', 'no rpm', 'smoke', 'boost', 'charging', 'wont rev', 'rough idle'];
    for (const symptom of all) await start(symptom);
    const first = await bot.run('fault list');
    expect(cardIn(first).items).toHaveLength(6);
    const second = cardIn(await pressLabel(bot, first, 'Next page'));
    expect(second.items).toHaveLength(2);
    expect(second.certainty).toBe('Shown: 7 to 8 of 8.');
  });
});

describe('taking back and correcting', () => {
  it('keeps what was noted first, and follows the corrected finding', async () => {
    const found = await pressAll(bot, await start('no crank'), 'A click, or clicking', 'Below 12.2 V');
    const soFar = await pressLabel(bot, found, 'So far');
    expect(cardIn(soFar).result).toBe('2 findings so far');
    const asked = await pressLabel(bot, soFar, 'Correct');
    expect(cardIn(asked).certainty).toContain('Ada noted “Below 12.2 V”');
    const corrected = await pressLabel(bot, asked, '12.2 V or more', { as: 'Cleo' });
    expect(data(corrected)).toMatchObject({ step: 'test' });
    expect(record().walks.find(1)?.findings[1]).toMatchObject({
      outcome: 'good',
      firstOutcome: 'low',
      byName: 'Cleo',
    });
    const after = cardIn(await pressLabel(bot, corrected, 'So far'));
    expect(after.items?.[0]?.note).toContain('First noted as “Below 12.2 V”');
  });

  it('takes the last finding back, again and again', async () => {
    const second = await pressAll(bot, await start('no crank'), 'A click, or clicking', '12.2 V or more');
    const once = await pressAll(bot, second, 'So far', 'Take back the last');
    expect(data(once)['test']).toBe('battery-rest');
    const twice = await pressAll(bot, once, 'So far', 'Take back the last');
    expect(data(twice)).toMatchObject({ test: 'listen', findings: [] });
  });

  it('takes back that the search began anew', async () => {
    const anew = await pressAll(
      bot,
      await start('no crank'),
      'Starter spins, engine does not',
      'It was not that',
    );
    expect(data(anew)['ruledOut']).toEqual(['starter-mesh']);
    const back = await pressAll(bot, anew, 'So far', 'Take back the last');
    expect(data(back)).toMatchObject({ step: 'found', cause: 'starter-mesh' });
  });

  it('is undone by the button of the card that closed it', async () => {
    const found = await pressLabel(bot, await start('no crank'), 'Starter spins, engine does not');
    await pressAll(bot, found, 'That was it', 'Undo');
    expect(record().walks.find(1)).toMatchObject({ state: 'open', cause: null });
  });

  it('is undone like anything else', async () => {
    await pressLabel(bot, await start('no crank'), 'Starter spins, engine does not', { as: 'Bram' });
    await bot.run('undo', {}, { as: 'Bram' });
    expect(record().walks.find(1)?.findings).toEqual([]);
    const closed = await bot.run('fault close', { was: 'nothing' });
    expect(closed.ok).toBe(true);
    await bot.run('undo');
    expect(record().walks.find(1)).toMatchObject({ state: 'open', endedBy: null });
    expect(bot.teams.at(TEAM).ledger.audit()).toEqual([]);
  });
});

describe('what the build knows', () => {
  const put = (what: string) => bot.run('temporary put', { what });

  it('puts what was left off for now first, and closes both when that was it', async () => {
    await put('crank sensor unplugged');
    const first = await start('no rpm');
    expect(cardIn(first).result).toBe('First: is “crank sensor unplugged” still so?');
    const done = await pressLabel(bot, first, 'Undone, and it is gone', { as: 'Bram' });
    expect(data(done)).toMatchObject({
      state: 'finished',
      cause: 'unplugged',
      note: 'still in place: crank sensor unplugged',
    });
    expect(record().measures.find(1)).toMatchObject({ undoneByName: 'Bram', undoneOn: '2026-11-23' });
  });

  it('goes on without it when it changed nothing, or has to stay', async () => {
    await put('coils unplugged');
    await put('coil fuse pulled');
    const first = await start('no spark');
    const second = await pressLabel(bot, first, 'It has to stay for now');
    expect(data(second)).toMatchObject({ step: 'measure' });
    expect(
      record()
        .measures.ofBuild(1)
        .filter(({ undoneOn }) => undoneOn !== null),
    ).toEqual([]);
    const third = await pressLabel(bot, second, 'Undone, no change');
    expect(data(third)).toMatchObject({ step: 'test' });
    expect(
      record()
        .measures.ofBuild(1)
        .filter(({ undoneOn }) => undoneOn !== null),
    ).toHaveLength(1);
  });

  it('leaves alone what has nothing to do with the symptom', async () => {
    await put('coils unplugged');
    expect(data(await start('charging'))['step']).toBe('test');
  });

  it('raises what was fitted or came lately, and says so', async () => {
    const plainly = data(await start('no crank'))['left'];
    await bot.run('fault close', { was: 'begun for a look' });
    await bot.run('order place', { what: 'starter', supplier: 'Norvale', due: 'tomorrow' });
    await bot.run('order arrived', { order: 'starter' });
    const card = cardIn(await start('no crank'));
    expect(JSON.stringify(card.data['left'])).not.toBe(JSON.stringify(plainly));
    await bot.run('part fitted', { part: 'starter' });
    const fitted = await pressLabel(bot, await bot.run('fault resume'), 'Nothing at all');
    expect(cardIn(fitted).working?.join('\n')).toContain('starter fitted today');
  });

  it('raises a flat battery by a reading under the limit', async () => {
    const { ledger } = bot.teams.at(TEAM);
    await start('charging');
    ledger.change({ interactionId: 'r1', personId: 'ada', personName: 'Ada', atMs: MONDAY }, () => {
      record().readings.log({
        buildId: 1,
        kind: 'battery voltage',
        value: 11.7,
        unit: 'V',
        shownIn: 'V',
        typed: 'battery 11.7 V at rest',
        conditions: { states: ['at rest'] },
        takenAtMs: MONDAY,
        byName: 'Ada',
        note: null,
        link: null,
        firstValue: null,
        setId: null,
      });
      return { value: null, said: 'a reading' };
    });
    const card = cardIn(await start('no crank'));
    expect(card.certainty).toContain('likeliest first: battery discharged');
    expect(card.working).toContain('From the record: “battery 11.7 V at rest” was read today.');
  });

  it('names the jobs that a cause touches', async () => {
    await bot.run('job add', { name: 'fit starter' });
    const found = await pressLabel(bot, await start('no crank'), 'Starter spins, engine does not');
    expect(cardIn(found).facts).toContainEqual(['Job', '#1 fit starter']);
  });
});
