import type { Timer } from '../core/clock.ts';

/** Shows how far long work has come. */
export interface Progress {
  /** Remembers the newest words; they are shown once there is something to show them in. */
  readonly say: (said: string) => void;
  /** There is a message now that may be edited. */
  begin(): void;
  /** Nothing more is shown; resolves when the last edit under way has ended, so that it cannot come after the answer. */
  end(): Promise<void>;
}

/** No oftener than this, so that the answer itself never waits for the platform's limit on edits. */
const PACE_MS = 1_000;

/** @param show edits the message; what it throws goes to `report` and never to the work itself. */
export function openProgress(
  show: (said: string) => Promise<unknown>,
  timer: Timer,
  report: (fault: unknown) => void,
): Progress {
  let newest: string | undefined;
  let shown: string | undefined;
  let open = false;
  let under: Promise<void> | undefined;
  let rest: (() => void) | undefined;

  const next = (): void => {
    if (!open || under !== undefined || rest !== undefined) return;
    if (newest === undefined || newest === shown) return;
    shown = newest;
    under = show(newest)
      .then(
        () => {},
        (fault: unknown) => report(fault),
      )
      .then(() => {
        under = undefined;
      });
    rest = timer.after(PACE_MS, () => {
      rest = undefined;
      next();
    });
    void under.then(next);
  };
  return {
    say(said) {
      newest = said;
      next();
    },
    begin() {
      open = true;
      next();
    },
    async end() {
      open = false;
      rest?.();
      rest = undefined;
      await under;
    },
  };
}
