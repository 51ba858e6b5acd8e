import type { AlreadyDone } from '../core/already-done.ts';
import type { Answer } from '../core/reply.ts';
import type { Failure } from './request.ts';

/** A refusal or a fault, shown to the asker alone. */
export function failureReply({ code, message, reference }: Failure): Answer {
  return {
    kind: 'answer',
    subject: code === 'outage' ? 'Broken on our side' : 'Not done',
    result: message,
    tone: 'late',
    audience: 'asker',
    data: { code, ...(reference === undefined ? {} : { reference }) },
  };
}

/** The same request once more: nothing was done twice. */
export function alreadyDoneReply({ said, changeId }: AlreadyDone): Answer {
  return {
    kind: 'answer',
    subject: 'Already saved',
    result: `That was saved the first time: ${said}.`,
    tone: 'done',
    audience: 'asker',
    data: { alreadySaved: true, change: changeId, said },
  };
}
