import type { LiveFrame } from '../page-api.ts';

/** Waits between attempts, in milliseconds; the last one is kept. */
const WAITS_MS = [300, 1_000, 2_000, 4_000, 8_000] as const;

export interface Live {
  /** Listens as this person in this channel from now on. */
  listen(as: string, channelId: string): void;
  readonly isOpen: () => boolean;
}

export interface LiveEvents {
  frame(frame: LiveFrame): void;
  /** The connection was lost; it is being tried again. */
  away(): void;
}

/** Keeps a socket to the channel open, by itself, for as long as the page is. */
export function openLive(events: LiveEvents): Live {
  let socket: WebSocket | undefined;
  let address = '';
  let attempt = 0;
  let timer: ReturnType<typeof setTimeout> | undefined;

  const connect = (): void => {
    clearTimeout(timer);
    const opened = new WebSocket(address);
    socket = opened;
    opened.addEventListener('message', (event: MessageEvent<string>) => {
      if (socket !== opened) return;
      attempt = 0;
      // Sent by this page's own server, kept to page-api.ts by the compiler.
      events.frame(JSON.parse(event.data) as LiveFrame);
    });
    opened.addEventListener('close', () => {
      if (socket !== opened) return;
      socket = undefined;
      events.away();
      timer = setTimeout(connect, WAITS_MS[Math.min(attempt, WAITS_MS.length - 1)]);
      attempt += 1;
    });
  };

  const atOnce = (): void => {
    if (socket === undefined && address !== '' && document.visibilityState === 'visible') connect();
  };
  window.addEventListener('online', atOnce);
  document.addEventListener('visibilitychange', atOnce);

  return {
    isOpen: () => socket?.readyState === WebSocket.OPEN,
    listen(as, channelId) {
      const query = new URLSearchParams({ ...(as === '' ? {} : { as }), channel: channelId });
      const wanted = `${location.origin.replace(/^http/u, 'ws')}/page-api/live?${query.toString()}`;
      if (wanted === address) return;
      address = wanted;
      const old = socket;
      socket = undefined;
      old?.close();
      connect();
    },
  };
}
