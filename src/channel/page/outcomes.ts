import type { Outcome } from '../contract.ts';
import { Refused } from './server.ts';

/** What there is to say when nothing came of it; `undefined` when something did. */
export function problemIn(outcome: Outcome): string | undefined {
  switch (outcome.kind) {
    case 'refused':
      return outcome.problem;
    case 'unanswered':
      return 'No answer within three seconds. It may have been done all the same: look before you try again.';
    case 'posted':
    case 'answered':
    case 'changed':
    case 'form':
    case 'quiet':
      return undefined;
  }
}

/** Carries out a request; what came of it goes to `take`, and the sentence of what went wrong comes back. */
export async function attempt(
  request: Promise<Outcome>,
  take: (outcome: Outcome) => void,
): Promise<string | undefined> {
  try {
    const outcome = await request;
    take(outcome);
    return problemIn(outcome);
  } catch (failure) {
    if (failure instanceof Refused) return failure.message;
    throw failure;
  }
}
