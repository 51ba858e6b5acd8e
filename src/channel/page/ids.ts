/** Order of two message ids, which are numbers too large for a `number`. */
export function compareIds(a: string, b: string): number {
  return a.length - b.length || (a < b ? -1 : Number(a > b));
}

/** Id of the element that shows this message. */
export const entryId = (messageId: string): string => `entry-${messageId}`;
