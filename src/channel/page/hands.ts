import type { OpenForm, Outcome, Suggestion } from '../contract.ts';
import type { FormPorts } from './form.ts';
import { attempt } from './outcomes.ts';
import { Refused, server } from './server.ts';
import type { Session } from './session.ts';

/** What the person on this page can do; a returned sentence says what went wrong. */
export interface Hands {
  send(line: string, files: readonly File[]): Promise<string | undefined>;
  press(messageId: string, customId: string): Promise<string | undefined>;
  choose(messageId: string, customId: string, values: readonly string[]): Promise<string | undefined>;
  submit: FormPorts['submit'];
  /** What fits the line; nothing while the channel is away, or once the line has moved on. */
  suggest(line: string, caret: number, signal: AbortSignal): Promise<readonly Suggestion[]>;
}

/** Acts in the name of whoever is writing at the moment; what came of it goes to `take`. */
export function handsOf(session: () => Session, take: (outcome: Outcome) => void): Hands {
  const as = () => session().me;
  return {
    send: (line, files) =>
      attempt(server.type({ as: as(), channelId: session().state.channelId, line }, files), take),
    press: (messageId, customId) => attempt(server.press({ as: as(), messageId, customId }), take),
    choose: (messageId, customId, values) =>
      attempt(server.choose({ as: as(), messageId, customId, values }), take),
    async submit(form: OpenForm, values) {
      let keep = false;
      const problem = await attempt(
        server.submit({ as: as(), interactionId: form.interactionId, values }),
        (outcome) => {
          // A private answer to a form is most likely about what is wrong in it; its text is wanted again.
          keep = outcome.kind === 'answered' && outcome.private;
          take(outcome);
        },
      );
      return problem === undefined ? { keep } : { problem };
    },
    async suggest(line, caret, signal) {
      if (as() === '') return [];
      try {
        const request = { as: as(), channelId: session().state.channelId, line, caret };
        return (await server.suggest(request, signal)).suggestions;
      } catch (failure) {
        if (failure instanceof Refused || failure instanceof DOMException) return [];
        throw failure;
      }
    },
  };
}
