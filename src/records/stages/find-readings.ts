import { sayDay } from '../../core/time.ts';
import type { OwnLimit, Sample } from '../readings/reading.ts';
import type { Found } from './finding.ts';
import type { SayReading } from './say-reading.ts';
import type { ConditionOf } from './stage.ts';
import type { StageFacts } from './stage-facts.ts';

type Wanted = ConditionOf<'reading'>;

/**
 * The newest reading of a kind under the states asked for, within limits and fresh enough; of a kind that is read at several
 * places (cylinders), the newest of each.
 */
export function findReading(wanted: Wanted, facts: StageFacts): readonly Found[] {
  const { reading: kind, states } = wanted;
  const { say } = facts;
  const key = `reading:${[kind, ...states].join(' ')}`;
  const name = sayReadingName(wanted);
  const leads = [{ to: 'reading', kind, states }] as const;
  const all = facts.readings(kind);
  const meant = all.filter(({ conditions }) => states.every((state) => conditions.states.includes(state)));
  const newest = newestByPlace(meant);
  const [first] = newest.toSorted((a, b) => a.takenAtMs - b.takenAtMs);
  if (first === undefined) return [unread(key, name, wanted, all, facts, leads)];
  const limits = limitsOf(wanted, facts.limits());
  const bad = newest.filter(({ value }) => !within(value, limits));
  if (bad.length > 0) {
    const values = bad.map((one) => `${place(one)}${say(kind, one.value)}`).join(', ');
    return [
      { key, state: 'open', says: `${name}: ${values}, wanted ${sayLimits(kind, limits, say)}`, leads },
    ];
  }
  const said = `${place(first)}${say(kind, first.value)}`;
  const on = facts.dayOf(first.takenAtMs);
  const days = Temporal.PlainDate.from(on).until(facts.today, { largestUnit: 'days' }).days;
  if (days > wanted.freshDays) {
    const says = `${name}: ${said} is ${days} days old, and may be ${wanted.freshDays} at most`;
    return [{ key, state: 'open', says, leads }];
  }
  return [
    { key, state: 'met', says: `${name}: ${said}, read ${sayDay(on, facts.today)}`, readingId: first.id },
  ];
}

function unread(
  key: string,
  name: string,
  { reading: kind, states }: Wanted,
  all: readonly Sample[],
  { today, dayOf, say }: StageFacts,
  leads: Found['leads'],
): Found {
  // one that leaves a state unsaid may be meant; one that says another state is not
  const perhaps = all.findLast(({ conditions }) =>
    conditions.states.every((state) => states.includes(state)),
  );
  const more = leads === undefined ? {} : { leads };
  if (perhaps === undefined) return { key, state: 'open', says: `${name} has not been read`, ...more };
  const when = sayDay(dayOf(perhaps.takenAtMs), today);
  const says = `${say(kind, perhaps.value)} was read on ${when}, but nobody said whether ${states.join(' and ')}`;
  return { key, state: 'doubtful', says: `${name}: ${says}`, ...more };
}

function newestByPlace(samples: readonly Sample[]): readonly Sample[] {
  return [...Map.groupBy(samples, ({ conditions }) => conditions.place ?? '').values()].flatMap(
    (of) => of.at(-1) ?? [],
  );
}

export interface Limits {
  readonly min: number | null;
  readonly max: number | null;
}

/** The stage's own limits, unless the crew set some for this kind under these states. */
export function limitsOf({ reading, states, min, max }: Wanted, own: readonly OwnLimit[]): Limits {
  const set = own.findLast(
    ({ kind, conditions }) => kind === reading && conditions.states.every((state) => states.includes(state)),
  );
  return set ?? { min, max };
}

/** Whether a value keeps to limits; both ends belong to it, but for what rounding does. */
export function within(value: number, { min, max }: Limits): boolean {
  const slack = 1e-6 * Math.max(1, Math.abs(value));
  return (min === null || value >= min - slack) && (max === null || value <= max + slack);
}

const place = ({ conditions }: Sample): string =>
  conditions.place === undefined ? '' : `${conditions.place} `;

/** "Oil pressure (hot, idle)". */
export function sayReadingName({ reading, states }: Pick<Wanted, 'reading' | 'states'>): string {
  const name = `${reading.slice(0, 1).toUpperCase()}${reading.slice(1)}`;
  return states.length === 0 ? name : `${name} (${states.join(', ')})`;
}

/** "at least 1 bar", "from 80 °C to 105 °C". */
export function sayLimits(kind: string, { min, max }: Limits, say: SayReading): string {
  if (min !== null && max !== null) return `from ${say(kind, min)} to ${say(kind, max)}`;
  if (min !== null) return `at least ${say(kind, min)}`;
  return max === null ? 'any value' : `at most ${say(kind, max)}`;
}
