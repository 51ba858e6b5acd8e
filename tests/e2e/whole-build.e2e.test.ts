import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { type Crew, crewAtWork, dataOf, messageOf, shownIn } from '../support/crew.ts';

/** Types a line that has to be done, and gives what came of it. */
async function done(crew: Crew, line: string, as = 'Ada') {
  const told = await crew.type(line, { as });
  expect(told.result?.ok, `${line}\n${told.text}`).toBe(true);
  return told;
}

const Said = z.object({
  missing: z.array(z.object({ says: z.string() })),
  unproved: z.array(z.object({ says: z.string() })),
});

/** Says yes, as Bram, to everything that only a person can say at a stage: before it and by going through it. */
async function sayYes(crew: Crew, stage: string): Promise<void> {
  const { missing, unproved } = Said.parse(dataOf(await crew.type(`/ready stage:"${stage}"`)));
  for (const { says } of [...missing, ...unproved]) {
    const what = /^Nobody has said yet: (.*)$/.exec(says)?.[1];
    if (what !== undefined) await done(crew, `/stage said what:"${what}"`, 'Bram');
  }
}

async function pass(crew: Crew, stage: string): Promise<void> {
  const told = await done(crew, `/stage pass stage:"${stage}"`, 'Cleo');
  expect(dataOf(told), told.text).toMatchObject({ stage: expect.any(String) as string });
}

const atRest = '/reading log reading:"battery 12.6 V at rest"';

describe('a build, from its first order to sign-off', () => {
  it('goes through every stage, with what is late, lent and run in on the way', {
    timeout: 60_000,
  }, async () => {
    await using crew = await crewAtWork({ at: '2026-12-07T09:00' });

    // what it is, what is on order, what is out for work
    await done(crew, '/build name name:"Hill-climb seven"');
    await done(crew, '/build spec what:"compression ratio" value:"8.6 : 1"');
    await done(
      crew,
      '/order several lines:"head gasket 84.50; oil filter 8.20; drain hose 19.00" supplier:"Norvale Gaskets" due:"9 Dec" carriage:6.50',
    );
    await done(crew, '/part add name:block origin:used');
    await done(crew, '/part shelf part:block quantity:1');
    await done(crew, '/part out part:block to:"Brackendale Machining" work:"line hone" due:"11 Dec"');
    await done(crew, '/job add name:"fit the head" stage:assembly minutes:"2-4 h" needs:"head gasket"');
    await done(
      crew,
      '/temporary put what:"blanked the turbo drain until the drain hose comes, undo before first start"',
    );

    // the head waits for its gasket
    const waiting = await crew.type('/now');
    expect(waiting.text).toContain('head gasket');
    expect(dataOf(waiting)).toMatchObject({ ready: [] });
    expect((await crew.type('/when date')).text).toMatch(/\d+ (?:Dec|Jan)/);

    // the parcel is late: the morning says so, its button takes it in
    crew.at('2026-12-10T08:30');
    await crew.tick();
    const [morning] = crew.mornings();
    if (morning === undefined) throw new Error('no morning message');
    expect(shownIn(morning)).toContain('late by 1 working day');
    await done(crew, '/order parcel order:"head gasket"', 'Bram');
    await done(crew, '/part back part:block', 'Cleo');

    // its hose has come, so the measure is spoken of; nobody undoes it in silence
    crew.at('2026-12-11T08:30');
    await crew.tick();
    const spoken = crew.mornings().at(-1);
    if (spoken === undefined) throw new Error('no second morning');
    expect(shownIn(spoken)).toContain('blanked the turbo drain');

    // the evening's job
    const now = await crew.type('/now', { as: 'Bram' });
    expect(now.text).toContain('fit the head');
    await crew.press(messageOf(now), 'Done', { as: 'Bram' });
    expect((await crew.type('/part show part:"head gasket"')).text).toContain('fitted');

    // assembly
    const early = await crew.type('/ready stage:"first start"');
    expect(dataOf(early)).toMatchObject({ ready: false });
    await sayYes(crew, 'assembly');
    await pass(crew, 'assembly');

    // fluids
    await done(crew, '/fluid case name:sump grade:10W-40 capacity:"5.6 L"');
    await done(crew, '/fluid bought what:"2 x 5 L 10W-40"');
    await done(crew, '/fluid poured what:"5.6 L into sump"', 'Bram');
    await done(crew, '/part fitted part:"oil filter"');
    await sayYes(crew, 'fluids');
    await pass(crew, 'fluids');

    // oil pressure by cranking, with no spark and no fuel: refused until both are off
    await done(crew, atRest);
    const refused = await crew.type('/stage pass stage:"oil pressure by cranking"');
    expect(refused.text).toMatch(/no spark/);
    await done(crew, '/temporary put what:"no spark: coil connectors off"');
    await done(crew, '/temporary put what:"no fuel: pump relay out"');
    await done(crew, '/reading log reading:"oil 1.8 bar cranking"', 'Cleo');
    await sayYes(crew, 'oil pressure by cranking');
    await pass(crew, 'oil pressure by cranking');

    // fuel pressure: the pump has to be on again
    await sayYes(crew, 'fuel pressure and leaks');
    expect((await crew.type('/ready')).text).toContain('pump relay out');
    await done(crew, '/temporary undone measure:"no fuel"');
    await done(crew, '/reading log reading:"fuel 3 bar at rest"');
    await sayYes(crew, 'fuel pressure and leaks');
    await pass(crew, 'fuel pressure and leaks');

    // first start: the drain is still blanked and the coils are off
    await sayYes(crew, 'first start');
    const blocked = await crew.type('/ready stage:"first start"');
    expect(blocked.text).toContain('blanked the turbo drain');
    expect(blocked.text).toContain('coil connectors off');
    await done(crew, '/temporary undone measure:"turbo drain"', 'Bram');
    await done(crew, '/temporary undone measure:"no spark"', 'Bram');
    await done(crew, '/reading log reading:"oil 3.1 bar idle"');
    await sayYes(crew, 'first start');
    await pass(crew, 'first start');

    // warm-up, idle, road
    for (const reading of [
      'coolant 92C hot',
      'oil 1.6 bar hot idle',
      'battery 14.2 V charging',
      'lambda 0.98 hot idle',
      'lambda 1.02 cruise',
    ]) {
      await done(crew, `/reading log reading:"${reading}"`);
    }
    for (const stage of ['warm-up checks', 'idle fuelling', 'road fuelling']) {
      await sayYes(crew, stage);
      await pass(crew, stage);
    }

    // the sump comes off again: what rested on it is open again, and says so, until that is taken back
    const drained = await done(crew, '/fluid drained what:sump');
    expect((await crew.type('/stage list')).text).toContain('Open again: Sump is empty');
    await crew.press(messageOf(drained), 'Undo');
    expect((await crew.type('/stage list')).text).toContain('8 of 11 passed');

    // running in: how it may be driven, the first oil change when its distance has come, done at a press with what was found
    await done(crew, '/reading log reading:"odo 12 km"');
    await done(crew, '/runin plan choose:"road by distance" limit:"7200 rpm" boost:"1.1 bar"');
    expect((await done(crew, '/runin today')).text).toMatch(/\d{4} rpm/);
    crew.at('2026-12-14T18:00');
    await done(crew, '/reading log reading:"odo 95 km"');
    const due = await crew.tick();
    expect(due.map(({ answer }) => answer.subject)).toContain('Running in');
    const plan = await done(crew, '/runin plan', 'Bram');
    expect(plan.text).toMatch(/oil/i);
    await done(crew, '/runin done step:"first oil and filter" found:"filter cut open, clean"', 'Bram');
    expect((await crew.type('/runin plan')).text).toContain('1 of 10 done');
    await done(crew, '/reading log reading:"leak-down 4 5 4 6 %"');
    await sayYes(crew, 'running in');
    await pass(crew, 'running in');
    await done(crew, '/reading log reading:"lambda 0.80 full load"');
    await sayYes(crew, 'mapping');
    await pass(crew, 'mapping');
    await sayYes(crew, 'sign-off');
    await pass(crew, 'sign-off');
    expect((await crew.type('/stage list')).text).toContain('11 of 11 passed');

    // the record, to hand over and to carry away
    const papers = await done(crew, '/export papers');
    expect(papers.result?.reply.kind === 'answer' && papers.result.reply.files).toHaveLength(2);
    const json = await done(crew, '/export json');
    const [file] = json.result?.reply.kind === 'answer' ? (json.result.reply.files ?? []) : [];
    expect(new TextDecoder().decode(file?.bytes)).toContain('Hill-climb seven');
    expect(crew.chargehand.teams.at(crew.channel.guildId).ledger.audit()).toEqual([]);
  });

  it('is done by two at once without losing either, and the second is told', async () => {
    await using crew = await crewAtWork();
    await done(crew, '/job add name:"fit the sump"');
    const first = messageOf(await crew.type('/job show job:"fit the sump"'));
    const [ada, bram] = await Promise.all([
      crew.press(first, 'Done', { as: 'Ada' }),
      crew.press(first, 'Done', { as: 'Bram' }),
    ]);
    const texts = [ada.text, bram.text].join('\n');
    expect(texts).toMatch(/already|done by|is done/i);
    expect(crew.record.jobs.ofBuild(1).filter(({ doneOn }) => doneOn !== null)).toHaveLength(1);
  });
});
