/** A point of a series. */
export interface Plain {
  readonly atMs: number;
  readonly value: number;
}

/**
 * At most so many points that look like all of them: of each stretch of time its lowest and highest, in their order. No
 * peak is lost, and the ends stay.
 *
 * @param points by time, the oldest first.
 */
export function thinOut<Point extends Plain>(points: readonly Point[], most: number): readonly Point[] {
  const [first] = points;
  const last = points.at(-1);
  if (points.length <= most || first === undefined || last === undefined) return points;
  const buckets = Math.max(1, Math.floor((most - 2) / 2));
  const width = (last.atMs - first.atMs) / buckets || 1;
  const kept: Point[] = [first];
  const inBucket = Map.groupBy(points.slice(1, -1), ({ atMs }) =>
    Math.min(buckets - 1, Math.floor((atMs - first.atMs) / width)),
  );
  for (const [, some] of [...inBucket].toSorted(([a], [b]) => a - b)) {
    const low = some.reduce((a, b) => (b.value < a.value ? b : a));
    const high = some.reduce((a, b) => (b.value > a.value ? b : a));
    kept.push(...(low === high ? [low] : [low, high].toSorted((a, b) => some.indexOf(a) - some.indexOf(b))));
  }
  return [...kept, last];
}
