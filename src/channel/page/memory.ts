/** What this browser remembers between visits: who is writing, and what was not sent yet. */

const PREFIX = 'day-book.';

/** Browsers may forbid storage altogether; then nothing is remembered and everything else works. */
function storage(): Storage | undefined {
  try {
    return window.localStorage;
  } catch (refusal) {
    if (refusal instanceof DOMException) return undefined;
    throw refusal;
  }
}

export function remembered(key: string): string {
  return storage()?.getItem(PREFIX + key) ?? '';
}

/** An empty value is forgotten. Returns false when the browser has no room or no wish to keep it. */
export function remember(key: string, value: string): boolean {
  const kept = storage();
  if (kept === undefined) return false;
  try {
    if (value === '') kept.removeItem(PREFIX + key);
    else kept.setItem(PREFIX + key, value);
    return true;
  } catch (refusal) {
    if (refusal instanceof DOMException) return false;
    throw refusal;
  }
}
