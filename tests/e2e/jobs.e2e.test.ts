import { expect, it } from 'vitest';
import { crewAtWork, dataOf, messageOf } from '../support/crew.ts';

it('from a starting set to the day it will start, through the client', async () => {
  await using crew = await crewAtWork({ at: '2026-12-07T09:00' });
  const offer = await crew.type('/job from-set set:oil-pressure');
  expect(offer.text).toContain('5 jobs to choose from');
  await crew.press(messageOf(offer), 'Take all 5');

  const sump = await crew.type(
    '/job add name:"refit the sump" stage:assembly minutes:"1-2 h, likely 90 min"',
  );
  expect(sump.text).toContain('Renewed whenever this is opened. None in hand, none on order');
  await crew.press(messageOf(sump), 'Needs it', { as: 'Bram' });
  await crew.type('/order place what:"sump gasket" supplier:Norvale due:"16 Dec"');

  const now = await crew.type('/now');
  expect(now.text).toContain('1 job can be done now');
  expect(now.text).toContain('Waits for sump gasket (expected Wed 16 Dec)');

  const loop = await crew.type('/job needs job:"refit the sump" add:"stage:oil-pressure"');
  expect(loop.text).toContain('would wait for itself');

  const when = await crew.type('/when date stage:oil-pressure');
  expect(dataOf(when)).toMatchObject({
    stage: 'oil-pressure',
    awaited: expect.arrayContaining([expect.objectContaining({ name: 'sump gasket', order: 1 })]) as unknown,
  });
  const [picture] = messageOf(when).attachments;
  expect(picture?.filename).toBe('timeline.png');

  const done = await crew.type('/job done job:"refit the sump"', { as: 'Cleo' });
  expect(done.text).toContain('Has it come?');
  const fitted = await crew.press(messageOf(done), 'Yes, it came', { as: 'Cleo' });
  expect(fitted.text).toContain('done Mon 7 Dec by Cleo');
  const twice = await crew.type('/job done job:"refit the sump"', { as: 'Ada' });
  expect(twice.text).toContain('is done already: Cleo');

  await crew.press(messageOf(fitted), 'Undo', { as: 'Cleo' });
  expect(crew.record.jobs.ofBuild(1).find(({ name }) => name === 'refit the sump')?.doneOn).toBeNull();
  expect(crew.record.orders.find(1)?.arrivals).toEqual([]);
});
