import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import thread, { type ThreadInput, threadReply } from '../../../commands/thread.ts';
import { isRunnable } from '../../../src/bot/command.ts';
import { UserError } from '../../../src/core/user-error.ts';

const Data = z.looseObject({
  candidates: z.array(
    z.looseObject({ designation: z.string(), probability: z.number(), fittings: z.array(z.string()) }),
  ),
  noneProbability: z.number(),
  ambiguous: z.boolean(),
});
const dataOf = (input: ThreadInput) => Data.parse(threadReply(input).data);
const factsOf = (input: ThreadInput) => new Map(threadReply(input).facts ?? []);

function refusal(input: ThreadInput): UserError {
  try {
    threadReply(input);
  } catch (error) {
    if (error instanceof UserError) return error;
    throw error;
  }
  throw new Error(`${input.size} was answered`);
}

describe('/thread', () => {
  it('takes the size and only the size as a must', () => {
    if (!isRunnable(thread.does)) throw new Error('thread has no subcommands');
    expect(thread.does.input.safeParse({ size: '21.9 x 1.5' }).success).toBe(true);
    expect(thread.does.input.safeParse({}).success).toBe(false);
    expect(thread.does.input.safeParse({ size: '21.9 x 1.5', within: -1 }).success).toBe(false);
    expect(thread.does.input.safeParse({ size: '21.9 x 1.5', angle: '61' }).success).toBe(false);
  });

  it('gives the result in one line, with the number beside the words', () => {
    const { result, certainty, audience } = threadReply({ size: '21.9 x 1.5', side: 'male' });
    expect(result).toBe('M22 × 1.5, almost certain');
    expect(certainty).toContain('over 99 %');
    expect(audience).toBe('crew');
  });

  it('says how it read the text and how sure of it', () => {
    const { smallPrint } = threadReply({ size: 'sump 21,9 x 1,5' });
    expect(smallPrint).toContain('Read as 21.90 mm across, pitch 1.500 mm (16.9 tpi)');
    expect(smallPrint).toContain('Not used: sump');
    expect(smallPrint?.join(' ')).toContain('±0.05 mm');
    expect(smallPrint?.join(' ')).toContain('Side not said');
  });

  it('never claims one of two it cannot separate, and asks for the measurement that would', () => {
    const input = { size: '21.95 x 1.65', side: 'male', within: 0.05 } as const;
    expect(threadReply(input).result).toBe('M22 × 1.5 or 7/8-14 UNF: the readings cannot separate them');
    expect(factsOf(input).get('Measure next')).toBe('Lay a rule along ten threads: 15.0 mm or 18.1 mm?');
    expect(dataOf(input).ambiguous).toBe(true);
    expect(threadReply(input).caution).toContain('Do not force a mate');
    expect([...factsOf(input).keys()]).toEqual(['Measure next']);
  });

  it('names what would fit too behind one that is far likelier', () => {
    const input = { size: '7.9 x 1.25' } as const;
    expect(threadReply(input).result).toMatch(/^M8 × 1.25 is the likeliest; M9 × 1.25.* would fit too$/);
    expect(dataOf(input).ambiguous).toBe(true);
    expect(factsOf(input).get('Measure next')).toContain('male thread, or across the bore');
  });

  it('lists what a diameter alone leaves and asks for the pitch', () => {
    const input = { size: '21.9', side: 'male' } as const;
    expect(threadReply(input).result).toMatch(/the pitch will tell$/);
    expect(dataOf(input).candidates.map(({ designation }) => designation)).toContain('7/8-14 UNF');
    expect(factsOf(input).get('Measure next')).toMatch(/^Lay a rule along/);
  });

  it('asks for the pitch even where the diameter leaves one', () => {
    expect(factsOf({ size: '25.75', side: 'male', within: 0.01 }).get('Measure next')).toBe(
      'The pitch, to be sure: ten threads should cover 15.0 mm.',
    );
  });

  it('picks the fitting by the seat and lists all without one', () => {
    expect(dataOf({ size: '11.0 x 20tpi', side: 'male' }).candidates[0]?.fittings).toEqual([
      'JIC -4',
      'AN -4',
      'SAE45 -4',
      'ORB -4',
    ]);
    expect(dataOf({ size: '11.0 x 20tpi', side: 'male', seat: 'cone45' }).candidates[0]?.fittings).toEqual([
      'SAE45 -4',
    ]);
    expect(dataOf({ size: '9/16-18 jic' }).candidates[0]?.fittings).toEqual(['JIC -6', 'AN -6']);
    expect(dataOf({ size: '11.0 x 20tpi', side: 'male', seat: 'none' }).candidates[0]?.fittings).toEqual([]);
  });

  it('takes a dash number as the thread of that fitting, and names those there are', () => {
    expect(dataOf({ size: 'orfs -6' }).candidates[0]).toMatchObject({
      designation: '11/16-16 UN',
      fittings: ['ORFS -6'],
    });
    const { code, message } = refusal({ size: 'jic -7' });
    expect(code).toBe('not-found');
    expect(message).toContain('-6, -8');
  });

  it('gives for the winner what it takes to order and fit the mate, each with its source', () => {
    const banjo = factsOf({ size: '13.9 x 1.5', side: 'male', seat: 'washer' });
    expect(banjo.get('Seals (BANJO M14x1.5)')).toContain('14 × 18 × 1.5');
    expect(banjo.get('Seals (BANJO M14x1.5)')).toContain('new each time');
    expect(banjo.get('Tap drill')).toBe('12.5 mm (BORG, CQW)');
    expect(banjo.get('Outside')).toBe('13.732 to 13.968 mm (6g)');
    expect(banjo.get('Across the bore')).toBe('12.376 to 12.676 mm (6H)');
    expect(banjo.get('Engagement')).toContain('common practice');
    expect(banjo.get('BANJO M14x1.5')).toBe('banjo bolt, DIN 7643, spanner 19 mm; thread from BENCHCAD');
    expect(threadReply({ size: '3/4-16' }).result).toBe('3/4-16 UNF, almost certain');
    expect(threadReply({ size: '11/16 16tpi' }).result).toBe('11/16-16 UN, very likely');
    const flare = factsOf({ size: '9/16-18', seat: 'cone37' });
    expect(flare.get('JIC -6')).toContain(
      '37° flare (JIC), SAE J514, ISO 8434-2, tube 9.525 mm (0.375 in); thread from PERKINS',
    );
    expect(flare.get('Torque JIC -6')).toContain("The maker's figure outranks this.");
    expect(flare.get('Tap drill')).toContain('13.10 mm');
    expect(factsOf({ size: '14.1 x 18tpi', side: 'female', seat: 'boss-oring' }).size).toBeGreaterThan(0);
    expect(factsOf({ size: '9/16-18', seat: 'boss-oring' }).get('Seals (ORB -6)')).toContain('AS568 -906');
    expect(factsOf({ size: '9/16-18', seat: 'face-oring' }).get('Seals (ORFS -4)')).toContain('flat face');
    expect(
      factsOf({ size: '15.73 x 18tpi', side: 'male', seat: 'cone45' }).get('Seals (SAE45 -6)'),
    ).toContain('45° cone');
    expect(factsOf({ size: 'M8x1.25' }).get('Spanner')).toContain('13 mm');
    expect(factsOf({ size: 'G 1/4' }).get('Seals')).toContain('not on the thread');
    expect(factsOf({ size: '6.25 x 26tpi', side: 'male' }).get('Basic sizes')).toContain('26 tpi');
    expect(factsOf({ size: 'R 1/8' }).get('Same as')).toBe('JIS R 1/8');
    expect(factsOf({ size: 'R 1/8' }).get('Engagement')).toBeUndefined();
  });

  it('says what nobody looked up', () => {
    expect(factsOf({ size: 'an -4' }).get('AN -4')).toContain('partly from memory');
    expect(factsOf({ size: '11/16-16', seat: 'cone45' }).get('SAE45 -7')).toContain('from memory');
    expect(threadReply({ size: '1/4 bsw' }).smallPrint?.at(-1)).toContain('partly from memory, else');
    expect(threadReply({ size: 'M8x1.25' }).smallPrint?.at(-1)).toBe(
      'Sizes from FREECAD, ISO724, ISO965 (docs/sources.md)',
    );
  });

  it('states no torque that nobody published', () => {
    const labels = [...factsOf({ size: '13.9 x 1.5', side: 'male' }).keys()];
    expect(labels.filter((label) => label.startsWith('Torque'))).toEqual([]);
  });

  it('warns where a thread that screws on may not seal', () => {
    expect(threadReply({ size: '9/16-18 jic' }).caution).toContain('need not seal');
    expect(threadReply({ size: 'M8x1.25' }).caution).toBeUndefined();
  });

  it('says that NPTF cannot be told from NPT', () => {
    expect(threadReply({ size: '1/8-27 npt' }).smallPrint?.join(' ')).toContain('NPTF');
  });

  it('calls a name a name', () => {
    expect(threadReply({ size: 'G 1/4' }).smallPrint).toContain(
      'A name, not a measurement: measure it before ordering.',
    );
    expect(threadReply({ size: 'm10x1.5x60' }).smallPrint?.[0]).toBe(
      'Read as the size 10 metric, pitch 1.500 mm (16.9 tpi), 60 mm long',
    );
  });

  it('warns of a stretched bolt and of readings that disagree', () => {
    expect(threadReply({ size: '9.8 x 15.3/10', side: 'male' }).caution).toContain('stretched');
    const twice = threadReply({ size: '9.8 15.0/10 12.4/8', side: 'male' });
    expect(twice.caution).toContain('disagree');
    expect(twice.data['pitchesDisagree']).toBe(true);
  });

  it('works a taper out from two diameters', () => {
    const input = { size: '9.60 to 9.79 over 3, 28tpi', side: 'male', within: 0.03 } as const;
    expect(dataOf(input).candidates[0]?.designation).toBe('R 1/8');
    expect(threadReply(input).smallPrint?.[0]).toContain('9.79 mm across 3 mm further on');
  });

  it('reads a whole size as a name unless it is said to be a reading', () => {
    expect(dataOf({ size: '14 x 1.5', side: 'female' }).candidates[0]?.designation).toBe('M14x1.5');
    expect(dataOf({ size: '6 x 1', side: 'female', within: 0.05 }).candidates[0]?.designation).toBe('M7x1');
  });

  it('says when no thread in the tables fits, and names the nearest', () => {
    const { result, certainty, facts } = threadReply({ size: '30.5 x 3.3', side: 'male' });
    expect(result).toBe('No thread in the tables fits these readings');
    expect(certainty).toMatch(/Measure again/);
    expect(new Map(facts).has('Tap drill')).toBe(false);
    expect(threadReply({ size: '5.0 x 0.1 mm' }).certainty).toContain('over the crests, or across the bore');
    expect(threadReply({ size: '99.0', side: 'male' }).facts?.[0]?.[1]).toContain('The pitch');
  });

  it('refuses a text and an option that contradict each other', () => {
    expect(refusal({ size: 'female 8.6 28tpi', side: 'male' }).message).toContain('option side says male');
    expect(refusal({ size: 'tapered 9.7 28tpi', taper: 'parallel' }).code).toBe('bad-input');
    expect(
      dataOf({ size: 'female 8.75 28tpi', side: 'female', taper: 'parallel', angle: '55' }).candidates[0]
        ?.designation,
    ).toBe('G 1/8');
  });

  it('shows markup and mentions as they were typed, or refuses them', () => {
    expect(threadReply({ size: '@everyone **21.9** x 1.5' }).smallPrint).toContain('Not used: everyone');
    expect(refusal({ size: "'; DROP TABLE orders; --" }).code).toBe('bad-input');
  });
});
