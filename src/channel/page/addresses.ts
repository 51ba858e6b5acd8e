/** Which addresses in a message may be followed, and which may be fetched without anybody pressing anything. */

/** Whether a link may lead there: http and https only. */
export function isWebAddress(address: string): boolean {
  return URL.canParse(address) && /^https?:$/u.test(new URL(address).protocol);
}

/**
 * The path of a file kept by the channel itself, or `undefined`. Only these are fetched unasked: a picture from
 * elsewhere would tell a stranger's server who reads the day-book.
 */
export function ownFile(address: string): string | undefined {
  if (!URL.canParse(address, location.href)) return undefined;
  const url = new URL(address, location.href);
  const isOurs = url.origin === location.origin && url.pathname.startsWith('/cdn/');
  return isOurs ? url.pathname + url.search : undefined;
}
