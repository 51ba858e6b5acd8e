/** Loads the day-book and opens the page on it; while the channel cannot be reached, says so and tries again. */
import type { PageState } from '../page-api.ts';
import { place } from './dom.ts';
import { stayAboveKeyboard } from './keyboard.ts';
import { remembered } from './memory.ts';
import { openNotices } from './notices.ts';
import { openPage } from './page.ts';
import { Refused, server } from './server.ts';

const AGAIN_MS = 2_000;
const notices = openNotices(place('foot'));

async function firstState(): Promise<PageState> {
  for (;;) {
    try {
      const state = await server.state(remembered('me'));
      notices.set('away', undefined);
      return state;
    } catch (failure) {
      if (!(failure instanceof Refused)) throw failure;
      notices.set('away', `${failure.message} It is tried again by itself.`);
      await new Promise((resolve) => setTimeout(resolve, AGAIN_MS));
    }
  }
}

stayAboveKeyboard();
openPage(await firstState(), notices);
