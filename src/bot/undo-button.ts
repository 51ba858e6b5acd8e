import type { Button } from '../core/reply.ts';
import type { Changed } from './hand.ts';

/** Takes back the change an answer has just reported. */
export function undoButton({ changeId }: Changed<unknown>): Button {
  return { label: 'Undo', does: { command: 'undo', action: 'this', args: { change: changeId } } };
}
