import { z } from 'zod';
import { defineCommand } from '../src/bot/command.ts';
import { quantity } from '../src/bot/quantity-option.ts';
import { sumAnswer } from '../src/bot/sum-answer.ts';
import { type Finding, judgeBattery, type Standing } from '../src/calc/electrics/battery.ts';
import type { Tone } from '../src/core/reply.ts';
import { battery } from '../src/tables/battery.ts';

const TONES: Readonly<Record<Standing, Tone>> = { good: 'done', doubtful: 'soon', bad: 'late' };
const NAMES: Readonly<Record<Finding['reading'], string>> = {
  rest: 'At rest',
  cranking: 'Cranking',
  charging: 'Charging',
};
/** Which finding names the result when several are equally bad: what must be put right first. */
const FIRST: readonly Finding['reading'][] = ['charging', 'cranking', 'rest'];

const RANK: Readonly<Record<Standing, number>> = { bad: 0, doubtful: 1, good: 2 };

export default defineCommand({
  description: 'What rest, cranking and charging voltage say of battery and alternator',
  example: '/battery rest:"12.5 V" cranking:"9.1 V" charging:"14.2 V"',
  input: z.object({
    rest: quantity('rest', 'voltage', 'At its posts, everything off for hours').optional(),
    cranking: quantity('cranking', 'voltage', 'While the starter turns the engine').optional(),
    charging: quantity('charging', 'voltage', 'Engine at a fast idle').optional(),
  }),
  run({ rest, cranking, charging }) {
    const sum = judgeBattery(
      {
        ...(rest === undefined ? {} : { restV: rest }),
        ...(cranking === undefined ? {} : { crankingV: cranking }),
        ...(charging === undefined ? {} : { chargingV: charging }),
      },
      battery,
    );
    const { standing, findings, chargeRatio, pointsTo } = sum.value;
    const gravest = findings.toSorted(
      (one, other) =>
        RANK[one.standing] - RANK[other.standing] ||
        FIRST.indexOf(one.reading) - FIRST.indexOf(other.reading),
    )[0];
    const words = (finding: Finding): string =>
      `${NAMES[finding.reading]} ${finding.voltageV.toFixed(2)} V: ${finding.words}`;
    return sumAnswer({
      subject: 'Battery',
      result: gravest === undefined ? '' : words(gravest),
      tone: TONES[standing],
      certainty: pointsTo,
      working: findings.filter((finding) => finding !== gravest).map(words),
      calculation: sum,
      data: {
        kind: 'battery',
        standing,
        ...(chargeRatio === undefined ? {} : { chargeRatio }),
        readings: findings.map(({ reading, voltageV, standing: stands }) => ({
          reading,
          voltageV,
          standing: stands,
        })),
      },
    });
  },
});
