import { describe, expect, it } from 'vitest';
import { writeActionRef } from '../../../src/bot/action-ref.ts';
import { instantOf } from '../../../src/core/time.ts';
import { type CrewBot, cardIn, openCrewBot, refusalIn, TEAM } from '../../support/bot.ts';

const add = (crew: CrewBot, name: string, options = {}) => crew.run('job add', { name, ...options });
const recent = (crew: CrewBot) => crew.teams.at(TEAM).ledger.recent(1);

/** One job of exactly ten hours, evenings of two and a half: four of them. */
async function oneJob(options = {}): Promise<CrewBot> {
  const crew = await openCrewBot();
  await add(crew, 'build it', { stage: 'assembly', minutes: '10-10 h, likely 10 h', ...options });
  await crew.run('when evenings', { hours: 'Tue Thu 2.5 h, Sat 2.5 h', people: 1 });
  return crew;
}

describe('/when date', () => {
  it('says the day by hand where nothing is left to chance, with a picture headed by it', async () => {
    const crew = await oneJob();
    // from Monday 23 November: Tuesday, Thursday, Saturday and Tuesday again
    const card = cardIn(await crew.run('when date'));
    expect(card.result).toBe('First start: Tue 1 Dec');
    expect(card.certainty).toBe('The same day in eight runs of ten.');
    expect(card.data).toMatchObject({
      stage: 'first-start',
      tenthOn: '2026-12-01',
      medianOn: '2026-12-01',
      ninetiethOn: '2026-12-01',
      runs: 2000,
      jobs: [{ job: 1, share: 1 }],
    });
    expect(card.pictures?.map(({ name }) => name)).toEqual(['timeline.png']);
    expect(card.pictures?.[0]?.alt).toContain('First start: Tue 1 Dec');
    expect(recent(crew)[0]?.said).toContain('we work');
  });

  it('waits for a part, says that it drives the day, and what a courier would gain', async () => {
    const crew = await oneJob();
    await crew.run('order place', { what: 'block', supplier: 'Norvale', due: '2026-12-14' });
    await crew.run('job needs', { job: '1', add: 'part:block' });
    const { data, items } = cardIn(await crew.run('when date'));
    const late = data['medianOn'] as string;
    // four evenings from Tuesday 15 December on at the earliest
    expect(late >= '2026-12-22').toBe(true);
    expect(data['awaited']).toMatchObject([{ name: 'block', order: 1, share: 1 }]);
    expect(data['gains']).toMatchObject([{ name: 'block', how: 'by courier', hereOn: '2026-11-25' }]);
    expect(items?.[0]?.text).toMatch(/^block by courier: [\d.]+ days sooner$/);
    // by courier it is here on Wednesday: Thursday, Saturday, Tuesday, Thursday
    const [gain] = data['gains'] as readonly { readonly likelyDays: number }[];
    const days = Temporal.PlainDate.from('2026-12-03').until(late).days;
    expect(gain?.likelyDays).toBe(days);
  });

  it('says what somebody else would gain who has a time from order to door', async () => {
    const crew = await oneJob();
    await crew.run('order place', { what: 'block', supplier: 'Norvale', due: '2026-12-21' });
    await crew.run('order place', { what: 'pipe', supplier: 'Castwell', due: '2026-12-21' });
    const { ledger, record } = crew.teams.at(TEAM);
    const other = record.suppliers.all().find(({ name }) => name === 'Castwell');
    ledger.change({ interactionId: 'x', personId: 'ada', personName: 'Ada', atMs: 0 }, () => {
      if (other) record.suppliers.correct({ ...other, leadDays: 5 });
      return { value: null, said: 'five days' };
    });
    await crew.run('job needs', { job: '1', add: 'part:block' });
    const { data } = cardIn(await crew.run('when date'));
    expect(data['gains']).toMatchObject([
      { how: 'by courier' },
      { how: 'from Castwell', hereOn: '2026-11-30' },
    ]);
  });

  it('says how much later it would be, without a sign', async () => {
    const crew = await oneJob();
    await crew.run('supplier set', { supplier: 'Castwell', lead: 30 });
    await crew.run('job needs', { job: '1', add: 'part:+block' });
    const { items } = cardIn(await crew.run('when date', { part: 'block', supplier: 'Castwell' }));
    const swap = items?.find(({ text }) => text.startsWith('block from Castwell'));
    expect(swap?.text).toMatch(/: [\d.]+ days later$/);
    expect(swap?.note).toMatch(/; \d+ to \d+ days later in eight runs of ten\.$/);
  });

  it('answers what one part would gain that is asked about, even nothing, and from whom', async () => {
    const crew = await oneJob();
    await crew.run('order place', { what: 'block', supplier: 'Norvale', due: '2026-12-14' });
    await crew.run('order place', { what: 'plug', supplier: 'Castwell', due: '2026-11-26' });
    await crew.run('job needs', { job: '1', add: 'part:block, part:plug' });
    await crew.run('supplier set', { supplier: 'Castwell', lead: 3 });
    const none = cardIn(await crew.run('when date', { part: 'plug' }));
    expect(none.data['gains']).toMatchObject([{ name: 'plug', meanDays: 0 }]);
    expect(none.items?.[0]?.text).toBe('plug by courier: no day sooner');
    const block = cardIn(await crew.run('when date', { part: 'block', supplier: 'castwell' }));
    expect(block.data['gains']).toMatchObject([{ how: 'by courier' }, { how: 'from Castwell' }]);
  });

  it.each([
    [{ part: 'zzzzz' }, 'No part here is called "zzzzz"'],
    [{ part: 'plug' }, 'No job of this stage waits for plug'],
    [{ supplier: 'Norvale' }, 'part: is missing'],
    [{ part: 'block', supplier: 'Norvale' }, 'Nobody has said how long Norvale takes'],
    [{ part: 'block', supplier: 'Xylophon' }, 'There is no supplier "Xylophon"'],
  ])('refuses to say what %j would gain', async (options, said) => {
    const crew = await oneJob();
    await crew.run('order place', { what: 'block', supplier: 'Norvale', due: '2026-12-14' });
    await crew.run('order place', { what: 'plug', supplier: 'Norvale', due: '2026-12-14' });
    await crew.run('job needs', { job: '1', add: 'part:block' });
    expect(refusalIn(await crew.run('when date', options)).message).toContain(said);
  });

  it('counts a fluid that is short, a part nobody has ordered and a job of unknown length, and says so', async () => {
    const crew = await oneJob();
    await add(crew, 'fill it', { stage: 'fluids', needs: 'part:+plug, part:+ring' });
    const { smallPrint, data } = cardIn(await crew.run('when date'));
    const words = smallPrint?.join(' ') ?? '';
    expect(words).toContain('1 job whose length nobody has said: taken as');
    expect(words).toContain('What is not ordered is taken as here in 3 to 21 days');
    expect(data['gains']).toMatchObject([{ name: 'all 2 not ordered' }, {}, {}]);
  });

  it('answers the same however often it is asked, and about any stage', async () => {
    const crew = await openCrewBot();
    await crew.press('job/take?set=assembly&key=*');
    await crew.press('job/take?set=fluids&key=*');
    const first = cardIn(await crew.run('when date'));
    expect(cardIn(await crew.run('when date')).data).toEqual(first.data);
    const assembly = cardIn(await crew.run('when date', { stage: 'assembly' }));
    expect((assembly.data['medianOn'] as string) <= (first.data['medianOn'] as string)).toBe(true);
    const again = cardIn(
      await crew.press(writeActionRef({ command: 'when', action: 'date', args: { stage: 'fluids' } })),
    );
    expect(again.subject).toBe('When');
  });

  it('does not count this evening once it has come', async () => {
    const crew = await oneJob({ minutes: '2-2 h, likely 2 h' });
    crew.clock.set(instantOf('2026-11-24', '17:30', 'Europe/London'));
    expect(cardIn(await crew.run('when date')).data['medianOn']).toBe('2026-11-24');
    crew.clock.set(instantOf('2026-11-24', '18:30', 'Europe/London'));
    expect(cardIn(await crew.run('when date')).data['medianOn']).toBe('2026-11-26');
  });

  it('says that nothing is open where nothing is', async () => {
    const crew = await openCrewBot();
    await crew.run('order place', { what: 'block', supplier: 'Norvale', due: '2026-12-14' });
    const card = cardIn(await crew.run('when date'));
    expect(card.result).toBe('No job is open before First start');
    expect(card.buttons?.map(({ label }) => label)).toEqual(['Starting set']);
  });

  it.each([
    ['when date', { stage: 'lunch' }, 'No stage is called "lunch"'],
    ['when order-by', { stage: 'lunch' }, 'No stage is called "lunch"'],
    ['when evenings', { hours: 'whenever' }, 'no day with a time'],
    ['when evenings', { hours: 'Tue none' }, 'somebody has to work'],
    ['when evenings', { people: 0 }, 'people: must be at least 1'],
    ['when away', { to: '24 dec' }, 'from: is missing'],
    ['when away', { from: '24 dec', to: '20 dec' }, 'is before'],
    ['when away', { from: 'whenever' }, ''],
  ])('%s %j is refused: %s', async (line, options, said) => {
    const crew = await openCrewBot();
    await add(crew, 'one');
    const before = recent(crew);
    expect(refusalIn(await crew.run(line, options)).message).toContain(said);
    expect(recent(crew)).toEqual(before);
    expect(crew.reported).toEqual([]);
  });

  it('says what to do first where nothing is recorded', async () => {
    const crew = await openCrewBot();
    expect(refusalIn(await crew.run('when date')).message).toContain('/job add writes the first job down');
  });
});

describe('/when evenings and away', () => {
  it('shows what is taken until somebody says, then what was said', async () => {
    const crew = await openCrewBot();
    expect(cardIn(await crew.run('when evenings'))).toMatchObject({
      result: 'Tue 2.5 h, Thu 2.5 h, Sat 6 h',
      certainty: '2 people at a time; taken until you say when you work.',
    });
    const said = cardIn(await crew.run('when evenings', { hours: 'weekdays 2 h' }));
    expect(said.certainty).toBe('2 people at a time.');
    await crew.run('when evenings', { people: 4 });
    expect(cardIn(await crew.run('when evenings')).data).toMatchObject({
      minutesMin: [120, 120, 120, 120, 120, 0, 0],
      people: 4,
    });
  });

  it('leaves days away out, and takes them back by a button', async () => {
    const crew = await oneJob();
    const noted = cardIn(await crew.run('when away', { from: '24 nov', to: '26 nov' }));
    expect(noted.result).toBe('Tue 24 Nov to Thu 26 Nov');
    // Saturday, Tuesday, Thursday, Saturday
    expect(cardIn(await crew.run('when date')).data['medianOn']).toBe('2026-12-05');
    const [back] = cardIn(await crew.run('when away')).items?.[0]?.buttons ?? [];
    const ref = writeActionRef(back?.does ?? { command: '', action: '', args: {} });
    await crew.press(ref);
    expect(cardIn(await crew.run('when date')).data['medianOn']).toBe('2026-12-01');
    expect(refusalIn(await crew.press(ref)).code).toBe('stale-message');
    expect(cardIn(await crew.run('when away')).result).toBe('No days away are noted');
  });
});

describe('/when order-by', () => {
  it('names what is not ordered, when its first job needs it, and by when to order it', async () => {
    const crew = await oneJob();
    await add(crew, 'close it', {
      stage: 'assembly',
      needs: 'build it, part:+gasket',
      minutes: '1-1 h, likely 1 h',
    });
    const plain = cardIn(await crew.run('when order-by'));
    expect(plain.items).toMatchObject([{ text: 'gasket', note: 'Needed Thu 3 Dec.' }]);
    expect(plain.certainty).toBe('No supplier has a time from order to door yet.');
    await crew.run('order place', { what: 'pipe', supplier: 'Castwell', due: '2026-12-21' });
    const { ledger, record } = crew.teams.at(TEAM);
    ledger.change({ interactionId: 'x', personId: 'ada', personName: 'Ada', atMs: 0 }, () => {
      for (const one of record.suppliers.all()) record.suppliers.correct({ ...one, leadDays: 3 });
      return { value: null, said: 'three days' };
    });
    const { data, items } = cardIn(await crew.run('when order-by'));
    expect(data['parts']).toMatchObject([
      { name: 'gasket', neededOn: '2026-12-03', latestOrderOn: '2026-11-30', supplier: 'Castwell' },
    ]);
    expect(items?.[0]?.note).toContain('Order by Mon 30 Nov');
  });

  it('says that nothing is missing', async () => {
    const crew = await oneJob();
    expect(cardIn(await crew.run('when order-by')).result).toBe(
      'Everything First start needs is here or on its way',
    );
  });

  it('pages', async () => {
    const crew = await openCrewBot();
    await crew.press('job/take?set=assembly&key=*');
    const card = cardIn(await crew.run('when order-by'));
    expect(card.items).toHaveLength(10);
    const next = card.buttons?.find(({ label }) => label === 'Next page');
    const second = cardIn(
      await crew.press(writeActionRef(next?.does ?? { command: '', action: '', args: {} })),
    );
    expect(second.certainty).toContain('11 to 20');
    expect(second.inPlace).toBe(true);
  });
});
