import type { JsonObject } from '../../core/json.ts';
import type { Answer, Fact } from '../../core/reply.ts';
import { endCaution } from './cautions.ts';
import { endData, endLabel } from './end-data.ts';
import type { Judgement } from './judge.ts';
import type { Mating } from './mate.ts';
import { NEW_EACH_TIME, needData, needsOf, sayNeed } from './needs.ts';

/** Whether one end goes on another, in words and as data. */
export function mateAnswer(judgement: Judgement, unused: readonly string[]): Answer {
  const { a, b, mating, assumptions } = judgement;
  const needs = needsOf(a, b);
  const caution = [mating.danger, endCaution([a, b])].filter(Boolean).join(' ');
  const [threads = '', ...rest] = mating.why;
  return {
    kind: 'answer',
    subject: 'Fitting',
    result: verdictWords(mating),
    tone: mating.mates === 'yes' && mating.seals !== 'no' ? 'done' : 'late',
    certainty: [`${endLabel(a)} and ${endLabel(b)}.`, ...assumptions].join(' '),
    facts: [
      ['Threads', threads],
      ...rest.map((why, index): Fact => [index === 0 ? 'Seat' : 'Note', why]),
      ...needs.map((need): Fact => ['Needs', sayNeed(need)]),
    ],
    ...(caution === '' ? {} : { caution }),
    smallPrint: [
      ...(needs.some(({ what }) => what !== 'sealant') ? [NEW_EACH_TIME] : []),
      ...(unused.length === 0 ? [] : [`Not used: ${unused.join(' ')}`]),
      `Sizes from ${a.standard}${a.standard === b.standard ? '' : ` and ${b.standard}`} as in the tables; ${sourcesLine(mating)}`,
    ],
    audience: 'crew',
    data: { ...matingData(judgement), assumptions },
  };
}

/** The verdict in one line that can be read at arm's length. */
export function verdictWords({ mates, seals, engagement }: Mating): string {
  if (seals === 'yes') return 'Goes on and seals';
  if (mates === 'yes' && seals === 'n/a') return 'Goes together; a fastener, nothing to seal';
  switch (engagement) {
    case 'full':
      return 'Screws on, but does not seal';
    case 'jams':
      return 'Screws in part of the way and jams; does not seal';
    case 'binds':
      return 'Does not mate: starts, then binds';
    case 'loose':
      return 'Does not mate: holds by the tips of the threads only';
    case 'will-not-enter':
      return 'Does not mate: too big to enter';
    case 'drops-through':
      return 'Does not mate: too small to catch';
    case 'same-side':
      return 'Does not mate: both are of the same side';
  }
}

export function matingData({ a, b, mating }: Pick<Judgement, 'a' | 'b' | 'mating'>): JsonObject {
  const { mates, seals, engagement, why, danger, sources } = mating;
  return {
    a: endData(a),
    b: endData(b),
    mates,
    seals,
    engagement,
    why,
    danger: danger ?? null,
    needs: needsOf(a, b).map(needData),
    sources,
  };
}

/** Where the verdict is from; `COMMON` and `MEM` in plain words. */
function sourcesLine({ sources }: Mating): string {
  const read = sources.filter((key) => key !== 'COMMON' && key !== 'MEM');
  return (
    [
      ...(read.length > 0 ? [`why it seals or not: ${read.join(', ')}`] : []),
      ...(sources.includes('COMMON') ? ['common practice, no source'] : []),
      ...(sources.includes('MEM') ? ['from memory'] : []),
    ].join('; ') || 'derived from the dimensions'
  );
}
