import { type Adapter, turned } from './adapters.ts';
import type { End } from './end.ts';
import { mate } from './mate.ts';

export interface Chain {
  /** Each turned so that its `a` goes on what came before and its `b` takes what comes next. */
  readonly links: readonly Adapter[];
  /** The pairs of ends that are screwed together, in order; one more than there are links. */
  readonly joints: readonly (readonly [End, End])[];
}

/** More adapters than this end to end are a bracket's worth of leaks; a made-up hose is better. */
const MOST_LINKS = 3;

/** Fewest adapters first, then fewest taper pipe joints, then ends nearest in size. */
const COST = { link: 10_000, taperJoint: 100, apart: 1 } as const;

/**
 * The shortest chain of adapters between two ends that seals at every joint; undefined when there is none.
 *
 * Lowest cost first over the adapters' ends (key DIJKSTRA), so no chain costs less. Ends that go together and seal as
 * they are make a chain of no links.
 */
export function shortestChain(from: End, to: End, adapters: readonly Adapter[]): Chain | undefined {
  if (sealed(from, to)) return { links: [], joints: [[from, to]] };
  const bodies = adapters.flatMap((one): readonly Adapter[] =>
    one.a.id === one.b.id ? [one] : [one, turned(one)],
  );
  const byFirstEnd = Map.groupBy(bodies, ({ a }) => a.id);
  const firstEnds = [...byFirstEnd.values()].flatMap(([body]) => body?.a ?? []);
  const open: Way[] = [{ end: from, links: [], cost: 0 }];
  const closed = new Set<string>();
  for (let way = takeCheapest(open); way !== undefined; way = takeCheapest(open)) {
    if (way.done) return chainOf(from, to, way.links);
    if (closed.has(way.end.id)) continue;
    closed.add(way.end.id);
    if (way.links.length > 0 && sealed(way.end, to)) {
      open.push({ ...way, done: true, cost: way.cost + jointCost(way.end) });
    }
    if (way.links.length === MOST_LINKS) continue;
    const { end, links, cost } = way;
    for (const first of firstEnds.filter((one) => sealed(end, one))) {
      for (const link of byFirstEnd.get(first.id) ?? []) {
        if (closed.has(link.b.id)) continue;
        const step = COST.link + jointCost(end) + COST.apart * link.apart;
        open.push({ end: link.b, links: [...links, link], cost: cost + step });
      }
    }
  }
  return undefined;
}

interface Way {
  /** The end that is still to be mated. */
  readonly end: End;
  readonly links: readonly Adapter[];
  readonly cost: number;
  readonly done?: true;
}

function takeCheapest(open: Way[]): Way | undefined {
  if (open.length === 0) return undefined;
  const at = open.reduce((best, way, index) => (way.cost < (open[best]?.cost ?? Infinity) ? index : best), 0);
  return open.splice(at, 1)[0];
}

const jointCost = ({ seat }: End): number => (seat === 'taper' ? COST.taperJoint : 0);

/** Ends of opposite sides and nearly one size first: it spares the rules most pairs. */
function sealed(a: End, b: End): boolean {
  if (a.gender === b.gender || Math.abs(a.thread.basic.majorMm - b.thread.basic.majorMm) > 1) return false;
  return mate(a, b).seals === 'yes';
}

function chainOf(from: End, to: End, links: readonly Adapter[]): Chain {
  const ends = [from, ...links.flatMap(({ a, b }) => [a, b]), to];
  const joints = Array.from({ length: ends.length / 2 }, (_, index): readonly [End, End] | undefined => {
    const [a, b] = [ends[2 * index], ends[2 * index + 1]];
    return a === undefined || b === undefined ? undefined : [a, b];
  });
  return { links, joints: joints.flatMap((joint) => (joint === undefined ? [] : [joint])) };
}
