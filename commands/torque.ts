import { z } from 'zod';
import { defineCommand, subcommand } from '../src/bot/command.ts';
import type { Hand } from '../src/bot/hand.ts';
import { quantity } from '../src/bot/quantity-option.ts';
import { sumAnswer } from '../src/bot/sum-answer.ts';
import { checkByFriction, type FrictionCheck } from '../src/calc/fasteners/check-by-friction.ts';
import { type ChosenBolt, chosenBolt } from '../src/calc/fasteners/chosen-bolt.ts';
import { engagementLength } from '../src/calc/fasteners/engagement.ts';
import { serviceStress } from '../src/calc/fasteners/joint.ts';
import { knownBolt } from '../src/calc/fasteners/known-bolt.ts';
import { STAGES, tighteningOrder } from '../src/calc/fasteners/pattern.ts';
import { boltStretch } from '../src/calc/fasteners/stretch.ts';
import { clampOfTorque, torqueAfterChange, torqueForShare } from '../src/calc/fasteners/tightening.ts';
import { turnAfterSnug } from '../src/calc/fasteners/turn.ts';
import { wrenchSetting } from '../src/calc/fasteners/wrench.ts';
import { threadCatalogue } from '../src/calc/threads/catalogue.ts';
import { together } from '../src/calc/together.ts';
import { sayNumber } from '../src/calc/units/say.ts';
import type { Sayer } from '../src/calc/units/sayer.ts';
import type { Calculation } from '../src/core/calculation.ts';
import type { Answer } from '../src/core/reply.ts';
import { readBoltClass } from '../src/phrases/bolt-class.ts';
import { readThreadSize } from '../src/phrases/threads/size.ts';
import { boltClasses, frictions, headMeans, publishedAreas } from '../src/tables/fasteners.ts';
import { threadTables } from '../src/tables/threads.ts';

const threads = threadCatalogue(threadTables);
const classNames = [...new Set(boltClasses.map(({ id }) => id))];

/** Coefficient of friction of the usual handbook tables (VDI 2230). */
const TABLE_FRICTION = 0.12;
/** Of the proof load, where the torque that brings the parts together is not said; common practice. */
const SNUG_SHARE = 0.2;
/** From here on a maker's figure and the sum are not about the same bolt. */
const FAR_APART = 0.25;
/** Tensile strength of tapped aluminium, MPa; from memory (EN 1706 AC-42100-T6, EN 755-2 AW-6082-T6). */
const ALUMINIUM_MPA = { cast: 230, wrought: 290 } as const;

const MAKER = {
  caveats: [
    "The maker's figure outranks this, always: for head, rod, main, flywheel and wheel bolts use nothing else, and new bolts where it says so. Brakes, steering and lifting are work for somebody qualified.",
  ],
};

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

const percentOf = (ratio: number): string => `${Math.round(ratio * 100)} %`;
function stagesOf(nm: number, say: Sayer): string {
  return STAGES.map((part) => say.one('torque', nm * part, 2)).join(', ');
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

type TorqueInput = z.output<typeof boltInput>;

/**
 * Tightening torque of a bolt, beside the maker's figure where there is one.
 *
 * @throws UserError when size or class cannot be read, or the class is not made in that size.
 */
function torqueReply(asked: TorqueInput, { say }: Pick<Hand, 'say'>): Answer {
  const bolt = boltOf(asked.size, asked.class);
  const { thread, name, row, stressAreaMm2, basisMpa, proofN, breakingN } = bolt.value;
  const nutFactor = asked.k ?? nutFactorOf(asked.friction);
  const sum = torqueForShare({
    majorMm: thread.basic.majorMm,
    stressAreaMm2,
    proofMpa: basisMpa,
    shareRatio: asked.share,
    nutFactor,
  });
  const { torqueNm, clampN } = sum.value;
  const table = publishedAreas.get(thread.id);
  const { mu = TABLE_FRICTION } = asked;
  const metricHead = thread.family === 'iso-metric' ? headMeans.get(thread.basic.majorMm) : undefined;
  const check = checkByFriction(bolt.value, clampN, mu, metricHead);
  const state = asked.k === undefined ? asked.friction : `K ${asked.k}`;
  const { maker } = asked;
  const apart = maker === undefined ? 0 : Math.abs(torqueNm / maker - 1);
  return sumAnswer({
    subject: 'Torque',
    result:
      maker === undefined
        ? `${say.both('torque', torqueNm)} for ${name}, ${state}`
        : `The maker's ${say.both('torque', maker)} stands; the sum says ${say.one('torque', torqueNm)}`,
    ...(apart > FAR_APART
      ? {
          tone: 'soon' as const,
          certainty: `${percentOf(apart)} apart: look again at class, thread and lubrication.`,
        }
      : {}),
    working: [
      `clamps ${say.one('force', clampN)}, ${percentOf(asked.share)} of ${say.one('force', proofN)} proof load; breaks from ${say.one('force', breakingN)}`,
      `stages ${stagesOf(maker ?? torqueNm, say)}`,
      `stress area ${say.one('area', stressAreaMm2)} worked out${table === undefined ? '' : `, ${say.one('area', table)} in the table`}`,
      checkWords(check.value, mu, proofN, say),
    ],
    calculation: together(
      MAKER,
      bolt,
      sum,
      { assumptions: ['stages are common practice'], sources: ['COMMON'] },
      check,
    ),
    data: {
      kind: 'torque',
      torqueNm: maker ?? torqueNm,
      computedTorqueNm: torqueNm,
      clampN,
      diameterMm: thread.basic.majorMm,
      pitchMm: thread.pitchMm,
      propertyClass: row.id,
      nutFactor,
      shareRatio: asked.share,
      stressAreaMm2,
      proofLoadN: proofN,
      breakingLoadN: breakingN,
    },
  });
}

function checkWords(
  { how, torqueNm, clampN }: FrictionCheck,
  mu: number,
  proofN: number,
  say: Sayer,
): string {
  return how === 'most'
    ? `by VDI 2230 at friction ${mu}, 90 % of yield: ${say.both('torque', torqueNm)}, clamps ${percentOf(clampN / proofN)} of proof`
    : `the same clamp force at friction ${mu}: ${say.both('torque', torqueNm)}`;
}

const bolt = subcommand({
  description: 'Tightening torque from size, class, friction and clamp share',
  example: '/torque bolt size:M10 class:10.9',
  assumes: ['friction', 'share'],
  suggest: { class: suggestClass },
  input: boltInput,
  run: torqueReply,
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
    const chosen = boltOf(typed, said);
    const { thread, name, proofN } = chosen.value;
    const sum = clampOfTorque({ torqueNm, majorMm: thread.basic.majorMm, nutFactor: nutFactorOf(state) });
    const shareRatio = sum.value.clampN / proofN;
    const tooMuch =
      shareRatio > 0.9
        ? { caveats: ['That is more than 90 % of the proof load: it may stretch for good, or break.'] }
        : {};
    return sumAnswer({
      subject: 'Torque',
      result: `${say.both('torque', torqueNm)} clamps ${say.one('force', sum.value.clampN)}, ${percentOf(shareRatio)} of proof load`,
      ...(shareRatio > 0.9 ? { tone: 'late' as const } : {}),
      working: [`${name}, ${state}; proof load ${say.one('force', proofN)}`],
      calculation: together(tooMuch, MAKER, chosen, sum),
      data: {
        kind: 'clamp',
        torqueNm,
        clampN: sum.value.clampN,
        proofLoadN: proofN,
        shareRatio,
        diameterMm: thread.basic.majorMm,
        pitchMm: thread.pitchMm,
      },
    });
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
    const sum = torqueAfterChange({
      torqueNm,
      fromNutFactor: nutFactorOf(from),
      toNutFactor: nutFactorOf(to),
    });
    return sumAnswer({
      subject: 'Torque',
      result: `${say.both('torque', sum.value.torqueNm)} ${to} clamps as ${say.one('torque', torqueNm)} ${from}`,
      calculation: together(MAKER, sum),
      data: { kind: 'torque-change', torqueNm: sum.value.torqueNm, fromTorqueNm: torqueNm },
    });
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
    const chosen = boltOf(asked.size, asked.class);
    const { thread, name, stressAreaMm2, proofN, basisMpa } = chosen.value;
    const nutFactor = nutFactorOf(asked.friction);
    const snugNm =
      asked.snug ??
      torqueForShare({
        majorMm: thread.basic.majorMm,
        stressAreaMm2,
        proofMpa: basisMpa,
        shareRatio: SNUG_SHARE,
        nutFactor,
      }).value.torqueNm;
    const sum = turnAfterSnug(chosen.value, {
      gripMm: asked.grip,
      clamped: asked.clamped,
      snugNm,
      nutFactor,
      wanted: asked.turn === undefined ? { shareRatio: asked.share } : { angleDeg: asked.turn },
    });
    const { angleDeg, clampN, snugClampN, advanceMm, pastProof, boltKnPerMm, partsKnPerMm } = sum.value;
    const service =
      asked.load === undefined
        ? undefined
        : serviceStress({ boltKnPerMm, partsKnPerMm, clampN, loadN: asked.load, stressAreaMm2 });
    return sumAnswer({
      subject: 'Torque and angle',
      result: pastProof
        ? `Past proof load: it is reached about ${Math.round(angleDeg)}° after ${say.one('torque', snugNm)}`
        : `About ${Math.round(angleDeg)}° after ${say.one('torque', snugNm)} clamps ${say.one('force', clampN)}, ${percentOf(clampN / proofN)} of proof`,
      ...(pastProof ? { tone: 'late' as const } : {}),
      certainty: 'An estimate: stiffness and friction are both assumed.',
      working: [
        `${name}: ${say.one('force', snugClampN)} at snug; the turn moves it ${say.both('length', advanceMm)} along`,
        `bolt ${sayNumber(boltKnPerMm, 3)} kN/mm, parts ${sayNumber(partsKnPerMm, 3)} kN/mm`,
        ...(service === undefined
          ? []
          : [
              `of a load on the joint the bolt gets ${percentOf(service.value.boltShareRatio)}: ${Math.round(service.value.serviceMpa)} MPa, ${Math.round(service.value.clampMpa)} MPa from tightening`,
            ]),
      ],
      calculation: together(
        pastProof
          ? {
              caveats: [
                'Past the proof load the bolt stretches for good, and only its maker can say how far is allowed.',
              ],
            }
          : {},
        MAKER,
        chosen,
        sum,
        service ?? {},
        { assumptions: [`snug at ${say.one('torque', snugNm)}, ${asked.friction}`] },
      ),
      data: {
        kind: 'torque-angle',
        angleDeg,
        clampN,
        pastProofLoad: pastProof,
        proofLoadN: proofN,
        snugTorqueNm: snugNm,
        snugClampN,
        advanceMm,
      },
    });
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
  run({ size: typed, class: said, length: lengthMm, shank, share: shareRatio }, { say }) {
    const chosen = boltOf(typed, said);
    const { name, stressAreaMm2, proofN } = chosen.value;
    const clampN = shareRatio * proofN;
    const areaMm2 = shank === undefined ? stressAreaMm2 : (Math.PI / 4) * shank ** 2;
    const sum = boltStretch({ clampN, lengthMm, areaMm2 });
    const { stretchMm } = sum.value;
    return sumAnswer({
      subject: 'Stretch',
      result: `${name} stretches ${say.both('clearance', stretchMm)} at ${say.one('force', clampN)}`,
      working: [
        `${percentOf(shareRatio)} of ${say.one('force', proofN)} proof load over ${say.one('area', areaMm2)}`,
      ],
      calculation: together(MAKER, chosen, sum),
      data: {
        kind: 'bolt-stretch',
        stretchMm,
        clampN,
        lengthMm,
        areaMm2,
      },
    });
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
    const chosen = boltOf(typed, said);
    const { thread, name, stressAreaMm2, row } = chosen.value;
    const { basic, limits, pitchMm } = thread;
    const sum = engagementLength({
      majorMm: basic.majorMm,
      pitchMm,
      leastMajorMm: limits.major.minMm,
      mostPitchDiameterMm: limits.femalePitch?.maxMm ?? basic.pitchDiameterMm,
      stressAreaMm2,
      boltTensileMpa: row.tensileMpa,
      holeTensileMpa: strength === undefined ? ALUMINIUM_MPA[metal] : strength / 1000,
    });
    const { engagementMm, diametersRatio, turns } = sum.value;
    return sumAnswer({
      subject: 'Engagement',
      result: `${name} needs ${say.both('length', engagementMm)} of full thread in aluminium, ${diametersRatio.toFixed(1)} × d`,
      working: [`${turns.toFixed(1)} turns; the usual rule is 1.5 to 2 × d in aluminium (common practice)`],
      calculation: together(
        MAKER,
        chosen,
        sum,
        strength === undefined ? { assumptions: [`${metal} aluminium, heat-treated`], sources: ['MEM'] } : {},
      ),
      data: {
        kind: 'thread-engagement',
        engagementMm,
        engagementRatio: diametersRatio,
        turns,
        diameterMm: basic.majorMm,
        pitchMm,
      },
    });
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
    const sum = tighteningOrder({ bolts, layout });
    const numbering =
      layout === 'circle'
        ? 'numbered round the circle'
        : `1 to ${bolts / 2} along the near row, the rest along the far one`;
    const rounds = torqueNm === undefined ? STAGES.map(percentOf).join(', ') : stagesOf(torqueNm, say);
    return sumAnswer({
      subject: 'Order',
      result: bolts > 16 ? `${bolts} bolts, ${layout}: the order is below` : sum.value.order.join(' '),
      working: [
        ...(bolts > 16 ? [sum.value.order.join(' ')] : []),
        numbering,
        `the whole round at each of ${rounds}, then once more at the last`,
      ],
      calculation: together(MAKER, sum, { assumptions: ['order and stages are common practice'] }),
      data: {
        kind: 'tightening-order',
        order: [...sum.value.order],
        ...(torqueNm === undefined ? {} : { torqueNm }),
      },
    });
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
    const sum = wrenchSetting({ torqueNm, wrenchMm, extensionMm });
    return sumAnswer({
      subject: 'Torque wrench',
      result: `Set ${say.both('torque', sum.value.settingNm)} for ${say.one('torque', torqueNm)} at the bolt`,
      calculation: sum,
      data: { kind: 'wrench-setting', settingNm: sum.value.settingNm, torqueNm },
    });
  },
});

export default defineCommand({
  description: 'Tightening torque, clamp force, angle, stretch, order, engagement in aluminium',
  subcommands: { bolt, clamp, change, angle, stretch, engagement, pattern, wrench },
});
