/** Work goes on this long before others are let in, ms. */
const AT_MOST_MS = 8;

/** Lets everything else that waits go first, as soon as work has gone on for some milliseconds. */
export function breather(): () => Promise<void> {
  let since = performance.now();
  return async () => {
    if (performance.now() - since < AT_MOST_MS) return;
    await new Promise<void>((resolve) => setImmediate(resolve));
    since = performance.now();
  };
}
