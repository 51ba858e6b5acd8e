import { z } from 'zod';
import { action, defineCommand } from '../src/bot/command.ts';
import type { Hand } from '../src/bot/hand.ts';
import type { Answer } from '../src/core/reply.ts';

function undo(hand: Hand, change?: number): Answer {
  const { said, changeId } = hand.undo(change);
  return {
    kind: 'answer',
    subject: 'Taken back',
    result: said,
    tone: 'done',
    certainty: 'Everything is as it was before. Undo once more to bring it back.',
    buttons: [
      { label: 'Bring it back', does: { command: 'undo', action: 'this', args: { change: changeId } } },
    ],
    audience: 'crew',
    data: { undone: said, change: changeId },
  };
}

export default defineCommand({
  description: 'Take back your own last change',
  example: '/undo',
  input: z.object({}),
  run: (_input, hand) => undo(hand),
  actions: {
    this: action({
      input: z.object({ change: z.coerce.number().int().positive() }),
      run: ({ change }, hand) => undo(hand, change),
    }),
  },
});
