import type { Interactions } from './interactions.ts';
import type { Messages } from './messages.ts';
import type { World } from './world.ts';

/** What the routes, the hands and the page share. */
export interface ChannelState {
  readonly world: World;
  readonly messages: Messages;
  readonly interactions: Interactions;
  /** Largest single file, in bytes. */
  readonly uploadLimitBytes: number;
}
