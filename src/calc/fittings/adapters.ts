import type { EndBook } from './book.ts';
import type { End } from './end.ts';

/** A body with two ends, as the trade makes it. */
export interface Adapter {
  /** Its two ends, `JIC -8 male_ORB -10 male`; reads back through `findAdapter`. */
  readonly id: string;
  /** "union", "port adapter". */
  readonly shape: string;
  readonly a: End;
  readonly b: End;
  /** How many sizes apart its ends are. */
  readonly apart: number;
}

interface EndPattern {
  readonly system: string;
  readonly gender: string;
  readonly seat: string | undefined;
}

export interface AdapterTables {
  readonly shapes: readonly {
    readonly name: string;
    readonly a: EndPattern;
    readonly b: EndPattern;
    readonly apart: number;
  }[];
  /** Dash sizes in order; `apart` counts steps of it. */
  readonly ladder: readonly number[];
  /** The dash size of the tube that a metric port usually serves, by thread. */
  readonly metricPorts: ReadonlyMap<string, number>;
}

/**
 * Every adapter of the shapes in the table, in all sizes the ends are made in.
 *
 * Source: common practice, no source; see the notes of data/fittings/adapter-shapes.json.
 */
export function adapterCatalogue(
  book: EndBook,
  { shapes, ladder, metricPorts }: AdapterTables,
): readonly Adapter[] {
  const rungOf = (end: End): number | undefined => {
    const dash = end.dash ?? metricPorts.get(end.thread.id);
    return dash === undefined ? undefined : nearestRung(ladder, dash);
  };
  const matching = ({ system, gender, seat }: EndPattern): readonly Sized[] =>
    book.ends.flatMap((end) => {
      const fits =
        end.system === system &&
        end.gender === gender &&
        (seat === undefined ? end.usual : end.seat === seat);
      const rung = fits && end.thread.family !== 'whitworth' ? rungOf(end) : undefined;
      return rung === undefined ? [] : [{ end, rung }];
    });
  const bodies = shapes.flatMap(({ name, a, b, apart }) =>
    matching(a).flatMap((first) =>
      matching(b).flatMap((second) => {
        const distance = Math.abs(first.rung - second.rung);
        return distance > apart ? [] : [adapter(name, first.end, second.end, distance)];
      }),
    ),
  );
  return [...new Map(bodies.map((body) => [bodyKey(body), body])).values()];
}

interface Sized {
  readonly end: End;
  readonly rung: number;
}

function adapter(shape: string, a: End, b: End, apart: number): Adapter {
  return { id: `${a.id}_${b.id}`, shape, a, b, apart };
}

/** A reducer from -6 to -8 is the one from -8 to -6. */
function bodyKey({ a, b }: Adapter): string {
  return [a.id, b.id].toSorted().join('_');
}

function nearestRung(ladder: readonly number[], dash: number): number {
  return ladder.reduce(
    (best, rung, index) => (Math.abs(rung - dash) < Math.abs((ladder[best] ?? 0) - dash) ? index : best),
    0,
  );
}

/** The adapter with these two ends, turned as they are named. */
export function findAdapter(adapters: readonly Adapter[], id: string): Adapter | undefined {
  const found = adapters.find((one) => one.id === id || turned(one).id === id);
  return found === undefined || found.id === id ? found : turned(found);
}

/** The same body, the other way round. */
export function turned({ a, b, ...rest }: Adapter): Adapter {
  return { ...rest, id: `${b.id}_${a.id}`, a: b, b: a };
}

/** Its name for an order: "port adapter, JIC -8 male to ORB -10 male". */
export function adapterName({ shape, a, b }: Pick<Adapter, 'shape' | 'a' | 'b'>): string {
  return `${shape}, ${a.id} to ${b.id}`;
}
