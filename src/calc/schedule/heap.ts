/** Numbers in a heap by a key each, the smallest key first; of equal keys the smaller number. */
export interface Heap {
  readonly size: number;
  push(key: number, value: number): void;
  /** The value with the smallest key; -1 when it is empty. */
  pop(): number;
  /** The smallest key; infinite when it is empty. */
  leastKey(): number;
}

/** A binary heap (Williams 1964, key WILLIAMS), its room kept between uses: the simulation fills it many thousand times. */
export function makeHeap(): Heap {
  const keys: number[] = [];
  const values: number[] = [];
  let size = 0;

  const before = (a: number, b: number): boolean => {
    const difference = (keys[a] ?? 0) - (keys[b] ?? 0);
    return difference < 0 || (difference === 0 && (values[a] ?? 0) < (values[b] ?? 0));
  };
  const swap = (a: number, b: number): void => {
    const [key, value] = [keys[a] ?? 0, values[a] ?? 0];
    keys[a] = keys[b] ?? 0;
    values[a] = values[b] ?? 0;
    keys[b] = key;
    values[b] = value;
  };
  const sink = (): void => {
    for (let at = 0; ; ) {
      const [left, right] = [2 * at + 1, 2 * at + 2];
      let least = at;
      if (left < size && before(left, least)) least = left;
      if (right < size && before(right, least)) least = right;
      if (least === at) return;
      swap(at, least);
      at = least;
    }
  };
  return {
    get size() {
      return size;
    },
    push(key, value) {
      keys[size] = key;
      values[size] = value;
      for (let at = size; at > 0; ) {
        const parent = (at - 1) >> 1;
        if (!before(at, parent)) break;
        swap(at, parent);
        at = parent;
      }
      size += 1;
    },
    pop() {
      if (size === 0) return -1;
      const value = values[0] ?? -1;
      size -= 1;
      swap(0, size);
      sink();
      return value;
    },
    leastKey: () => (size === 0 ? Number.POSITIVE_INFINITY : (keys[0] ?? 0)),
  };
}
