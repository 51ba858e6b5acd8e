import type { Answer, Fact } from '../../core/reply.ts';
import { sourceWords } from '../threads/facts.ts';
import { endCaution } from './cautions.ts';
import { type End, SEAT_WORDS } from './end.ts';
import { endData, endLabel } from './end-data.ts';
import { NEW_EACH_TIME, needData, needOf, ringSize, sayNeed } from './needs.ts';

/** What seals one end: how many washers of which size, or which O-ring. */
export function sealAnswer(end: End, unused: readonly string[]): Answer {
  const need = needOf(end);
  const rings = end.rings.map(
    (ring, index): Fact => [index === 0 ? 'Bore × outside × thick' : 'Or', ringSize(ring)],
  );
  return {
    kind: 'answer',
    subject: 'Seal',
    result: need === undefined ? bareWords(end) : sayNeed(need),
    certainty: `${endLabel(end)} seals on ${SEAT_WORDS[end.seat]}.`,
    facts: [
      ...rings,
      ...(need?.what === 'sealing washer'
        ? [['How many', need.count === 2 ? 'two: one each side of the banjo eye' : 'one'] as const]
        : []),
      ...(need === undefined ? [] : [['Size', sourceWords(need.source)] as const]),
    ],
    caution: [NEW_EACH_TIME, endCaution([end])].filter(Boolean).join(' '),
    smallPrint: [
      ...(need?.what === 'sealing washer'
        ? [
            'Copper is annealed soft or it does not seal; a bonded seal takes the place of one washer on a flat joint.',
          ]
        : []),
      ...(unused.length === 0 ? [] : [`Not used: ${unused.join(' ')}`]),
    ],
    audience: 'crew',
    data: { ...endData(end), need: need === undefined ? null : needData(need) },
  };
}

function bareWords({ seat }: End): string {
  if (seat === 'none' || seat === 'fastener') return 'Nothing seals it: the thread only clamps';
  return 'Metal to metal: no washer, no O-ring, no sealant';
}

/** Of the ends that were meant, those that take a washer, if any do; one side stands for both. */
export function sealedEnds(ends: readonly End[]): readonly End[] {
  const washer = ends.filter(({ seat }) => seat === 'washer');
  const left = washer.length > 0 ? washer : ends;
  return [...new Map(left.map((end) => [`${end.fittingId ?? end.thread.id} ${end.seat}`, end])).values()];
}
