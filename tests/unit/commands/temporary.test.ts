import { describe, expect, it } from 'vitest';
import { type CrewBot, cardIn, openCrewBot, refusalIn, TEAM } from '../../support/bot.ts';
import { pressed } from '../../support/pressed.ts';

const put = (bot: CrewBot, what: string, options = {}) => bot.run('temporary put', { what, ...options });

const changes = (bot: CrewBot) => bot.teams.at(TEAM).ledger.recent(50).length;

describe('/temporary put', () => {
  it('reads what undoes it and the stage it must not outlive, and says both back', async () => {
    const bot = await openCrewBot();
    await bot.run('part add', { name: 'turbo drain hose' });
    const card = cardIn(
      await put(bot, 'blanked the turbo drain until the hose comes, undo before first start'),
    );
    expect(card.result).toBe('blanked the turbo drain');
    expect(card.certainty).toBe('Undo when turbo drain hose is here, and before First start.');
    expect(card.data).toMatchObject({ part: 1, job: null, undoneBefore: 'first-start', requiredAt: null });
  });

  it('ties it to a job that is still open, not to one that is done', async () => {
    const bot = await openCrewBot();
    await bot.run('job add', { name: 'weld the sump' });
    const { data } = cardIn(await put(bot, 'port plugged until "weld the sump" is done'));
    expect(data).toMatchObject({ job: 1, part: null, until: 'weld the sump' });
    await bot.run('job done', { job: 'weld the sump' });
    expect(cardIn(await put(bot, 'tray off until weld the sump is done')).data['job']).toBeNull();
  });

  it('asks when several things could be meant, keeps the request, and finishes it with a tap', async () => {
    const bot = await openCrewBot();
    await bot.run('part add', { name: 'drain hose' });
    await bot.run('part add', { name: 'feed hose' });
    const asked = await put(bot, 'blanked the drain until the hose comes');
    expect(refusalIn(asked)).toMatchObject({ code: 'which-one' });
    const labels = cardIn(asked).buttons?.map(({ label }) => label);
    expect(labels).toEqual(['Part: drain hose', 'Part: feed hose', 'None of them: hose']);
    const chosen = cardIn(await pressed(bot, cardIn(asked), 'Part: feed hose'));
    expect(chosen.data).toMatchObject({ part: 2, until: 'feed hose' });
    const words = await pressed(
      bot,
      cardIn(await put(bot, 'capped it until the hose comes')),
      'None of them: hose',
    );
    expect(cardIn(words).data).toMatchObject({ part: null, until: 'hose' });
  });

  it('asks which stage is meant when the one named is none', async () => {
    const bot = await openCrewBot();
    const asked = await put(bot, 'tie on the spring, remove before the weekend');
    expect(refusalIn(asked).message).toBe('“weekend” is no stage of this build. Which stage?');
    expect(cardIn(await pressed(bot, cardIn(asked), 'No stage')).data['undoneBefore']).toBeNull();
  });

  it('counts as what a stage requires, and must be undone before the next', async () => {
    const bot = await openCrewBot();
    const { data, certainty } = cardIn(await put(bot, 'no spark and no fuel while cranking'));
    expect(data).toMatchObject({
      answers: ['no spark', 'no fuel'],
      requiredAt: 'oil-pressure',
      undoneBefore: 'fuel-pressure',
    });
    expect(certainty).toBe('Undo before Fuel pressure and leaks. Required at Oil pressure by cranking.');
  });

  it('does not count what only sounds like it', async () => {
    const bot = await openCrewBot();
    const { data } = cardIn(await put(bot, 'blanked the fuel return until the fitting comes'));
    expect(data).toMatchObject({ answers: [], requiredAt: null });
  });

  it('says when nothing was said of what undoes it, and offers stages with a tap', async () => {
    const bot = await openCrewBot();
    const card = cardIn(await put(bot, 'undertray left off'));
    expect(card.certainty).toContain('Nobody said what undoes it');
    const tied = cardIn(await pressed(bot, card, 'Before Road fuelling'));
    expect(tied.data['undoneBefore']).toBe('road-fuelling');
  });

  it.each([
    [{ what: 'until the hose comes' }, 'say what was done'],
    [{ what: '   ' }, 'nothing was typed'],
    [{ what: 'x'.repeat(201) }, 'at most 200'],
    [{ what: 'fan off', undo_before: 'oil pressure', required_for: 'first start' }, 'cannot be required'],
    [{ what: 'fan off', undo_before: 'Sunday' }, 'is no stage'],
  ])('writes nothing down for %j', async (options, said) => {
    const bot = await openCrewBot();
    expect(refusalIn(await bot.run('temporary put', options)).message).toContain(said);
    expect(changes(bot)).toBe(0);
    expect(bot.reported).toEqual([]);
  });

  it('writes the same thing down once', async () => {
    const bot = await openCrewBot();
    await put(bot, 'fan off');
    expect(refusalIn(await put(bot, 'Fan  off'))).toMatchObject({ code: 'already-done' });
  });
});

describe('/temporary undone', () => {
  it('notes who undid it and when, once, and can be put in again', async () => {
    const bot = await openCrewBot();
    await put(bot, 'fan off until the relay comes');
    const card = cardIn(
      await bot.run('temporary undone', { measure: 'fan', note: 'relay 3' }, { as: 'Bram' }),
    );
    expect(card.certainty).toBe('Undone Mon 23 Nov by Bram');
    expect(card.data).toMatchObject({ undoneOn: '2026-11-23', undoneBy: 'Bram', note: 'relay 3' });
    expect(refusalIn(await bot.run('temporary undone', { measure: '#1' })).code).toBe('already-done');
    const again = cardIn(await pressed(bot, card, 'Put in place again'));
    expect(again.data).toMatchObject({ measure: 2, what: 'fan off', undoneOn: null, putBy: 'Ada' });
  });

  it('is taken back by undo', async () => {
    const bot = await openCrewBot();
    await put(bot, 'fan off');
    const card = cardIn(await bot.run('temporary undone', { measure: 'fan' }));
    await pressed(bot, card, 'Undo');
    expect(cardIn(await bot.run('temporary list')).data['inPlace']).toBe(1);
  });

  it('asks when words fit several, and says what is in place when they fit none', async () => {
    const bot = await openCrewBot();
    expect(refusalIn(await bot.run('temporary undone', { measure: 'fan' })).message).toContain(
      'Nothing temporary is in place',
    );
    await put(bot, 'fan off');
    await put(bot, 'fan cable taped up');
    expect(refusalIn(await bot.run('temporary undone', { measure: 'fan' })).code).toBe('which-one');
    expect(refusalIn(await bot.run('temporary undone', { measure: 'radio' })).message).toContain(
      'In place: fan off, fan cable taped up',
    );
  });

  it('is not done to another build’s', async () => {
    const bot = await openCrewBot();
    await put(bot, 'fan off');
    await bot.run('temporary put', { what: 'cap off' }, { channel: '601' });
    const forged = await bot.press('temporary/undone?measure=1', {}, { channel: '601' });
    expect(refusalIn(forged).message).toContain('another build');
    expect(refusalIn(await bot.press('temporary/undone?measure=77')).code).toBe('stale-message');
  });
});

describe('/temporary change', () => {
  it('corrects what is given, clears with none, and leaves the rest', async () => {
    const bot = await openCrewBot();
    await bot.run('part add', { name: 'relay' });
    await put(bot, 'fan off until the relay comes, undo before first start', { note: 'blue plug' });
    const changed = cardIn(
      await bot.run('temporary change', { measure: 'fan', until: 'none', undo_before: 'mapping' }),
    );
    expect(changed.data).toMatchObject({
      until: null,
      part: null,
      undoneBefore: 'mapping',
      note: 'blue plug',
      what: 'fan off',
    });
    const cleared = cardIn(
      await bot.run('temporary change', { measure: 'fan', undo_before: 'none', note: 'none' }),
    );
    expect(cleared.data).toMatchObject({ undoneBefore: null, note: null });
  });

  it('counts as what another stage requires once that stage is named, and no longer when it is cleared', async () => {
    const bot = await openCrewBot();
    await put(bot, 'coil fuse out');
    const tied = cardIn(await bot.run('temporary change', { measure: 'coil', required_for: 'cranking' }));
    expect(tied.data).toMatchObject({ requiredAt: 'oil-pressure', answers: ['no spark'] });
    const loose = cardIn(await bot.run('temporary change', { measure: 'coil', required_for: 'none' }));
    expect(loose.data).toMatchObject({ requiredAt: null, answers: [] });
  });

  it('wants something to change', async () => {
    const bot = await openCrewBot();
    await put(bot, 'fan off');
    expect(refusalIn(await bot.run('temporary change', { measure: 'fan' })).message).toContain(
      'Nothing to change',
    );
  });
});

describe('/temporary list', () => {
  it('says so when nothing is in place, pages a long list, and shows what was undone', async () => {
    const bot = await openCrewBot();
    expect(cardIn(await bot.run('temporary list')).result).toBe('Nothing temporary is in place');
    for (const name of 'abcdefgh') await put(bot, `bung ${name}`);
    await bot.run('temporary undone', { measure: 'bung c' });
    const first = cardIn(await bot.run('temporary list'));
    expect(first.result).toBe('7 in place');
    expect(first.items).toHaveLength(6);
    const second = cardIn(await pressed(bot, first, 'Next page'));
    expect(second.items?.map(({ text }) => text)).toEqual(['#8 bung h']);
    const all = cardIn(await pressed(bot, first, 'And the 1 undone'));
    expect(all.data['measures']).toHaveLength(8);
    expect(cardIn(await bot.run('temporary list', { undone: true })).certainty).toBe('1 to 6 of 8');
  });
});
