import { describe, expect, it } from 'vitest';
import type { Outcome, WireMessage } from '../../src/channel/contract.ts';
import { instantOf } from '../../src/core/time.ts';
import { botOn } from '../support/bot-on.ts';
import { HandClock, testChannel } from '../support/channel.ts';
import { expectCleanChannel } from '../support/clean-channel.ts';
import { buttonOn, crewAtWork, dataOf, formOf, labelsOn, messageOf, shownIn } from '../support/crew.ts';
import { scratchFolder } from '../support/scratch-folder.ts';

describe('a search for a fault', () => {
  it('goes from the symptom to the cause by buttons on one message', async () => {
    await using crew = await crewAtWork();
    const started = await crew.type('/fault start symptom:"wont crank"');
    const card = messageOf(started);
    expect(started.text).toContain('Turn the key and listen at the starter');
    const next = await crew.press(card, 'A click, or clicking', { as: 'Bram' });
    const found = await crew.press(messageOf(next), 'Below 12.2 V', { as: 'Bram' });
    expect(found.outcome.kind).toBe('changed');
    expect(messageOf(found).id).toBe(card.id);
    expect(shownIn(messageOf(found))).toContain('Battery discharged');
    const closed = await crew.press(messageOf(found), 'That was it');
    expect(dataOf(closed)).toMatchObject({ state: 'finished', cause: 'flat-battery' });
    expect(crew.record.walks.find(1)).toMatchObject({ state: 'finished', endedBy: 'Ada' });
    expect(crew.channel.messages(card.channel_id).filter(({ author }) => author.bot)).toHaveLength(1);
  });

  it('tells the second of two who press at once what the first found', async () => {
    await using crew = await crewAtWork();
    const card = messageOf(await crew.type('/fault start symptom:"no crank"'));
    const press = (as: string, label: string): Promise<Outcome> =>
      crew.channel.hands(as).press(card.id, buttonOn(card, label));
    const both = await Promise.all([press('Bram', 'A click, or clicking'), press('Cleo', 'Nothing at all')]);
    const texts = both.map(textIn);
    const noted = crew.record.walks.find(1)?.findings ?? [];
    expect(noted).toHaveLength(1);
    const { byName } = noted[0] ?? { byName: '' };
    expect(texts.filter((text) => text.includes(`${byName} was first and found`))).toHaveLength(1);
    expect(texts.filter((text) => text.includes(`(${byName})`))).toHaveLength(1);
  });

  it('takes a note through a form, and shows it under what was found so far', async () => {
    await using crew = await crewAtWork();
    const card = messageOf(await crew.type('/fault start symptom:"no crank"'));
    const form = await crew.press(card, 'With a note');
    expect(formOf(form).title).toBe('What did you find?');
    const noted = await crew.fill(form, { outcome: 'nothing', note: 'lamps went out' });
    const soFar = await crew.press(messageOf(noted), 'So far');
    expect(soFar.text).toContain('Turn the key and listen at the starter → Nothing at all');
    expect(soFar.text).toContain('lamps went out');
  });

  it('puts the connector that was left off first', async () => {
    await using crew = await crewAtWork();
    await crew.type('/temporary put what:"crank sensor unplugged"');
    const started = await crew.type('/fault start symptom:"no rpm while cranking"');
    expect(started.text).toContain('First: is “crank sensor unplugged” still so?');
    const done = await crew.press(messageOf(started), 'Undone, and it is gone', { as: 'Bram' });
    expect(done.text).toContain('Sensor unplugged or in the wrong plug');
    expect(crew.record.measures.find(1)).toMatchObject({ undoneByName: 'Bram' });
  });
});

describe('over a restart', () => {
  it('one begins, the bot is stopped and started, another goes on where it was', async () => {
    const clock = new HandClock(instantOf('2026-12-07', '21:40', 'Europe/London'));
    await using channel = await testChannel({ clock, channels: ['build'], crew: ['Ada', 'Bram'] });
    const folder = scratchFolder();
    const here = channel.channels[0]?.id ?? '';

    const first = await botOn(channel, clock, folder);
    const begun = messageIn(
      await channel.hands('Ada').type('/fault start symptom:"no spark"', { channelId: here }),
    );
    const after = messageIn(
      await channel.hands('Ada').press(begun.id, buttonOn(begun, 'Sparks on the right one')),
    );
    const left = messageIn(await channel.hands('Ada').press(after.id, buttonOn(after, 'Leave it here')));
    const asked = /## (.*)|^(Crank it[^\n]*)/m.exec(shownIn(left));
    expect(asked).not.toBeNull();
    await first.stop();

    clock.moveMs(10 * 3_600_000);
    const second = await botOn(channel, clock, folder);
    const listed = messageIn(await channel.hands('Bram').type('/fault list', { channelId: here }));
    expect(shownIn(listed)).toContain('Ada left it for whoever goes on');
    // the old message works on as well as the list
    const resumed = messageIn(await channel.hands('Bram').press(left.id, buttonOn(left, 'Go on')));
    expect(labelsOn(resumed)).toContain('Steady speed shown');
    const found = messageIn(
      await channel.hands('Bram').press(resumed.id, buttonOn(resumed, 'No speed at all')),
    );
    expect(shownIn(found)).toContain('The controller sees no speed');
    const { findings, state } = second.teams.at(channel.guildId).record.walks.find(1) ?? { findings: [] };
    expect(state).toBe('open');
    expect(findings.map(({ byName, outcome }) => `${byName} ${outcome}`)).toEqual([
      'Ada sparks',
      'Bram none',
    ]);
    await second.stop();
    expectCleanChannel(channel, []);
  });
});

/** @throws Error when no message came of it. */
function messageIn(outcome: Outcome): WireMessage {
  if ('message' in outcome) return outcome.message;
  throw new Error(`no message came of it: ${outcome.kind}`);
}

const textIn = (outcome: Outcome): string => ('message' in outcome ? shownIn(outcome.message) : outcome.kind);
