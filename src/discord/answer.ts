import {
  type ButtonInteraction,
  DiscordAPIError,
  type InteractionEditReplyOptions,
  type InteractionReplyOptions,
  type InteractionUpdateOptions,
  MessageFlags,
  RESTJSONErrorCodes,
} from 'discord.js';
import type { Result } from '../bot/request.ts';
import type { Timer } from '../core/clock.ts';
import type { Answer } from '../core/reply.ts';
import { type Card, cardOf } from './card.ts';
import { modalOf } from './modal.ts';
import { openProgress } from './progress.ts';
import type { Answerable } from './read-request.ts';

/** Half of what the platform allows for the first answer: past this we say "working on it" and answer later. */
export const PATIENCE_MS = 1_500;

export interface AnswerParts {
  readonly timer: Timer;
  /** Shows in the channel what the platform would not take as an answer any more. */
  readonly late: (channelId: string, answer: Answer) => Promise<void>;
  readonly report: (fault: unknown, during: string) => void;
}

/** Work on a request, which may say how far it has come. */
export type Work = (onProgress: (said: string) => void) => Promise<Result>;

/** Shows the result of a request, deferring only when it is slow: a deferred answer costs two requests more. */
export async function answer(
  interaction: Answerable,
  start: Work,
  { timer, late, report }: AnswerParts,
): Promise<void> {
  const progress = openProgress(
    (said) => interaction.editReply(editOf(cardOf(underWay(said)))),
    timer,
    (fault) => report(fault, 'showing how far the work has come'),
  );
  const work = start(progress.say);
  const quick = await within(PATIENCE_MS, work, timer);
  try {
    if (quick !== null) return await show(interaction, quick);
    await interaction.deferReply();
    progress.begin();
    const result = await work;
    await progress.end();
    await finish(interaction, result);
  } catch (error) {
    if (!tooLate(error)) throw error;
    const { reply } = await work;
    const shared = reply.kind === 'answer' && reply.audience === 'crew';
    if (shared && interaction.channelId !== null) await late(interaction.channelId, reply);
  }
}

/** What stands in the place of an answer that is still being worked on. */
export const underWay = (said: string): Answer => ({
  kind: 'answer',
  subject: 'Working on it',
  result: said,
  audience: 'crew',
  data: {},
});

/** The platform has given the interaction up, or took our answer although it did not say so in time. */
function tooLate(error: unknown): boolean {
  return error instanceof DiscordAPIError && error.code === RESTJSONErrorCodes.UnknownInteraction;
}

const alreadyShown = (error: unknown): boolean =>
  error instanceof DiscordAPIError && error.code === RESTJSONErrorCodes.InteractionHasAlreadyBeenAcknowledged;

async function show(interaction: Answerable, { reply }: Result): Promise<void> {
  try {
    if (reply.kind === 'form') {
      if (interaction.isModalSubmit()) throw new Error('the platform opens no form from a form');
      await interaction.showModal(modalOf(reply));
    } else if (reply.inPlace && canUpdate(interaction)) {
      await interaction.update(updateOf(cardOf(reply)));
    } else {
      await interaction.reply(replyOf(cardOf(reply), reply));
    }
  } catch (error) {
    // the answer to our first try was lost on the way, or the same interaction was delivered twice
    if (!alreadyShown(error)) throw error;
  }
}

/** A deferred answer is public; one meant for the asker alone takes its place in private. */
async function finish(interaction: Answerable, { reply }: Result): Promise<void> {
  if (reply.kind === 'form') throw new Error('a form must be the first answer: its handler was too slow');
  const card = cardOf(reply);
  if (reply.audience === 'crew') {
    await interaction.editReply(editOf(card));
    return;
  }
  await interaction.deleteReply();
  await interaction.followUp(replyOf(card, reply));
}

function canUpdate(interaction: Answerable): interaction is ButtonInteraction {
  return interaction.isMessageComponent() || (interaction.isModalSubmit() && interaction.isFromMessage());
}

function replyOf(card: Card, { audience }: Answer): InteractionReplyOptions {
  const flags =
    audience === 'asker'
      ? ([MessageFlags.IsComponentsV2, MessageFlags.Ephemeral] as const)
      : ([MessageFlags.IsComponentsV2] as const);
  return { ...partsOf(card), flags };
}

const updateOf = (card: Card): InteractionUpdateOptions => ({
  ...partsOf(card),
  flags: [MessageFlags.IsComponentsV2],
});
export const editOf = (card: Card): InteractionEditReplyOptions => ({
  ...partsOf(card),
  flags: [MessageFlags.IsComponentsV2],
});

/** The client's types want arrays they may change; ours are read-only. */
export function partsOf({ components, files, allowedMentions }: Card) {
  return {
    components: [...components],
    files: [...files],
    allowedMentions: { parse: [], users: [...allowedMentions.users] },
  };
}

/** The work's result, or null when it takes longer than this. */
async function within<Value>(ms: number, work: Promise<Value>, timer: Timer): Promise<Value | null> {
  const { promise, resolve } = Promise.withResolvers<null>();
  const stop = timer.after(ms, () => resolve(null));
  try {
    return await Promise.race([work, promise]);
  } finally {
    stop();
  }
}
