/** λ asked for at a load and speed; `logged` is what the log's own column says there, NaN where it has none. */
export type TargetAt = (loadKPa: number, speedRpm: number, logged: number) => number;

/** A point of a target table. Without a speed it holds for all of them. */
export interface TargetPoint {
  readonly loadKPa: number;
  readonly speedRpm?: number;
  readonly lambda: number;
}

/**
 * Petrol with boost, rich enough under load to be careful: common practice, no source. The maker's or the mapper's figure always
 * goes first.
 */
export const SAFE_TARGET: readonly TargetPoint[] = [
  { loadKPa: 70, lambda: 1 },
  { loadKPa: 85, lambda: 0.94 },
  { loadKPa: 100, lambda: 0.88 },
  { loadKPa: 140, lambda: 0.82 },
  { loadKPa: 200, lambda: 0.78 },
];

/** Reads a table of targets: straight lines between its loads, and between its speeds where it has some; held at its ends. */
export function targetTable(points: readonly TargetPoint[]): (loadKPa: number, speedRpm: number) => number {
  const speeds = [...new Set(points.map(({ speedRpm }) => speedRpm ?? 0))].sort((a, b) => a - b);
  const columns = speeds.map((speed) => {
    const own = points.filter(({ speedRpm = 0 }) => speedRpm === speed).sort((a, b) => a.loadKPa - b.loadKPa);
    return { speed, own };
  });
  const along = (values: readonly (readonly [number, number])[], x: number): number => {
    const [first, last] = [values[0], values.at(-1)];
    if (first === undefined || last === undefined) return Number.NaN;
    if (x <= first[0]) return first[1];
    if (x >= last[0]) return last[1];
    const next = values.findIndex(([at]) => at >= x);
    const [from, to] = [values[next - 1] ?? first, values[next] ?? last];
    return from[1] + ((to[1] - from[1]) * (x - from[0])) / (to[0] - from[0]);
  };
  return (loadKPa, speedRpm) =>
    along(
      columns.map(({ speed, own }) => [
        speed,
        along(
          own.map((point) => [point.loadKPa, point.lambda]),
          loadKPa,
        ),
      ]),
      speedRpm,
    );
}
