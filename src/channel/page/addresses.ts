/** Which addresses in a message may be followed, and which may be fetched without anybody pressing anything. */

/** Whether a link may lead there: http and https only. */
export function isWebAddress(address: string): boolean {
  const url = URL.parse(address);
  return url !== null && (url.protocol === 'https:' || url.protocol === 'http:');
}

/**
 * The path of a file kept by the channel itself, or `undefined`. Only these are fetched unasked: a picture from
 * elsewhere would tell a stranger's server who reads the day-book.
 */
export function ownFile(address: string): string | undefined {
  const url = URL.parse(address, location.href);
  if (url === null || url.origin !== location.origin) return undefined;
  return url.pathname.startsWith('/cdn/') ? url.pathname + url.search : undefined;
}
