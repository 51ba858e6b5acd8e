/** The only source of the current time. Everything else is given one, so tests can move it, backwards too. */
export interface Clock {
  /** Milliseconds since 1970-01-01T00:00Z. */
  nowMs(): number;
}

export const systemClock: Clock = { nowMs: () => Date.now() };

/** A clock that stands still until somebody moves it. */
export interface SetClock extends Clock {
  set(ms: number): void;
}

export function clockAt(startMs: number): SetClock {
  let ms = startMs;
  return {
    nowMs: () => ms,
    set(next) {
      ms = next;
    },
  };
}

/** Waits, for the few places that must; handed in like the clock. */
export interface Timer {
  /** Runs `task` once after `ms` unless cancelled; returns the cancel. */
  after(ms: number, task: () => void): () => void;
}

export const systemTimer: Timer = {
  after(ms, task) {
    const timer = setTimeout(task, ms);
    return () => clearTimeout(timer);
  },
};
