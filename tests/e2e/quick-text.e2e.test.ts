import { describe, expect, it } from 'vitest';
import { crewAtWork, dataOf, formOf, labelsOn } from '../support/crew.ts';

describe('a line without a slash', () => {
  it('that mentions the bot is answered by a message that refers to it and pings nobody', async () => {
    await using crew = await crewAtWork();
    const { said, answer } = await crew.say('@Chargehand 21.9 x 1.5');
    expect(answer?.text).toContain('M22 × 1.5');
    expect(answer?.result).toMatchObject({
      ok: true,
      reply: { data: { kind: 'thread', diameterMm: 21.9, pitchMm: 1.5 } },
    });
    expect(answer?.message).toMatchObject({ message_reference: { message_id: said.id }, mentions: [] });
  });

  it('gets nothing without a mention, where the platform keeps its words back', async () => {
    await using crew = await crewAtWork();
    expect((await crew.say('21.9 x 1.5')).answer).toBeNull();
  });

  it('is answered as it stands where the bot may read along', async () => {
    await using crew = await crewAtWork({ hears: 'everything' });
    const { answer } = await crew.say('85lbft');
    expect(answer?.text).toContain('85 lbf·ft = 115.2 N·m');
  });

  it.each(['see you at 8', 'done the mains, all at 85 lbft', '21.9 quid each, 1.5 weeks', 'ok 👍'])(
    'is left alone when it is talk: "%s"',
    async (line) => {
      await using crew = await crewAtWork({ hears: 'everything' });
      expect((await crew.say(line)).answer).toBeNull();
      const here = crew.channel.channels[0]?.id ?? '';
      expect(crew.channel.messages(here)).toHaveLength(1);
    },
  );

  it('is told what can be typed when it mentions the bot and asks nothing', async () => {
    await using crew = await crewAtWork();
    const { answer } = await crew.say('@Chargehand good job');
    expect(answer?.text).toContain('nothing in that to work out');
    expect(answer?.text).toContain('21.9 x 1.5');
  });

  it('is answered in a private message, without a crew’s record', async () => {
    await using crew = await crewAtWork();
    const channelId = crew.channel.hands('Bram').directChannelId();
    const { answer } = await crew.say('m10 10.9 torque', { as: 'Bram', channelId });
    expect(answer?.text).toContain('65 N·m');
    expect(labelsOn(answer?.message ?? messageless())).toEqual(['Change what was assumed']);
  });
});

const messageless = (): never => {
  throw new Error('nothing was answered');
};

describe('a line about the build', () => {
  it('asks the record by mention, and gets nothing overheard where people say it to each other', async () => {
    await using crew = await crewAtWork({ hears: 'everything' });
    expect((await crew.say("what's next?")).answer).toBeNull();
    expect((await crew.say('are we ready for lunch?')).answer).toBeNull();
    expect((await crew.say("@Chargehand what's next?")).answer?.result.reply).toMatchObject({
      data: { asked: 'now' },
    });
    expect((await crew.say('are we ready for first start?')).answer?.result.reply).toMatchObject({
      data: { asked: 'ready' },
    });
  });

  it('that is a symptom begins a search only by its button', async () => {
    await using crew = await crewAtWork({ hears: 'everything' });
    expect((await crew.say('no spark')).answer).toBeNull();
    const { answer } = await crew.say('@Chargehand no spark');
    const message = answer?.message ?? messageless();
    expect(labelsOn(message)).toEqual(['Find the cause']);
    const pressed = await crew.press(message, 'Find the cause');
    expect(pressed.result?.ok).toBe(true);
  });

  it('that is a reading is worked out, and logged by its button', async () => {
    await using crew = await crewAtWork();
    const { answer } = await crew.say('@Chargehand compression 12.1 12.0 11.8 11.9');
    const message = answer?.message ?? messageless();
    expect(answer?.text).toContain('Spread 2.48 %');
    const pressed = await crew.press(message, 'Log this reading');
    expect(pressed.result?.ok).toBe(true);
  });
});

describe('a question that comes back', () => {
  it('offers its readings as buttons, and each of them answers', async () => {
    await using crew = await crewAtWork({ hears: 'everything' });
    const { answer } = await crew.say('12.4');
    const message = answer?.message ?? messageless();
    expect(labelsOn(message).slice(0, 2)).toEqual(['12.4 AFR', 'Compression ratio 12.4']);
    const pressed = await crew.press(message, '12.4 AFR', { as: 'Bram' });
    expect(dataOf(pressed)).toMatchObject({ kind: 'afr-lambda', afr: 12.4 });
  });

  it('asks for what is missing in a form, whose answer is the whole question', async () => {
    await using crew = await crewAtWork({ hears: 'everything' });
    const { answer } = await crew.say('v8 displacement');
    const opened = await crew.press(answer?.message ?? messageless(), 'Bore and stroke');
    expect(formOf(opened).title).toBe('What is missing');
    expect(opened.text).toContain('gap1: bore …');
    const filled = await crew.fill(opened, { gap1: '86', gap2: '86' });
    expect(dataOf(filled)).toMatchObject({ kind: 'displacement', boreMm: 86, strokeMm: 86, cylinders: 8 });
  });

  it('works in a private message, where nothing can be kept', async () => {
    await using crew = await crewAtWork();
    const channelId = crew.channel.hands('Ada').directChannelId();
    const { answer } = await crew.say('12.4 afr e85', { channelId });
    const message = answer?.message ?? messageless();
    const [gauge = ''] = labelsOn(message);
    expect(gauge).toContain('Petrol gauge');
    const pressed = await crew.press(message, gauge);
    expect(dataOf(pressed)).toMatchObject({ kind: 'afr-lambda', fuel: 'E85' });
    expect(pressed.text).toContain('λ 0.84');
  });
});

describe('a message is taken once', () => {
  it('however often it is delivered', async () => {
    await using crew = await crewAtWork({ hears: 'everything' });
    const once = crew.channel.faults.repeatMessages(3);
    const { said } = await crew.say('58psi');
    once();
    // a later line is answered after all that came before it
    await crew.say('4 bar');
    const here = crew.channel.channels[0]?.id ?? '';
    const answers = crew.channel
      .messages(here)
      .filter((message) => 'message_reference' in message && JSON.stringify(message).includes(said.id));
    expect(answers.filter(({ author }) => author.bot === true)).toHaveLength(1);
  });

  it('as it was first written: an edit is no new question', async () => {
    await using crew = await crewAtWork({ hears: 'everything' });
    const { said } = await crew.say('58psi');
    await crew.channel.hands('Ada').edit(said.id, '60psi');
    await crew.say('4 bar');
    const here = crew.channel.channels[0]?.id ?? '';
    const ours = crew.channel.messages(here).filter(({ author }) => author.bot === true);
    expect(ours).toHaveLength(2);
  });

  it('after the connection was torn and taken up again', async () => {
    await using crew = await crewAtWork({ hears: 'everything' });
    crew.channel.faults.dropSockets();
    const { answer } = await crew.say('58psi');
    expect(answer?.text).toContain('399.9 kPa');
    const here = crew.channel.channels[0]?.id ?? '';
    expect(crew.channel.messages(here).filter(({ author }) => author.bot === true)).toHaveLength(1);
  });

  it('and answered once when the receipt of the answer is lost on the way', async () => {
    await using crew = await crewAtWork({ hears: 'everything' });
    crew.channel.faults.http({
      method: 'POST',
      path: /^\/channels\/\d+\/messages$/,
      answer: 'server-error',
      afterEffect: true,
      times: 1,
    });
    const { answer } = await crew.say('58psi');
    expect(answer?.text).toContain('399.9 kPa');
    const here = crew.channel.channels[0]?.id ?? '';
    expect(crew.channel.messages(here).filter(({ author }) => author.bot === true)).toHaveLength(1);
  });
});

describe('the app on somebody’s own account', () => {
  it('works out sums, and lets what was assumed be changed', async () => {
    await using crew = await crewAtWork();
    const channelId = crew.channel.channels[0]?.id ?? '';
    const hands = crew.channel.hands('Cleo');
    const outcome = await hands.type('/torque bolt size:M10 class:10.9', { channelId, ownApp: true });
    expect(outcome.kind).toBe('answered');
    if (!('message' in outcome)) throw new Error('no message came of it');
    const form = await crew.press(outcome.message, 'Change what was assumed', { as: 'Cleo' });
    const changed = await crew.fill(form, { friction: 'dry' }, { as: 'Cleo' });
    expect(changed.text).toContain('dry');
  });

  it('takes free text by /ask', async () => {
    await using crew = await crewAtWork();
    const channelId = crew.channel.channels[0]?.id ?? '';
    const outcome = await crew.channel.hands('Cleo').type('/ask 12.4 afr', { channelId, ownApp: true });
    expect(outcome.kind).toBe('answered');
  });

  it('has no crew: what works on the record says where to ask instead, and makes no record', async () => {
    await using crew = await crewAtWork();
    const channelId = crew.channel.channels[0]?.id ?? '';
    const hands = crew.channel.hands('Cleo');
    expect(await hands.type('/order list', { channelId, ownApp: true })).toMatchObject({
      kind: 'refused',
      problem: expect.stringContaining('/order') as string,
    });
    const outcome = await hands.type('/fitting ports', { channelId, ownApp: true });
    expect('message' in outcome && JSON.stringify(outcome.message)).toContain(
      'ask in a channel of its server',
    );
  });
});
