import { airLeak } from './air-leak.ts';
import { misfire } from './misfire.ts';
import type { Suspicion, SuspicionQuestion } from './suspicion.ts';

/** What else than the fuel table could make this drive read lean, the misfire first: it also spoils what a leak is told by. */
export function suspect(question: SuspicionQuestion): readonly Suspicion[] {
  const failing = misfire(question);
  const leak = airLeak(question, new Set(failing?.cells));
  return [failing, leak].filter((each) => each !== undefined);
}
