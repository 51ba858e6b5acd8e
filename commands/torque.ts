import { z } from 'zod';
import { defineCommand, subcommand } from '../src/bot/command.ts';
import { quantity } from '../src/bot/quantity-option.ts';
import { sumAnswer } from '../src/bot/sum-answer.ts';
import { type ChosenBolt, chosenBolt } from '../src/calc/fasteners/chosen-bolt.ts';
import { knownBolt } from '../src/calc/fasteners/known-bolt.ts';
import { clampAnswer, lubricationAnswer, torqueAnswer } from '../src/calc/fasteners/torque-answer.ts';
import { stretchAnswer, turnAnswer } from '../src/calc/fasteners/turn-answer.ts';
import { engagementAnswer, patternAnswer, wrenchAnswer } from '../src/calc/fasteners/workshop-answer.ts';
import { threadCatalogue } from '../src/calc/threads/catalogue.ts';
import type { Calculation } from '../src/core/calculation.ts';
import { readBoltClass } from '../src/phrases/bolt-class.ts';
import { readThreadSize } from '../src/phrases/threads/size.ts';
import { boltClasses, frictions, headMeans, publishedAreas } from '../src/tables/fasteners.ts';
import { threadTables } from '../src/tables/threads.ts';

const threads = threadCatalogue(threadTables);
const classNames = [...new Set(boltClasses.map(({ id }) => id))];

/** Coefficient of friction of the usual handbook tables (VDI 2230). */
const TABLE_FRICTION = 0.12;
const size = z.string().min(1).max(40).describe('Bolt: M10, M10x1.25, 3/8-16, 7/16 UNF');
const boltClass = z.string().min(1).max(20).describe('On its head: 8.8, 10.9, 12.9, grade 8, A2-70');
const friction = z
  .enum(['dry', 'dry-black', 'oiled', 'cadmium', 'moly'])
  .default('oiled')
  .describe('State of thread and head');
const share = quantity('share', 'percent', 'Clamp force over the proof load').prefault('75 %');
const suggestClass = (typed: string) =>
  classNames
    .filter((name) => name.includes(typed.toLowerCase()))
    .map((name) => ({ label: name, value: name }));

type FrictionName = z.output<typeof friction>;

const threadOf = (typed: string) => knownBolt(readThreadSize(typed), threads);
const boltOf = (typedSize: string, typedClass: string): Calculation<ChosenBolt> =>
  chosenBolt(threadOf(typedSize), readBoltClass(typedClass, classNames), boltClasses);

function nutFactorOf(name: FrictionName): number {
  const row = frictions.find(({ id }) => id === name);
  if (row === undefined) throw new RangeError(`no nut factor for ${name}`);
  return row.nutFactor;
}

const boltInput = z.object({
  size,
  class: boltClass,
  friction,
  share,
  k: z.number().min(0.05).max(0.5).optional().describe('Nut factor K, if measured; instead of friction'),
  mu: z.number().min(0.04).max(0.4).optional().describe('Coefficient of friction, for the check beside it'),
  maker: quantity('maker', 'torque', "The maker's figure, if there is one").optional(),
});

const bolt = subcommand({
  description: 'Tightening torque from size, class, friction and clamp share',
  example: '/torque bolt size:M10 class:10.9',
  assumes: ['friction', 'share'],
  suggest: { class: suggestClass },
  input: boltInput,
  run(asked, { say }) {
    const chosen = boltOf(asked.size, asked.class);
    const { thread } = chosen.value;
    const { majorMm } = thread.basic;
    const answer = torqueAnswer(
      {
        bolt: chosen,
        nutFactor: asked.k ?? nutFactorOf(asked.friction),
        state: asked.k === undefined ? asked.friction : `K ${asked.k}`,
        shareRatio: asked.share,
        mu: asked.mu ?? TABLE_FRICTION,
        headMeanMm: thread.family === 'iso-metric' ? headMeans.get(majorMm) : undefined,
        tableAreaMm2: publishedAreas.get(thread.id),
        makerNm: asked.maker,
      },
      say,
    );
    return sumAnswer({ subject: 'Torque', ...answer });
  },
});

const clamp = subcommand({
  description: 'Clamp force a torque gives, and how near the bolt is to its proof load',
  example: '/torque clamp size:M10 class:10.9 torque:"65 Nm"',
  assumes: ['friction'],
  suggest: { class: suggestClass },
  input: z.object({
    size,
    class: boltClass,
    torque: quantity('torque', 'torque', 'Torque at the bolt, e.g. 65 Nm'),
    friction,
  }),
  run({ size: typed, class: said, torque: torqueNm, friction: state }, { say }) {
    const asked = { bolt: boltOf(typed, said), nutFactor: nutFactorOf(state), state, torqueNm };
    return sumAnswer({ subject: 'Torque', ...clampAnswer(asked, say) });
  },
});

const change = subcommand({
  description: 'Torque for the same clamp force when the lubrication changes',
  example: '/torque change torque:"100 Nm" from:dry to:moly',
  input: z.object({
    torque: quantity('torque', 'torque', 'Torque as it is given'),
    from: friction.describe('What it was given for'),
    to: friction.describe('What it is now'),
  }),
  run({ torque: torqueNm, from, to }, { say }) {
    const lubricated = (state: FrictionName) => ({ state, nutFactor: nutFactorOf(state) });
    const answer = lubricationAnswer(torqueNm, [lubricated(from), lubricated(to)], say);
    return sumAnswer({ subject: 'Torque', ...answer });
  },
});

const angle = subcommand({
  description: 'Torque and angle: estimate of the turn after snug, or of the clamp force of a turn',
  example: '/torque angle size:M10 class:10.9 grip:"50 mm"',
  assumes: ['snug', 'friction', 'share', 'clamped'],
  suggest: { class: suggestClass },
  input: z.object({
    size,
    class: boltClass,
    grip: quantity('grip', 'length', 'Clamped length under the head, e.g. 50 mm'),
    turn: quantity('turn', 'angle', 'Angle after snug; left out, the one for the clamp share').optional(),
    load: quantity('load', 'force', 'Load on the joint, to see what of it the bolt gets').optional(),
    snug: quantity(
      'snug',
      'torque',
      'Torque that brings the parts together; left out, 20 % of proof',
    ).optional(),
    clamped: z.enum(['steel', 'aluminium', 'cast iron']).default('steel').describe('What is clamped'),
    friction,
    share,
  }),
  run(asked, { say }) {
    const answer = turnAnswer(
      {
        bolt: boltOf(asked.size, asked.class),
        nutFactor: nutFactorOf(asked.friction),
        state: asked.friction,
        gripMm: asked.grip,
        clamped: asked.clamped,
        snugNm: asked.snug,
        shareRatio: asked.share,
        angleDeg: asked.turn,
        loadN: asked.load,
      },
      say,
    );
    return sumAnswer({ subject: 'Torque and angle', ...answer });
  },
});

const stretch = subcommand({
  description: 'How far a bolt stretches at its clamp share, for stretch-measured bolts',
  example: '/torque stretch size:M10x1.25 class:12.9 length:"45 mm"',
  assumes: ['share'],
  suggest: { class: suggestClass },
  input: z.object({
    size,
    class: boltClass,
    length: quantity('length', 'length', 'Length that stretches, head to first engaged thread'),
    shank: quantity(
      'shank',
      'length',
      'Diameter of a reduced shank; left out, the stress area counts',
    ).optional(),
    share,
  }),
  run({ size: typed, class: said, length: lengthMm, shank: shankMm, share: shareRatio }, { say }) {
    const answer = stretchAnswer({ bolt: boltOf(typed, said), lengthMm, shankMm, shareRatio }, say);
    return sumAnswer({ subject: 'Stretch', ...answer });
  },
});

const engagement = subcommand({
  description: 'How much thread a bolt needs in aluminium',
  example: '/torque engagement size:M8 class:8.8',
  assumes: ['metal', 'strength'],
  suggest: { class: suggestClass },
  input: z.object({
    size,
    class: boltClass,
    metal: z.enum(['cast', 'wrought']).default('cast').describe('Aluminium that is tapped'),
    strength: quantity('strength', 'pressure', 'Its tensile strength if known, e.g. 250 MPa').optional(),
  }),
  run({ size: typed, class: said, metal, strength }, { say }) {
    const strengthMpa = strength === undefined ? undefined : strength / 1000;
    const answer = engagementAnswer({ bolt: boltOf(typed, said), metal, strengthMpa }, say);
    return sumAnswer({ subject: 'Engagement', ...answer });
  },
});

const pattern = subcommand({
  description: 'Order in which to tighten, and the stages',
  example: '/torque pattern bolts:10 layout:rows torque:"90 Nm"',
  input: z.object({
    bolts: z.number().int().min(2).max(40).describe('How many'),
    layout: z.enum(['circle', 'rows']).default('circle').describe('On a circle, or on two rows as a head is'),
    torque: quantity('torque', 'torque', 'Full torque, for the stages').optional(),
  }),
  run({ bolts, layout, torque: torqueNm }, { say }) {
    return sumAnswer({ subject: 'Order', ...patternAnswer({ bolts, layout, torqueNm }, say) });
  },
});

const wrench = subcommand({
  description: 'What to set the torque wrench to with an extension in line',
  example: '/torque wrench torque:"130 Nm" wrench:"500 mm" extension:"150 mm"',
  input: z.object({
    torque: quantity('torque', 'torque', 'Torque wanted at the bolt'),
    wrench: quantity('wrench', 'length', 'Square drive to the middle of the grip'),
    extension: quantity('extension', 'length', 'Square drive to the bolt, in line'),
  }),
  run({ torque: torqueNm, wrench: wrenchMm, extension: extensionMm }, { say }) {
    const answer = wrenchAnswer({ torqueNm, wrenchMm, extensionMm }, say);
    return sumAnswer({ subject: 'Torque wrench', ...answer });
  },
});

export default defineCommand({
  description: 'Tightening torque, clamp force, angle, stretch, order, engagement in aluminium',
  subcommands: { bolt, clamp, change, angle, stretch, engagement, pattern, wrench },
});
