/** Writes the documented answer to too many requests: status 429, `Retry-After`, and whose limit it was. */
export function tooMany<R>(
  header: (name: string, value: string) => void,
  answer: (body: { message: string; retry_after: number; global: boolean; code: number }) => R,
  retryAfterMs: number,
  global: boolean,
): R {
  const seconds = retryAfterMs / 1000;
  // Whole seconds as documented; below one the fraction, so that nobody waits a second for a few milliseconds.
  header('Retry-After', String(seconds < 1 ? seconds : Math.ceil(seconds)));
  header('X-RateLimit-Scope', global ? 'global' : 'user');
  if (global) header('X-RateLimit-Global', 'true');
  return answer({ message: 'You are being rate limited.', retry_after: seconds, global, code: 0 });
}
