import type { Hands, OpenForm, Outcome, Upload } from '../contract.ts';
import { LIMITS } from '../rules/limits.ts';
import { ApiError } from '../wire/api-error.ts';
import type { JsonObject } from '../wire/json.ts';
import { Kind } from '../wire/numbers.ts';
import { attachmentOf } from '../world/attachments.ts';
import type { Deed } from '../world/interactions.ts';
import { wireMessage } from '../world/message-payload.ts';
import { react } from '../world/reactions.ts';
import type { ChannelState } from '../world/state.ts';
import type { Attachment, Channel, Command, Message, Person } from '../world/things.ts';
import { commandData } from './command-data.ts';
import { chooseData, pressData, usablePart } from './component-data.ts';
import { type FormValues, formData } from './form-data.ts';
import { suggestionsFor } from './suggest.ts';
import { type LineProblem, parseCommandLine } from './typed-line.ts';
import { allowedCommands, withMentions } from './what-people-see.ts';

/** One person's hands on the channel. `botThere` tells whether any bot would learn of what they do. */
export function handsOf(state: ChannelState, person: Person, botThere: () => boolean): Hands {
  const { world, messages, interactions } = state;

  const channelFor = (id: string | undefined): Channel | undefined =>
    id === undefined ? world.textChannels()[0] : world.channel(id);

  const act = async (deed: Deed): Promise<Outcome> => {
    const interaction = interactions.start(deed);
    if (!botThere()) interaction.settle({ kind: 'unanswered', interactionId: interaction.id });
    return interaction.outcome;
  };

  const use = async (
    messageId: string,
    customId: string,
    dataOf: (part: JsonObject) => JsonObject | LineProblem,
  ): Promise<Outcome> => {
    const source = visible(state, person, messageId);
    const channel = source === undefined ? undefined : world.channel(source.channelId);
    if (source === undefined || channel === undefined) return refused('That message is gone.');
    const part = usablePart(source, customId);
    const data = isProblem(part) ? part : dataOf(part);
    if (isProblem(data)) return refused(data.problem);
    const { ownApp = false } = source.asked ?? {};
    return act({ kind: Kind.component, person, channel, data, source, ...(ownApp ? { ownApp } : {}) });
  };

  const typeCommand = (
    line: string,
    channel: Channel,
    commands: readonly Command[],
    files: readonly Upload[],
    ownApp: boolean,
  ): Promise<Outcome> | Outcome => {
    const typed = parseCommandLine(line, commands);
    if (typed.kind === 'problem') return refused(typed.problem);
    const kept = keepFiles(state, files);
    const made = commandData(world, typed, kept, channel.id);
    if (made.kind === 'problem') return refused(made.problem);
    const name = [typed.command.name, ...typed.branches.map((branch) => branch.name)].join(' ');
    const through = ownApp ? { ownApp } : {};
    return act({ kind: Kind.command, person, channel, data: made.data, name, line, ...through });
  };

  return {
    id: person.id,
    name: person.name,
    directChannelId: () => world.directChannel(person.id).id,
    sees: (channelId) => {
      const all = [...world.storage.all(channelId), ...messages.passing(channelId, person.id)];
      return all.sort((a, b) => (BigInt(a.id) < BigInt(b.id) ? -1 : 1)).map((one) => wireMessage(world, one));
    },

    async type(line, { channelId, files = [], ownApp = false } = {}) {
      const channel = channelFor(channelId);
      if (channel === undefined || !mayEnter(channel, person)) return refused('There is no such channel.');
      const wrong = filesProblem(state, files);
      if (wrong !== undefined) return refused(wrong);
      const text = line.trim();
      if (text.startsWith('/')) {
        return typeCommand(text, channel, allowedCommands(world, person, channel, ownApp), files, ownApp);
      }
      return say(state, person, channel, text, files);
    },

    edit: async (messageId, line) => {
      const message = visible(state, person, messageId);
      if (message === undefined) return refused('That message is gone.');
      if (message.authorId !== person.id) return refused('Only who wrote it can change it.');
      const changed = messages.change({ ...message, content: withMentions(world, line.trim()) });
      return { kind: 'posted', message: wireMessage(world, changed) };
    },

    suggest: async (line, caret, { channelId } = {}) => {
      const channel = channelFor(channelId);
      if (channel === undefined) return [];
      return suggestionsFor(state, person, channel, botThere, line, caret);
    },

    press: (messageId, customId) => use(messageId, customId, pressData),
    choose: (messageId, customId, values) =>
      use(messageId, customId, (part) => chooseData(world, part, values)),

    react: async (messageId, emoji, on = true) => {
      const message = visible(state, person, messageId);
      if (message === undefined) return refused('That message is gone.');
      try {
        react(state, message, person, emoji, on);
      } catch (error) {
        if (!(error instanceof ApiError)) throw error;
        return refused(`${error.message}.`);
      }
      return { kind: 'posted', message: wireMessage(world, messages.find(messageId) ?? message) };
    },

    async submit(form: OpenForm, values: FormValues) {
      const opened = interactions.opened(form.interactionId, person.id);
      if (opened === undefined) return refused('That form is closed; open it again.');
      const data = formData(world, opened.form, values);
      if (isProblem(data)) return refused(data.problem);
      const { channel, source, line, ownApp = false } = opened.deed;
      const asked = { ...(line === undefined ? {} : { line }), ...(ownApp ? { ownApp } : {}) };
      return act({ kind: Kind.modal, person, channel, data, source, ...asked });
    },
  };
}

const refused = (problem: string): Outcome => ({ kind: 'refused', problem });

const isProblem = (value: JsonObject | LineProblem): value is LineProblem =>
  value['kind' as keyof typeof value] === 'problem';

const mayEnter = (channel: Channel, person: Person): boolean =>
  channel.recipientId === undefined || channel.recipientId === person.id;

/** A message this person can see. */
function visible({ messages }: ChannelState, person: Person, id: string): Message | undefined {
  if (!/^\d{1,19}$/.test(id)) return undefined;
  const message = messages.find(id);
  return message?.privateTo === undefined || message.privateTo === person.id ? message : undefined;
}

function filesProblem({ uploadLimitBytes }: ChannelState, files: readonly Upload[]): string | undefined {
  const megabytes = (bytes: number) => `${(bytes / 1_000_000).toFixed(1)} MB`;
  const large = files.find((file) => file.bytes.byteLength > uploadLimitBytes);
  if (large !== undefined) {
    return `"${large.name}" has ${megabytes(large.bytes.byteLength)}; at most ${megabytes(uploadLimitBytes)} can be sent.`;
  }
  const most = LIMITS.message.attachments;
  return files.length > most
    ? `At most ${most} files go with one message; these are ${files.length}.`
    : undefined;
}

function keepFiles({ world }: ChannelState, files: readonly Upload[]): readonly Attachment[] {
  return files.map((file) => {
    const attachment = attachmentOf(world.newId(), file);
    const { id, filename: name, type } = attachment;
    world.storage.saveFile({ id, name, type, bytes: file.bytes });
    return attachment;
  });
}

function say(
  state: ChannelState,
  person: Person,
  channel: Channel,
  text: string,
  files: readonly Upload[],
): Outcome {
  const { world, messages } = state;
  const most = LIMITS.message.content;
  const content = withMentions(world, text);
  if (content === '' && files.length === 0) return refused('There is nothing to send yet.');
  if (content.length > most) {
    return refused(`A message has at most ${most} characters; this has ${content.length}.`);
  }
  const message = world.storage.together(() =>
    messages.post({ channelId: channel.id, author: person, content, attachments: keepFiles(state, files) }),
  );
  return { kind: 'posted', message: wireMessage(world, message) };
}
