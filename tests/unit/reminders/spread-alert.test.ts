import { describe, expect, it } from 'vitest';
import { dueAlerts } from '../../../src/reminders/alert.ts';
import { alertAnswer, alertNeeded } from '../../../src/reminders/alert-answer.ts';
import { type CrewBot, openCrewBot, TEAM } from '../../support/bot.ts';

const alerts = (bot: CrewBot) => {
  const { record } = bot.teams.at(TEAM);
  const [build] = record.builds.all();
  return build === undefined ? [] : dueAlerts(record, build, bot.clock.nowMs());
};

describe('compressions too far apart', () => {
  it('are told once for a line, by its weakest cylinder, until a line is even again', async () => {
    const bot = await openCrewBot();
    const log = (reading: string) => bot.run('reading log', { reading });
    await log('compression 165 170 168 90 psi');
    const first = alerts(bot);
    expect(first).toHaveLength(1);
    const { record } = bot.teams.at(TEAM);
    const [alert] = first;
    if (alert === undefined) throw new Error('no alert');
    expect(alertNeeded(record, alert.notice)).toBe(true);
    const card = alertAnswer(record, alert.notice, 1, bot.clock.nowMs());
    expect(card).toMatchObject({ subject: 'Alert', tone: 'late' });
    expect(card.result).toContain('spread 47 %');
    expect(card.caution).toBeDefined();

    await log('compression 165 170 168 95 psi');
    expect(alerts(bot).map(({ key }) => key)).toEqual([alert.key]);
    await log('compression 165 170 168 160 psi');
    expect(alerts(bot)).toEqual([]);
    await log('compression 165 100 168 160 psi');
    expect(alerts(bot).map(({ key }) => key)).not.toEqual([alert.key]);
  });
});
