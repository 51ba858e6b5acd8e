/** Things numbered from 0, and what each must wait for. */
export type Prerequisites = readonly (readonly number[])[];

/** What waits for each thing: the same arrows the other way round. */
export function followers(needs: Prerequisites): readonly (readonly number[])[] {
  const waiting: number[][] = needs.map(() => []);
  for (const [index, before] of needs.entries()) for (const one of before) waiting[one]?.push(index);
  return waiting;
}

/**
 * An order in which each thing comes after everything it waits for (Kahn 1962, key KAHN); shorter than `needs` when
 * there is a loop, and then without the things in it or behind it.
 */
export function inOrder(needs: Prerequisites): readonly number[] {
  const waiting = followers(needs);
  const left = needs.map((before) => before.length);
  const order = left.flatMap((count, index) => (count === 0 ? [index] : []));
  for (let at = 0; at < order.length; at += 1) {
    for (const next of waiting[order[at] ?? 0] ?? []) {
      const still = (left[next] ?? 0) - 1;
      left[next] = still;
      if (still === 0) order.push(next);
    }
  }
  return order;
}

/** The shortest chain from one thing to another along what each waits for, both ends included; null when there is none. */
export function chainBetween(needs: Prerequisites, from: number, to: number): readonly number[] | null {
  const cameFrom = new Map<number, number>([[from, from]]);
  const queue = [from];
  for (let at = 0; at < queue.length; at += 1) {
    const here = queue[at] ?? from;
    if (here === to) return backTo(from, to, cameFrom);
    for (const next of needs[here] ?? []) {
      if (cameFrom.has(next)) continue;
      cameFrom.set(next, here);
      queue.push(next);
    }
  }
  return null;
}

function backTo(from: number, to: number, cameFrom: ReadonlyMap<number, number>): readonly number[] {
  const chain = [to];
  for (let here = to; here !== from; ) {
    here = cameFrom.get(here) ?? from;
    chain.push(here);
  }
  return chain.reverse();
}

/** Some loop, each thing waiting for the next and the last for the first; null when there is none. */
export function someLoop(needs: Prerequisites): readonly number[] | null {
  const free = new Set(inOrder(needs));
  for (const [index, before] of needs.entries()) {
    if (free.has(index)) continue;
    for (const one of before) {
      const chain = chainBetween(needs, one, index);
      if (chain !== null) return [index, ...chain.slice(0, -1)];
    }
  }
  return null;
}

/** Everything that `from` waits for, directly or through others, without itself unless there is a loop. */
export function allBefore(needs: Prerequisites, from: number): ReadonlySet<number> {
  const seen = new Set<number>();
  const stack = [...(needs[from] ?? [])];
  for (let next = stack.pop(); next !== undefined; next = stack.pop()) {
    if (seen.has(next)) continue;
    seen.add(next);
    stack.push(...(needs[next] ?? []));
  }
  return seen;
}

/** For each thing, how many of the first `count` things wait for it, directly or through others, itself not counted. */
export function countsBehind(needs: Prerequisites, count: number): readonly number[] {
  const waiting = followers(needs);
  // what was seen is marked by who is looking, so that nothing has to be cleared in between
  const seenBy = new Int32Array(needs.length).fill(-1);
  const stack = new Int32Array(needs.length + 1);
  return needs.map((_before, from) => {
    let [size, found] = [1, 0];
    stack[0] = from;
    seenBy[from] = from;
    while (size > 0) {
      size -= 1;
      for (const next of waiting[stack[size] ?? from] ?? []) {
        if (seenBy[next] === from) continue;
        seenBy[next] = from;
        stack[size] = next;
        size += 1;
        if (next < count) found += 1;
      }
    }
    return found;
  });
}
