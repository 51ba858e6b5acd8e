import { tidyKeepingCase } from './quantity/tidy.ts';

/** A name with how many of it, as one way to read what was typed. */
export interface CountedName {
  readonly name: string;
  /** Undefined for all of it. */
  readonly quantity: number | undefined;
}

/** What was typed of one thing, with its readings, the likeliest first. */
export interface CountedText {
  readonly typed: string;
  readonly readings: readonly CountedName[];
}

const BEFORE = /^(\d{1,5})\s*(?:[xX]|pcs?|of)?\s+(.+)$/u;
const AFTER = /^(.+?)\s*(?:[xX:]\s*(\d{1,5})|\s(\d{1,5})\s*(?:[xX]|pcs?)?)$/u;

/**
 * Things with counts, as said of a parcel: `bolt x2; #13; 2 gaskets, hose`. The whole text as a name comes first, so that
 * `stud M8 x 40` is not forty of anything where there is such a stud.
 */
export function readCountedNames(typed: string): readonly CountedText[] {
  return typed
    .split(/[;\n\r]+|,\s+|\s+and\s+/u)
    .map((piece) => tidyKeepingCase(piece))
    .filter((piece) => piece !== '')
    .map((piece) => ({ typed: piece, readings: readingsOf(piece) }));
}

function readingsOf(piece: string): readonly CountedName[] {
  const [, count = '', after] = BEFORE.exec(piece) ?? [];
  const [, before, withX, bare] = AFTER.exec(piece) ?? [];
  return [
    { name: piece, quantity: undefined },
    ...(after === undefined ? [] : [{ name: after, quantity: Number(count) }]),
    ...(before === undefined ? [] : [{ name: before.trim(), quantity: Number(withX ?? bare) }]),
  ];
}
