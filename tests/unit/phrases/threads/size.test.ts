import { describe, expect, it } from 'vitest';
import questions from '../../../../data/reference/phrases/thread-questions.json' with { type: 'json' };
import { UserError } from '../../../../src/core/user-error.ts';
import { readThreadSize } from '../../../../src/phrases/threads/size.ts';

function refusal(text: string): UserError {
  try {
    readThreadSize(text);
  } catch (error) {
    if (error instanceof UserError) return error;
    throw error;
  }
  throw new Error(`"${text}" was read`);
}

const mmOf = (text: string) => {
  const size = readThreadSize(text);
  return { across: size.diameter?.mm, pitch: size.pitches.map(({ mm }) => mm), named: size.named?.nominal };
};

/** Nominal size in mm of what was typed as a name. */
function nominalMm(nominal: string | undefined): number | undefined {
  if (nominal === undefined) return undefined;
  if (nominal.startsWith('#')) return (0.06 + 0.013 * Number(nominal.slice(1))) * 25.4;
  return Number(nominal);
}

interface Question {
  readonly id: string;
  readonly text: string;
  readonly verdict: string;
  readonly why: string;
  readonly expect: {
    readonly kind: string;
    readonly diameterMm?: number;
    readonly pitchMm?: number;
    readonly gender?: string;
    readonly lengthMm?: number;
    readonly size?: string;
    readonly result?: object;
  };
}
const all: readonly Question[] = questions;

describe('thread questions as typed in the channel', () => {
  const answered = all.filter(({ expect: { kind }, verdict }) => kind === 'thread' && verdict === 'answer');
  it('has questions', () => expect(answered.length).toBeGreaterThan(25));

  it.each(answered)('$id "$text": $why', ({ text, expect: meant }) => {
    const size = readThreadSize(text);
    const across = size.diameter?.mm ?? nominalMm(size.named?.nominal);
    if (meant.diameterMm !== undefined) expect(across).toBeCloseTo(meant.diameterMm, 9);
    // A pitch that only a table knows (coarse M12, 1/8 BSP) is not in the text.
    if (meant.pitchMm !== undefined && meant.size === undefined) {
      expect(size.pitches[0]?.mm).toBeCloseTo(meant.pitchMm, 9);
    }
    if (meant.gender !== undefined) expect(size.side).toBe(meant.gender);
    if (meant.lengthMm !== undefined) expect(size.lengthMm).toBe(meant.lengthMm);
    if (meant.size !== undefined) expect(size.named?.nominal).toBe(meant.size);
  });

  it.each(['1.5 16', '20 20', '12.7 dia, 6', '2.86 x 5/8', '0.75 x 10', '8 20'])(
    'asks about "%s" with choices that can be typed',
    (text) => {
      const { code, question } = refusal(text);
      expect(code).toBe('which-one');
      expect(question?.field).toBe('size');
      expect(question?.choices.length).toBeGreaterThan(0);
      for (const { value } of question?.choices ?? []) expect(readThreadSize(value).pitches).toHaveLength(1);
    },
  );

  it('keeps what was said beside the numbers in its choices', () => {
    for (const { value } of refusal('female 1.5 16').question?.choices ?? []) {
      expect(readThreadSize(value).side).toBe('female');
    }
    expect(refusal('female 1.5 16').question?.choices).toHaveLength(2);
  });

  it.each(['thread?', '21.9 quid each, 1.5 weeks', 'check the thread above'])(
    'refuses "%s" and says what to type',
    (text) => {
      const { code, message } = refusal(text);
      expect(code).toBe('bad-input');
      expect(message).toContain('`21.9 x 1.5`');
    },
  );
});

describe('a thread size', () => {
  it.each([
    { text: '0.863in 16tpi', across: 0.863 * 25.4, pitch: [25.4 / 16], named: undefined },
    { text: '11/16 16tpi', across: 17.4625, pitch: [25.4 / 16], named: '11/16' },
    { text: '11/16" x 16', across: 17.4625, pitch: [25.4 / 16], named: '11/16' },
    { text: '1⅜-12', across: 34.925, pitch: [25.4 / 12], named: '1-3/8' },
    { text: '1-14', across: 25.4, pitch: [25.4 / 14], named: '1' },
    { text: '10-32', across: undefined, pitch: [25.4 / 32], named: '#10' },
    { text: '1/8-27', across: 3.175, pitch: [25.4 / 27], named: '1/8' },
    { text: '1/2-14 NPT', across: undefined, pitch: [25.4 / 14], named: '1/2' },
    { text: 'G 1/4', across: undefined, pitch: [], named: '1/4' },
    { text: '11.8 x 12/8', across: 11.8, pitch: [1.5], named: undefined },
    { text: '5.4 x 4/8', across: 5.4, pitch: [0.5], named: undefined },
    { text: '10.1 x 15/16', across: 10.1, pitch: [0.9375], named: undefined },
    { text: '0.863in 0.625in/10', across: 0.863 * 25.4, pitch: [1.5875], named: undefined },
    { text: '9.4 12.7mm over 10 threads', across: 9.4, pitch: [1.27], named: undefined },
    { text: '21.9 ±0.05 x 1.5', across: 21.9, pitch: [1.5], named: undefined },
    { text: '22', across: 22, pitch: [], named: '22' },
    { text: '0.75 in x 10', across: 19.05, pitch: [2.54], named: undefined },
    { text: '21.9 15/10 7.6/5', across: 21.9, pitch: [1.5, 1.52], named: undefined },
    { text: '2-4.5 UNC', across: 50.8, pitch: [25.4 / 4.5], named: '2' },
  ])('reads "$text"', ({ text, across, pitch, named }) => {
    const read = mmOf(text);
    expect(read.named).toBe(named);
    if (across === undefined) expect(read.across).toBeUndefined();
    else expect(read.across).toBeCloseTo(across, 9);
    expect(read.pitch).toHaveLength(pitch.length);
    for (const [index, mm] of pitch.entries()) expect(read.pitch[index]).toBeCloseTo(mm, 9);
  });

  it('keeps the ± of diameter, pitch and span in mm', () => {
    const size = readThreadSize('0.863 ± 0.002 in x 15 ±0.2/10');
    expect(size.diameter?.plusMinusMm).toBeCloseTo(0.0508, 9);
    expect(size.pitches[0]?.plusMinusMm).toBeCloseTo(0.02, 9);
    expect(readThreadSize('9.7 28 tpi ±0.4').pitches[0]?.plusMinusMm).toBeCloseTo((25.4 / 28 / 28) * 0.4, 9);
    const inMm = readThreadSize('21.9 ± 2 thou x 1.5').diameter;
    expect(inMm?.mm).toBeCloseTo(21.9, 9);
    expect(inMm?.plusMinusMm).toBeCloseTo(0.0508, 9);
    expect(readThreadSize('0.863 ± 2 thou x 16').diameter?.plusMinusMm).toBeCloseTo(0.0508, 9);
  });

  it('reads two diameters and the distance between them as a taper', () => {
    const size = readThreadSize('9.6 to 9.79 over 3, 28 tpi');
    expect(size.diameter?.mm).toBe(9.6);
    expect(size.taper).toEqual({ otherMm: 9.79, overMm: 3 });
    expect(size.pitches[0]?.mm).toBeCloseTo(25.4 / 28, 9);
  });

  it('takes a fitting by its dash number, and "an" as an article without one', () => {
    expect(readThreadSize('-6 jic').fitting).toEqual({ system: 'jic37', dash: 6 });
    expect(readThreadSize('an-4').fitting).toEqual({ system: 'an37', dash: 4 });
    expect(readThreadSize('is it an m10x1.25').fitting).toBeUndefined();
    expect(readThreadSize('9/16-18 jic').fitting).toEqual({ system: 'jic37', dash: undefined });
  });

  it('hears side and taper in the text', () => {
    expect(readThreadSize('female 8.6 id 28 tpi').side).toBe('female');
    expect(readThreadSize('13.1 19tpi tapered male').taperSaid).toBe('tapered');
  });

  it('lists the words it did not use', () => {
    expect(readThreadSize('coolant temp sensor 11.85 x 1.5').unused).toEqual(['coolant', 'temp', 'sensor']);
  });

  it.each([
    { text: '0', code: 'out-of-range' },
    { text: '-5', code: 'out-of-range' },
    { text: '300 x 2', code: 'out-of-range' },
    { text: '300 mm', code: 'out-of-range' },
    { text: '21.9 x 20 mm', code: 'bad-input' },
    { text: '10 km', code: 'bad-input' },
    { text: 'NaN', code: 'bad-input' },
    { text: '1,5,5', code: 'bad-input' },
    { text: '', code: 'bad-input' },
    { text: '   ', code: 'bad-input' },
    { text: '🔧', code: 'bad-input' },
    { text: '28tpi', code: 'bad-input' },
    { text: '21.9 x 1.5 x 3', code: 'bad-input' },
    { text: '13.2 to 13.8', code: 'bad-input' },
    { text: '21.9 15/0', code: 'bad-input' },
    { text: '21.9 150/10', code: 'out-of-range' },
    { text: '21.9 10 threads', code: 'bad-input' },
    { text: '21.9 0 tpi', code: 'out-of-range' },
    { text: 'male female 21.9 x 1.5', code: 'bad-input' },
    { text: '3/4-16 21.9 1.5', code: 'bad-input' },
    { text: '21.9 2.0 15/10', code: 'bad-input' },
    { text: '13.2 to 13.8 over 0', code: 'out-of-range' },
    { text: '12.7 dia, 6', code: 'which-one' },
    { text: '2.86 x 5/8', code: 'which-one' },
    { text: '0.75 x 10', code: 'which-one' },
    { text: '9'.repeat(400), code: 'bad-input' },
  ])('refuses "$text": $code', ({ text, code }) => {
    expect(refusal(text).code).toBe(code);
    expect(refusal(text).message.length).toBeGreaterThan(20);
  });
});
