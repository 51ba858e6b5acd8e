import { describe, expect, it } from 'vitest';
import { writeActionRef } from '../../../src/bot/action-ref.ts';
import { type CrewBot, cardIn, openCrewBot, refusalIn, TEAM } from '../../support/bot.ts';
import { pressed } from '../../support/pressed.ts';

const add = (crew: CrewBot, name: string, options = {}) => crew.run('job add', { name, ...options });
const texts = async (crew: CrewBot, options = {}) =>
  cardIn(await crew.run('now', options)).items?.map(({ text }) => text);

describe('/now', () => {
  it('says that there is nothing, and where jobs come from', async () => {
    const crew = await openCrewBot();
    const card = cardIn(await crew.run('now'));
    const offered = cardIn(await pressed(crew, card, 'Jobs of assembly to choose from'));
    expect(offered.result).toMatch(/^\d+ jobs to choose from$/);
    expect(card).toMatchObject({
      result: 'No job is written down yet',
      certainty: '/job add writes one down, /job from-set offers a starting set.',
    });
    expect(crew.teams.at(TEAM).ledger.recent(1)).toEqual([]);
  });

  it('puts what frees most other work first, then the earlier stage, then the shorter', async () => {
    const crew = await openCrewBot();
    await add(crew, 'short', { stage: 'fluids', minutes: '30 min' });
    await add(crew, 'long', { stage: 'fluids', minutes: '3 h' });
    await add(crew, 'early', { stage: 'assembly', minutes: '5 h' });
    await add(crew, 'root', { stage: 'mapping', minutes: '6 h' });
    await add(crew, 'leaf', { needs: 'root' });
    await add(crew, 'leaf of it', { needs: 'leaf' });
    expect(await texts(crew)).toEqual([
      '#4 root',
      '#3 early',
      '#1 short',
      '#2 long',
      '#5 leaf',
      '#6 leaf of it',
    ]);
    const { items, certainty } = cardIn(await crew.run('now'));
    expect(items?.[0]?.note).toContain('frees 2 more');
    expect(items?.at(-1)?.note).toBe('Waits for #5 leaf.');
    expect(certainty).toBe('2 wait for something');
  });

  it('says for what a blocked job waits and until when, also through another job', async () => {
    const crew = await openCrewBot();
    await crew.run('order place', { what: 'gasket', supplier: 'Norvale', due: '2026-12-04' });
    await add(crew, 'fit it', { needs: 'part:gasket' });
    await add(crew, 'fill it', { needs: 'fit it' });
    const { items, data } = cardIn(await crew.run('now'));
    expect(items?.map(({ note }) => note)).toEqual([
      'Waits for gasket (expected Fri 4 Dec). Parts expected by Fri 4 Dec.',
      'Waits for #1 fit it. Parts expected by Fri 4 Dec.',
    ]);
    expect(data['blocked']).toMatchObject([{ partsOn: '2026-12-04' }, { partsOn: '2026-12-04' }]);
  });

  it('leaves to the end what takes more than is at hand', async () => {
    const crew = await openCrewBot();
    await add(crew, 'short', { minutes: '30 min', tools: 'spanner' });
    await add(crew, 'long', { minutes: '3 h' });
    await add(crew, 'pair', { minutes: '20 min', people: 2, tools: 'hoist, spanner' });
    await add(crew, 'unknown');
    const ready = async (options: Record<string, string | number>) =>
      (cardIn(await crew.run('now', options)).data['ready'] as readonly { name: string }[]).map(
        ({ name }) => name,
      );
    expect(await ready({ minutes: '1 h' })).toEqual(['pair', 'short', 'unknown']);
    expect(await ready({ people: 1 })).toEqual(['short', 'long', 'unknown']);
    expect(await ready({ tools: 'Spanner' })).toEqual(['short', 'long', 'unknown']);
    expect(await ready({ tools: 'hoist, spanner', minutes: '1 h', people: 2 })).toEqual([
      'pair',
      'short',
      'unknown',
    ]);
    const { items, result, certainty } = cardIn(await crew.run('now', { minutes: '25 min', people: 1 }));
    expect(result).toBe('1 job can be done now');
    expect(certainty).toBe('3 take more than is at hand');
    expect(items?.[1]?.note).toContain('More than is at hand: ');
  });

  it('pages a long list in place, filters kept, and gets by without buttons where they are too long', async () => {
    const crew = await openCrewBot();
    for (let index = 1; index <= 9; index += 1) await add(crew, `job ${index}`, { minutes: '30 min' });
    const first = cardIn(await crew.run('now', { minutes: '1 h' }));
    expect(first.items).toHaveLength(7);
    expect(first.certainty).toBe('1 to 7 of 9');
    const [next] = first.buttons ?? [];
    const second = cardIn(
      await crew.press(writeActionRef(next?.does ?? { command: '', action: '', args: {} })),
    );
    expect(second.items?.map(({ text }) => text)).toEqual(['#8 job 8', '#9 job 9']);
    expect(second.inPlace).toBe(true);
    const crowded = cardIn(await crew.run('now', { tools: 'a very long list of tools, '.repeat(6) }));
    expect(crowded.buttons).toEqual([]);
    expect(crowded.certainty).toContain('type page:2');
    expect(cardIn(await crew.run('now', { page: 2 })).items).toHaveLength(2);
  });

  it.each([
    [{ minutes: 'soon' }, 'is no time'],
    [{ people: 0 }, 'people: must be at least 1'],
    [{ page: 0 }, 'page: must be at least 1'],
    [{ tools: 'x'.repeat(201) }, 'tools: must be at most 200 characters'],
  ])('refuses %j', async (options, said) => {
    const crew = await openCrewBot();
    expect(refusalIn(await crew.run('now', options)).message).toContain(said);
    expect(crew.reported).toEqual([]);
  });
});
