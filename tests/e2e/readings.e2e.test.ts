import { describe, expect, it } from 'vitest';
import type { Outcome, WireMessage } from '../../src/channel/contract.ts';
import { instantOf } from '../../src/core/time.ts';
import { botOn } from '../support/bot-on.ts';
import { HandClock, testChannel } from '../support/channel.ts';
import { expectCleanChannel } from '../support/clean-channel.ts';
import { type Crew, crewAtWork, labelsOn, messageOf, shownIn } from '../support/crew.ts';
import { scratchFolder } from '../support/scratch-folder.ts';

const posted = (crew: Crew, title: string): readonly WireMessage[] =>
  crew.channel
    .messages(crew.channel.channels[0]?.id ?? '')
    .filter((message) => message.author.bot && shownIn(message).split('\n')[0]?.includes(title));

describe('readings on the wire', () => {
  it('are logged, asked about, corrected and taken back', async () => {
    await using crew = await crewAtWork();
    const card = await crew.type('/reading log reading:"compression 12.1 12.0 11.8 11.9 bar"');
    expect(card.text).toContain('Compression 12.1, 12, 11.8, 11.9 bar: spread 2.5 %');
    const asked = await crew.type('/reading log reading:"oil 41 bar at 2500 rpm 92C"', { as: 'Bram' });
    expect(asked.text).toContain('unlikely');
    const settled = await crew.press(messageOf(asked), '4.1 bar', { as: 'Bram' });
    expect(settled.text).toContain('Oil pressure 4.1 bar');
    const form = await crew.press(messageOf(settled), 'Correct', { as: 'Cleo' });
    const corrected = await crew.fill(form, { value: '4.3 bar' }, { as: 'Cleo' });
    expect(corrected.text).toContain('First given as 4.1 bar');
    const undone = await crew.press(messageOf(corrected), 'Undo', { as: 'Cleo' });
    expect(undone.text).toContain('4.3 bar');
    expect(crew.record.readings.ofKind(1, 'oil pressure')).toMatchObject([{ value: 410, firstValue: null }]);
  });

  it('come with a picture', async () => {
    await using crew = await crewAtWork();
    await crew.type('/reading log reading:"oil 4.2 bar at 2500 rpm 92C"');
    const chart = await crew.type('/reading chart kind:"oil pressure"');
    expect(messageOf(chart).attachments).toMatchObject([{ filename: 'readings.png' }]);
  });
});

describe('an alert', () => {
  it('comes once for a spell, and again for a new one', async () => {
    await using crew = await crewAtWork();
    const bad = '/reading log reading:"oil 0.5 bar hot idle 850 rpm"';
    const good = '/reading log reading:"oil 1.2 bar hot idle 850 rpm"';
    await crew.type(bad);
    await crew.tick();
    await crew.tick();
    expect(posted(crew, 'Alert')).toHaveLength(1);
    const [alert] = posted(crew, 'Alert');
    if (alert === undefined) throw new Error('no alert');
    expect(shownIn(alert)).toContain('Stop the engine');
    expect(labelsOn(alert)).toEqual(['Chart', 'Correct']);
    crew.at('2026-12-07T11:00');
    await crew.type(bad);
    await crew.tick();
    expect(posted(crew, 'Alert')).toHaveLength(1);
    crew.at('2026-12-07T12:00');
    await crew.type(good);
    await crew.tick();
    crew.at('2026-12-07T13:00');
    await crew.type(bad);
    await crew.tick();
    expect(posted(crew, 'Alert')).toHaveLength(2);
  });

  it('is not sent when the reading was corrected before, and says so when it was after', async () => {
    await using crew = await crewAtWork();
    await crew.type('/reading log reading:"coolant 125C full load"');
    await crew.type('/reading correct reading:"#1" value:"95 C"');
    await crew.tick();
    expect(posted(crew, 'Alert')).toHaveLength(0);
    await crew.type('/reading log reading:"coolant 120C full load"');
    await crew.tick();
    expect(posted(crew, 'Alert')).toHaveLength(1);
    await crew.type('/reading correct reading:"#2" value:"100 C"');
    await crew.tick();
    expect(posted(crew, 'Alert').map(shownIn)[0]).toContain('no longer wrong');
  });

  it('tells of an oil pressure that falls within its limits, once', async () => {
    await using crew = await crewAtWork({ at: '2026-12-01T09:00' });
    for (const [index, value] of [4.3, 4.2, 4.15, 4, 3.9, 3.8].entries()) {
      crew.at(`2026-12-0${index + 1}T09:00`);
      await crew.type(`/reading log reading:"oil ${value} bar at 2500 rpm 9${index % 3}C"`);
      await crew.tick();
    }
    const alerts = posted(crew, 'Alert').map(shownIn);
    expect(alerts).toHaveLength(1);
    expect(alerts[0]).toContain('Oil pressure falls');
    expect(alerts[0]).toContain('cut the filter open');
  });
});

describe('running in on the wire', () => {
  async function begun(): Promise<Crew> {
    const crew = await crewAtWork({ at: '2026-12-07T09:00' });
    await crew.type('/reading log reading:"odo 84210 km"');
    await crew.type('/runin plan choose:own limit:"7200 rpm"');
    await crew.type('/runin step what:"first oil change" due:"100 km"');
    return crew;
  }
  const drive = async (crew: Crew, at: string, km: number): Promise<void> => {
    crew.at(at);
    await crew.type(`/reading log reading:"odo ${km} km"`);
    await crew.tick();
  };

  it('reminds ahead, when due and on the mornings after, until it is done by its button', async () => {
    await using crew = await begun();
    await drive(crew, '2026-12-07T15:00', 84_240);
    expect(posted(crew, 'Running in')).toHaveLength(2);
    await drive(crew, '2026-12-07T16:00', 84_282);
    const ahead = posted(crew, 'Running in').at(-1);
    if (ahead === undefined) throw new Error('no reminder ahead');
    expect(shownIn(ahead)).toContain('28 km to go: first oil change');
    await drive(crew, '2026-12-07T18:00', 84_315);
    await crew.tick();
    const reminders = posted(crew, 'Running in').slice(2);
    expect(reminders).toHaveLength(2);
    expect(shownIn(reminders[1] ?? ahead)).toContain('Due: first oil change');
    crew.at('2026-12-08T08:30');
    await crew.tick();
    const morning = crew.mornings().at(-1);
    if (morning === undefined) throw new Error('no morning message');
    expect(shownIn(morning)).toContain('1 running-in step due');
    const form = await crew.press(morning, 'Done', { as: 'Bram' });
    const done = await crew.fill(form, { found: 'a little grey dust', link: '' }, { as: 'Bram' });
    expect(done.text).toContain('Found: a little grey dust');
    expect(messageOf(done).id).toBe(morning.id);
    await crew.tick();
    // the standing reminder is redrawn as well
    expect(posted(crew, 'Running in').map(shownIn).at(-1)).toContain('Done: first oil change');
    crew.at('2026-12-09T08:30');
    expect(await crew.tick()).toEqual([]);
  });

  it('is put off by its button with a reason, and reminds again when that is reached', async () => {
    await using crew = await begun();
    await drive(crew, '2026-12-07T18:00', 84_315);
    const due = posted(crew, 'Running in').at(-1);
    if (due === undefined) throw new Error('no reminder');
    const form = await crew.press(due, 'Put off');
    const put = await crew.fill(form, { until: '30 km', reason: 'no filter here' });
    expect(put.text).toContain('Put off by Ada: no filter here');
    const before = posted(crew, 'Running in').length;
    crew.at('2026-12-08T08:30');
    await crew.tick();
    expect(crew.mornings()).toEqual([]);
    await drive(crew, '2026-12-08T12:00', 84_346);
    expect(posted(crew, 'Running in')).toHaveLength(before + 1);
    const undone = await crew.type('/undo');
    expect(undone.text).not.toContain('nothing');
  });

  it('comes neither at night nor before the morning time', async () => {
    await using crew = await begun();
    await drive(crew, '2026-12-07T23:00', 84_315);
    const before = posted(crew, 'Running in').length;
    crew.at('2026-12-08T07:00');
    await crew.tick();
    expect(posted(crew, 'Running in')).toHaveLength(before);
  });

  it('answers how it may be driven today in one line', async () => {
    await using crew = await begun();
    await crew.type('/runin plan choose:"road by distance" limit:"7200 rpm" boost:"1.1 bar"');
    const today = await crew.type('/runin today');
    expect(today.text).toContain('3600 rpm at most, 50 % of the boost (0.55 bar)');
  });
});

describe('over a restart', () => {
  it('neither an alert nor a reminder comes twice, and a trend goes on', async () => {
    const clock = new HandClock(instantOf('2026-12-07', '09:00', 'Europe/London'));
    await using channel = await testChannel({ clock, channels: ['build'], crew: ['Ada', 'Bram'] });
    const folder = scratchFolder();
    const here = channel.channels[0]?.id ?? '';
    const type = (line: string): Promise<Outcome> => channel.hands('Ada').type(line, { channelId: here });
    const spoken = (): readonly string[] =>
      channel
        .messages(here)
        .map(shownIn)
        .filter((text) => /^(?:Alert|Running in\n(?:Due|\d))/u.test(text));
    const first = await botOn(channel, clock, folder);
    await type('/reading log reading:"odo 84210 km"');
    await type('/runin plan choose:own');
    await type('/runin step what:"first oil change" due:"50 km"');
    await type('/reading log reading:"oil 0.5 bar hot idle 850 rpm"');
    clock.moveMs(3_600_000);
    await type('/reading log reading:"odo 84265 km"');
    await first.tick();
    expect(spoken()).toHaveLength(2);
    await first.stop();
    clock.moveMs(3_600_000);
    const second = await botOn(channel, clock, folder);
    await second.tick();
    await type('/reading log reading:"oil 0.48 bar hot idle 860 rpm"');
    await second.tick();
    expect(spoken()).toHaveLength(2);
    await second.stop();
    expectCleanChannel(channel, []);
  });
});
