import type { Cause, Guide } from '../../calc/guide/guide.ts';
import type { Day } from '../../core/time.ts';
import type { TeamRecord } from '../team-record.ts';
import { guideOf } from './guide-book.ts';
import { knownOf } from './known.ts';
import { type Position, positionOf } from './position.ts';
import type { Walk } from './walk.ts';

/** A search with all that its cards need. */
export interface WalkView {
  readonly walk: Walk;
  readonly guide: Guide;
  readonly position: Position;
  readonly record: Pick<TeamRecord, 'measures' | 'stages' | 'jobs'>;
  readonly today: Day;
  readonly zone: string;
}

export function viewOf(record: TeamRecord, walk: Walk, nowMs: number, today: Day): WalkView {
  const guide = guideOf(walk.symptom);
  const position = positionOf(guide, walk, knownOf(record, walk.buildId, nowMs));
  return { walk, guide, position, record, today, zone: record.settings.read().zone };
}

/** "3 of 11 ruled out. Left, the likeliest first: …"; how far a search has come. */
export function sayHowFar(view: WalkView): string {
  const left = view.position.beliefs.suspects.map(({ cause }) => sayCause(cause));
  const shown = left.slice(0, MOST_NAMED);
  const more = left.length > MOST_NAMED ? [`${left.length - MOST_NAMED} more`] : [];
  const named = left.length === 0 ? 'nothing' : [...shown, ...more].join('; ');
  return `${sayRuledOut(view)} Left, likeliest first: ${named}.`;
}

export const sayRuledOut = ({ guide, position }: WalkView): string =>
  `${position.ruledOut.length} of ${guide.causes.length} ruled out.`;

const MOST_NAMED = 3;

/** A cause within a sentence: its name up to the first colon or comma. */
export function sayCause({ name }: Pick<Cause, 'name'>): string {
  const [short = name] = name.split(/[,:;]/);
  return /^[A-Z]([a-z]| )/.test(short) ? short.charAt(0).toLowerCase() + short.slice(1) : short;
}

/** "No crank #3" */
export const subjectOf = ({ walk, guide }: Pick<WalkView, 'walk' | 'guide'>): string =>
  `${guide.name} #${walk.id}`;
