import { make } from './dom.ts';

/** What hinders at present, in plain sentences above the line; each is there exactly as long as it is so. */
export interface Notices {
  set(what: 'away' | 'bot' | 'typing' | 'sending', sentence: string | undefined): void;
}

/** After this long, in milliseconds, a line under way is said to be. */
const SLOW_MS = 400;

export function openNotices(foot: HTMLElement): Notices {
  const element = make('div', { class: 'notices', role: 'status' });
  const sentences = new Map<string, string>();
  foot.append(element);
  return {
    set(what, sentence) {
      if (sentences.get(what) === sentence) return;
      if (sentence === undefined) sentences.delete(what);
      else sentences.set(what, sentence);
      const rows = [...sentences].map(([kind, words]) =>
        make('p', { 'data-notice': kind, dir: 'auto' }, words),
      );
      element.replaceChildren(...rows);
    },
  };
}

/** Says that a line is on its way when that takes long enough to wonder. */
export async function saySlow<Answer>(notices: Notices, request: Promise<Answer>): Promise<Answer> {
  const timer = setTimeout(() => notices.set('sending', 'Sending …'), SLOW_MS);
  try {
    return await request;
  } finally {
    clearTimeout(timer);
    notices.set('sending', undefined);
  }
}
