import type { Answer } from '../core/reply.ts';
import { UserError } from '../core/user-error.ts';
import type { RunCommand } from './request.ts';

/** What a command comes to when another command has the answer: the request to run, and what is said of its answer. */
export interface Handover {
  readonly kind: 'handover';
  readonly asks: RunCommand;
  readonly finish: (answer: Answer) => Answer;
}

/** A question that brings its own card: its buttons carry all they need, so it works outside a crew's record too. */
export class AskedBack extends UserError {
  readonly card: Answer;

  constructor(card: Answer) {
    super('which-one', card.result);
    this.card = card;
  }
}
