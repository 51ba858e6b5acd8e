import { describe, expect, it } from 'vitest';
import {
  type Crew,
  crewAtWork,
  dataOf,
  formOf,
  labelsOn,
  messageOf,
  shownIn,
  type Told,
} from '../support/crew.ts';

/** Types a line that must be done. */
async function done(crew: Crew, line: string, as = 'Ada'): Promise<Told> {
  const told = await crew.type(line, { as });
  expect(told.result?.ok, `${line}: ${told.text}`).toBe(true);
  return told;
}

/** Presses "Yes, I say so" until nothing is left that only a person can say before a stage. */
async function sayBefore(crew: Crew, stage: string): Promise<void> {
  let told = await done(crew, `/ready stage:"${stage}"`, 'Cleo');
  while (labelsOn(messageOf(told)).includes('Yes, I say so'))
    told = await crew.press(messageOf(told), 'Yes, I say so', { as: 'Cleo' });
}

const says = async (crew: Crew, ...words: readonly string[]): Promise<void> => {
  for (const what of words) await done(crew, `/stage said what:"${what}"`, 'Cleo');
};

const ready = async (crew: Crew, stage: string): Promise<string> =>
  (await done(crew, `/ready stage:"${stage}"`)).text;

async function passes(crew: Crew, stage: string): Promise<void> {
  const told = await done(crew, `/stage pass stage:"${stage}"`, 'Bram');
  expect(told.text, stage).toContain('is passed');
  expect(told.text, stage).not.toContain('stays visible');
}

describe('a build from bare block to sign-off', () => {
  it('goes through every stage, with what was temporary put in and undone in its time', async () => {
    await using crew = await crewAtWork({ at: '2026-12-07T09:00' });

    // what there is to do and to fill
    await done(crew, '/job add name:"fit the sump" stage:assembly');
    await done(crew, '/order place what:"turbo drain hose" supplier:"Norvale Gaskets" due:"9 Dec"');
    await done(crew, '/part add name:"oil filter"');
    await done(crew, '/part shelf part:"oil filter"');
    await done(crew, '/fluid case name:sump grade:10W-40 capacity:"5.6 L"');
    await done(crew, '/fluid case name:"cooling system" grade:"coolant 50 %" capacity:"7 L"');
    await done(crew, '/fluid bought what:"2 x 5 L 10W-40"');
    await done(crew, '/fluid bought what:"2 x 5 L coolant 50 %"');
    const blanked = await done(
      crew,
      '/temporary put what:"blanked the turbo drain until the hose comes, undo before first start"',
      'Bram',
    );
    expect(blanked.text).toContain('Undo when turbo drain hose is here, and before First start.');

    // assembly
    expect(await ready(crew, 'assembly')).toContain('Job still open: fit the sump');
    const asked = await done(crew, '/ready');
    await crew.press(messageOf(asked), 'Done');
    await sayBefore(crew, 'assembly');
    await passes(crew, 'assembly');

    // fluids: poured by the button of the question
    const fluids = await done(crew, '/ready');
    expect(fluids.text).toContain('No: two things before Fluids in');
    const form = await crew.press(messageOf(fluids), 'Poured in');
    expect(formOf(form).title).toBe('Poured into cooling system');
    await crew.fill(form, { volume: '7 L' });
    await done(crew, '/fluid poured what:"5.6 L into sump"');
    await says(crew, 'drain plugs tight');
    await passes(crew, 'fluids');

    // oil pressure: no spark and no fuel, and both have to go again
    const cranking = await done(crew, '/ready stage:"oil pressure"');
    expect(cranking.text).toContain('Required, and not in place: no spark');
    await crew.press(messageOf(cranking), 'Put in place');
    await done(crew, '/temporary put what:"no fuel while cranking"');
    await done(crew, '/reading log reading:"battery 12.7 V at rest"');
    expect(await ready(crew, 'oil pressure')).toContain('Yes: ready for Oil pressure by cranking');
    await done(crew, '/reading log reading:"oil pressure 1.6 bar cranking"');
    await says(crew, 'oil seen at the top');
    await passes(crew, 'oil pressure');

    // fuel pressure: the fuel comes back first
    expect(await ready(crew, 'fuel pressure')).toContain(
      '“no fuel” must be undone before Fuel pressure and leaks',
    );
    await done(crew, '/temporary undone measure:"no fuel"');
    await says(crew, 'extinguisher in reach, room aired', 'every joint from tank to rail');
    await done(crew, '/reading log reading:"fuel pressure 3 bar at rest"');
    await passes(crew, 'fuel pressure');

    // the hose comes: the morning says so, and the button undoes it
    await done(crew, '/order arrived order:"drain hose"');
    crew.at('2026-12-08T08:31');
    await crew.tick();
    const [morning] = crew.mornings();
    if (morning === undefined) throw new Error('no morning message');
    expect(shownIn(morning)).toContain('Turbo drain hose is here.');
    const undone = await crew.press(morning, 'Undone', { as: 'Bram' });
    expect(undone.text).toContain('Undone, noted by Bram.');

    // first start
    const start = await done(crew, '/ready stage:"first start"');
    expect(start.text).toContain('No: three things before First start');
    expect(start.text).toContain('“no spark” must be undone before First start');
    await crew.press(messageOf(start), 'Undone');
    await sayBefore(crew, 'first start');
    const yes = await ready(crew, 'first start');
    expect(yes).toContain('Yes: ready for First start');
    expect(yes).toContain('Exhaust gas kills in a closed room');
    await done(crew, '/reading log reading:"oil pressure 2.1 bar idle"');
    await says(crew, 'ran without a leak');
    await passes(crew, 'first start');

    // warm-up and fuelling
    for (const reading of [
      'coolant 92 C hot',
      'oil pressure 1.4 bar hot idle',
      'battery 14.1 V charging',
      'lambda 0.98 hot idle',
      'lambda 1.02 cruise',
      'lambda 0.8 full load',
    ])
      await done(crew, `/reading log reading:"${reading}"`);
    await says(crew, 'fan cut in');
    await passes(crew, 'warm-up');
    await sayBefore(crew, 'idle fuelling');
    await says(crew, 'starts cold and hot');
    await passes(crew, 'idle fuelling');
    await sayBefore(crew, 'road fuelling');
    await passes(crew, 'road fuelling');

    // running in, with an oil change in one go that opens nothing again
    await done(crew, '/fluid changed case:sump volume:"5.4 L" distance:"74 km"');
    await sayBefore(crew, 'running in');
    await says(crew, 'the running-in distance done');
    await done(crew, '/reading log reading:"leak-down 6 % cylinder 1"');
    await passes(crew, 'running in');
    await sayBefore(crew, 'mapping');
    await says(crew, 'the map and the run sheets');
    await passes(crew, 'mapping');

    // the sump comes off again: everything that rested on it is open again
    const off = await done(crew, '/job reopen job:"fit the sump"');
    expect(off.text).toBeDefined();
    const list = await done(crew, '/stage list');
    expect(list.text).toContain('Next: Assembly');
    expect(list.text).toContain('Open again: Job still open: fit the sump');
    await crew.type('/undo');
    expect((await done(crew, '/stage list')).text).toContain('Next: Sign-off');

    // sign-off, with one thing open for a reason
    await done(crew, '/temporary put what:"tie on the throttle cable"');
    await sayBefore(crew, 'sign-off');
    const question = await crew.type('/stage pass stage:sign-off');
    expect(question.text).toContain('“tie on the throttle cable” must be undone before Sign-off');
    const signed = await crew.press(messageOf(question), 'Left for later, we know of it');
    expect(signed.text).toContain('Sign-off is passed');
    expect(dataOf(signed)).toMatchObject({ reason: 'Left for later, we know of it', by: 'Ada' });
    const end = await done(crew, '/stage list');
    expect(end.text).toContain('Every stage is passed');
    expect(end.text).toContain('Temporary: tie on the throttle cable');
  });

  it('tells the second of two people who undo the same thing', async () => {
    await using crew = await crewAtWork();
    await done(crew, '/temporary put what:"fan off"');
    const card = messageOf(await done(crew, '/temporary list'));
    await crew.press(card, 'Undone', { as: 'Bram' });
    const second = await crew.press(card, 'Undone', { as: 'Cleo' });
    expect(second.text).toContain('“fan off” was undone by Bram on Mon 7 Dec. Nothing was changed.');
  });

  it('offers what is known for everything that has a name', async () => {
    await using crew = await crewAtWork();
    await done(crew, '/part add name:"turbo drain hose"');
    await done(crew, '/fluid case name:sump grade:10W-40 capacity:"5.6 L"');
    await done(crew, '/temporary put what:"fan off"');
    const offered = async (line: string): Promise<readonly string[]> =>
      (await crew.channel.hands('Ada').suggest(line, line.length)).map(({ label }) => label);
    expect(await offered('/ready stage:"first st')).toEqual(['First start']);
    expect(await offered('/temporary undone measure:fa')).toEqual(['#1 fan off']);
    expect(await offered('/temporary put what:x until:hose')).toEqual(['Part: turbo drain hose']);
    expect(await offered('/temporary put what:x undo_before:map')).toEqual(['Mapping']);
    expect(await offered('/fluid poured what:')).toEqual(['5.6 L into sump']);
    expect(await offered('/fluid bought what:10')).toEqual(['6 x 1 L 10W-40']);
    expect((await offered('/stage said what:'))[0]).toContain('Somebody says: turned over by hand');
    await done(crew, '/stage said what:"turned over by hand"');
    expect((await offered('/stage said what:'))[0]).toContain('Somebody says: everything in the oil circuit');
    expect(await offered('/stage ask stage:fluids reading:coolant')).toEqual(['coolant temperature']);
  });
});
