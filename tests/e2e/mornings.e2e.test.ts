import { describe, expect, it } from 'vitest';
import { type Crew, crewAtWork, shownIn } from '../support/crew.ts';

const place = (what: string, due: string): string =>
  `/order place what:"${what}" supplier:"Norvale Gaskets" due:"${due}"`;

/** A gasket that has been late since the middle of November, and no look at it yet. */
async function longLate(options: Parameters<typeof crewAtWork>[0] = {}): Promise<Crew> {
  const crew = await crewAtWork({ at: '2026-11-09T09:00', ...options });
  await crew.type(place('head gasket', '11 Nov'));
  return crew;
}

const lastMorning = (crew: Crew): string => crew.mornings().map(shownIn).at(-1) ?? '';

/** Whether anything was posted when the reminders looked at this wall time. */
async function postsAt(crew: Crew, wall: string, zone?: string): Promise<boolean> {
  crew.at(wall, zone);
  return (await crew.tick()).length > 0;
}

describe('the morning message of a British crew', () => {
  it.each([
    ['2026-12-16T00:00', 'at midnight'],
    ['2026-12-16T08:29', 'before the morning time'],
    ['2026-12-16T20:00', 'in the evening'],
    ['2026-12-16T23:59', 'at night'],
    ['2026-12-19T09:00', 'on a Saturday'],
    ['2026-12-20T09:00', 'on a Sunday'],
    ['2026-12-25T09:00', 'on Christmas Day'],
    ['2026-12-26T09:00', 'on the Saturday after'],
    ['2026-12-27T09:00', 'on the Sunday after'],
    [
      '2026-12-28T09:00',
      'on the Monday that stands in for Boxing Day (GOV.UK bank holidays, England and Wales)',
    ],
  ])('does not come at %s, %s', async (wall) => {
    await using crew = await longLate();
    expect(await postsAt(crew, wall)).toBe(false);
    expect(crew.mornings()).toEqual([]);
  });

  it.each([
    ['2026-12-16T08:30', 'at the morning time'],
    ['2026-12-16T19:59', 'late on the day, when the machine was off till then'],
    ['2026-12-24T08:30', 'on Christmas Eve, a working day'],
    ['2026-12-29T08:30', 'on the first working day after Christmas'],
  ])('comes at %s, %s', async (wall) => {
    await using crew = await longLate();
    expect(await postsAt(crew, wall)).toBe(true);
  });

  it('comes at the time the crew has set', async () => {
    await using crew = await longLate();
    await crew.type('/team morning:10.15');
    expect(await postsAt(crew, '2026-12-16T10:14')).toBe(false);
    expect(await postsAt(crew, '2026-12-16T10:15')).toBe(true);
  });

  it('comes once after several mornings on which the machine was off, as of that day', async () => {
    await using crew = await longLate();
    expect(await postsAt(crew, '2026-11-12T08:30')).toBe(true);
    expect(await postsAt(crew, '2026-11-19T11:07')).toBe(true);
    expect(crew.mornings()).toHaveLength(2);
    expect(lastMorning(crew)).toContain('late by 6 working days');
    expect(await postsAt(crew, '2026-11-19T11:08')).toBe(false);
  });

  it('counts the holidays out of the working days it says', async () => {
    await using crew = await crewAtWork({ at: '2026-12-21T09:00' });
    await crew.type(place('head gasket', '24 Dec'));
    expect(await postsAt(crew, '2026-12-29T08:30')).toBe(true);
    expect(lastMorning(crew)).toContain('late by 1 working day,');
  });

  it('is not posted twice when the clock goes back a day', async () => {
    await using crew = await longLate();
    expect(await postsAt(crew, '2026-12-15T08:30')).toBe(true);
    expect(await postsAt(crew, '2026-12-16T08:30')).toBe(true);
    expect(await postsAt(crew, '2026-12-15T09:00')).toBe(false);
    expect(await postsAt(crew, '2026-12-16T09:00')).toBe(false);
    expect(await postsAt(crew, '2026-12-17T08:30')).toBe(true);
    expect(crew.mornings()).toHaveLength(3);
  });

  it('comes in each channel for its own build', async () => {
    await using crew = await crewAtWork({ at: '2026-11-09T09:00', channels: ['coupe', 'saloon'] });
    const [coupe, saloon] = crew.channel.channels.map(({ id }) => id);
    await crew.type(place('head gasket', '11 Nov'), { channelId: coupe ?? '' });
    await crew.type(place('oil cooler', '12 Nov'), { channelId: saloon ?? '' });
    crew.at('2026-11-16T08:30');
    expect(await crew.tick()).toHaveLength(2);
    expect(await crew.tick()).toHaveLength(0);
    expect(crew.mornings(coupe).map(shownIn)).toMatchObject([expect.stringContaining('head gasket')]);
    expect(crew.mornings(saloon).map(shownIn)).toMatchObject([expect.stringContaining('oil cooler')]);
  });
});

describe('the morning message in another zone', () => {
  const NEW_YORK = 'America/New_York';

  it('follows the crew’s clock and holidays', async () => {
    await using crew = await longLate();
    await crew.type(`/team zone:${NEW_YORK} country:US`);
    expect(await postsAt(crew, '2026-11-25T08:29', NEW_YORK)).toBe(false);
    expect(await postsAt(crew, '2026-11-25T08:30', NEW_YORK)).toBe(true);
    // Thanksgiving is the fourth Thursday of November (5 U.S.C. 6103).
    expect(await postsAt(crew, '2026-11-26T09:00', NEW_YORK)).toBe(false);
    expect(await postsAt(crew, '2026-12-28T08:30', NEW_YORK)).toBe(true);
  });

  it.each([
    ['Europe/London', '2027-03-26', ['2027-03-30']],
    ['Europe/London', '2026-10-23', ['2026-10-26']],
    ['America/New_York', '2027-03-12', ['2027-03-15']],
    ['America/New_York', '2026-10-30', ['2026-11-02']],
  ])('keeps its wall time over the change of the clocks in %s after %s', async (zone, before, after) => {
    await using crew = await crewAtWork({ at: '2026-09-14T09:00' });
    await crew.type(`/team zone:${zone} country:${zone.startsWith('America') ? 'US' : 'GB/ENG'}`);
    await crew.type(place('head gasket', '21 Sep'));
    await postsAt(crew, `${before}T09:00`, zone);
    for (const day of after) {
      expect(await postsAt(crew, `${day}T08:29`, zone)).toBe(false);
      expect(await postsAt(crew, `${day}T08:30`, zone)).toBe(true);
    }
  });
});
