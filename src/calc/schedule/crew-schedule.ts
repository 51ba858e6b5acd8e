import { followers, inOrder, type Prerequisites } from './graph.ts';
import { makeHeap } from './heap.ts';

/** Work as far as putting it in order needs it. */
export interface WorkPlan {
  readonly needs: Prerequisites;
  /** How many hands each takes, none more than there are. */
  readonly people: readonly number[];
  readonly hands: number;
  /** Of several that could begin, the one with the smallest of these first. */
  readonly urgency: readonly number[];
}

/** What one piece of work began after: other work, whatever released it, or nothing. */
export const AT_ONCE = -1;
export const RELEASED = -2;

/** When each piece of work begins and ends, in minutes of work, and what it began after. */
export interface Placed {
  readonly start: Float64Array;
  readonly finish: Float64Array;
  /** The place of the work whose end let it begin, AT_ONCE or RELEASED. */
  readonly after: Int32Array;
}

/** How many of those next in line are looked at for a gap; more would only cost time. */
const NEXT_IN_LINE = 12;

/**
 * Puts work in order for a crew: whoever is free takes the most urgent work that can begin. When the most urgent needs
 * more hands than are free, shorter work that is done by the time they are goes first.
 *
 * Parallel schedule generation (Kelley 1963, key SGS) with a reservation for the first in line (Lifka 1995, key
 * BACKFILL). Good, not optimal: the least time is NP-hard. Work may stop at the end of an evening and go on at the next.
 * The arrays handed back are used again by the next call.
 */
export function crewScheduler(
  plan: WorkPlan,
): (minutes: ArrayLike<number>, releases: ArrayLike<number>) => Placed {
  const { needs, people, hands, urgency } = plan;
  const count = needs.length;
  if (inOrder(needs).length < count) throw new Error('work that waits for itself cannot be put in order');
  const waiting = followers(needs);
  const [start, finish] = [new Float64Array(count), new Float64Array(count)];
  const [ready, left, after] = [new Float64Array(count), new Int32Array(count), new Int32Array(count)];
  const [running, released, eligible] = [makeHeap(), makeHeap(), makeHeap()];
  /** Work that is going on, for seeing when hands come free; at most as many as there are hands. */
  const underway = new Set<number>();

  return (minutes, releases) => {
    let free = hands;
    let now = 0;
    let last = AT_ONCE;
    for (let place = 0; place < count; place += 1) {
      left[place] = needs[place]?.length ?? 0;
      ready[place] = releases[place] ?? 0;
      after[place] = (ready[place] ?? 0) > 0 ? RELEASED : AT_ONCE;
      if (left[place] === 0) released.push(ready[place] ?? 0, place);
    }
    const begin = (place: number): void => {
      start[place] = now;
      const end = now + (minutes[place] ?? 0);
      finish[place] = end;
      if (now > (ready[place] ?? 0) && last !== AT_ONCE) after[place] = last;
      free -= people[place] ?? 0;
      running.push(end, place);
      if ((people[place] ?? 0) > 0) underway.add(place);
    };
    const end = (place: number): void => {
      free += people[place] ?? 0;
      underway.delete(place);
      if ((people[place] ?? 0) > 0) last = place;
      for (const next of waiting[place] ?? []) {
        if ((finish[place] ?? 0) >= (ready[next] ?? 0) && (finish[place] ?? 0) > 0) {
          ready[next] = finish[place] ?? 0;
          after[next] = place;
        }
        left[next] = (left[next] ?? 0) - 1;
        if (left[next] === 0) released.push(ready[next] ?? 0, next);
      }
    };
    /** When so many hands are free, if nothing else begins. */
    const freeFrom = (wanted: number): number => {
      let then = free;
      for (const place of [...underway].sort((a, b) => (finish[a] ?? 0) - (finish[b] ?? 0))) {
        then += people[place] ?? 0;
        if (then >= wanted) return finish[place] ?? 0;
      }
      return Number.POSITIVE_INFINITY;
    };
    /** Ends and releases what is due; work for no hands, a stage passed, begins at once. */
    const catchUp = (): void => {
      while (running.leastKey() <= now || released.leastKey() <= now) {
        while (running.leastKey() <= now) end(running.pop());
        while (released.leastKey() <= now) {
          const place = released.pop();
          if ((people[place] ?? 0) === 0) begin(place);
          else eligible.push(urgency[place] ?? 0, place);
        }
      }
    };
    /** Tries those in line one after the other; once one has to wait, only what is done by then goes before it. */
    const beginWhatFits = (): void => {
      const passedOver: number[] = [];
      let by = Number.POSITIVE_INFINITY;
      while (eligible.size > 0 && free > 0 && passedOver.length < NEXT_IN_LINE) {
        const place = eligible.pop();
        const wanted = people[place] ?? 0;
        if (wanted <= free && now + (minutes[place] ?? 0) <= by) {
          begin(place);
        } else {
          passedOver.push(place);
          if (by === Number.POSITIVE_INFINITY) by = freeFrom(wanted);
        }
      }
      for (const place of passedOver) eligible.push(urgency[place] ?? 0, place);
    };
    while (running.size + released.size + eligible.size > 0) {
      catchUp();
      beginWhatFits();
      now = Math.max(now, Math.min(running.leastKey(), released.leastKey()));
    }
    return { start, finish, after };
  };
}
