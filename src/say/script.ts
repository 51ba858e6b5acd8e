import type { Result } from '../bot/request.ts';
import type { Hands, LocalChannel, OpenForm, Outcome, Upload, WireMessage } from '../channel/contract.ts';
import type { Chargehand } from '../chargehand.ts';
import type { Json, JsonObject } from '../core/json.ts';
import { UserError } from '../core/user-error.ts';
import type { Heard } from '../discord/hear.ts';
import { keepFiles, uploadOf } from './files.ts';
import { formText, menus, plainText, pressable } from './plain-text.ts';

/** One line's outcome, as `--json` prints it. Stable: scripts read it. */
export interface Spoken {
  readonly input: string;
  readonly ok: boolean;
  /** What a person would read. */
  readonly text: string;
  /** The command's typed result, units in its key names; null when there is none. */
  readonly data: JsonObject | null;
  /** One sentence, when it was refused. */
  readonly error: string | null;
}

export interface ScriptParts {
  readonly channel: LocalChannel;
  readonly chargehand: Chargehand;
  /** Results by interaction, as the bot reported them. */
  readonly results: ReadonlyMap<string, Result>;
  /** What came of a message without a slash, once the bot has listened to it. */
  readonly heard: (messageId: string) => Promise<Heard | null>;
  readonly as: string;
  /** Sets the clock to a wall time of the team, `2026-12-21T08:31`. */
  readonly setClock: (wallTime: string) => void;
  /** Where the files and pictures of answers are put; nowhere when left out. */
  readonly filesTo?: string;
}

/** Runs typed lines one after the other through the same hands as the page. */
export interface Script {
  run(line: string): Promise<Spoken>;
}

/** What stands in the place of an answer that is still being worked on. */
const UNDER_WAY = 'Working on it';

export function openScript(parts: ScriptParts): Script {
  const { channel, chargehand, results, heard, as, setClock, filesTo } = parts;
  let hands: Hands = channel.hands(as);
  let lastMessage: WireMessage | undefined;
  let lastForm: OpenForm | undefined;
  let attached: readonly Upload[] = [];
  const read = (message: WireMessage): string => plainText(message, (id) => channel.nameOf(id));

  const directives: Readonly<Record<string, (rest: string) => Promise<Omit<Spoken, 'input'>>>> = {
    async tick() {
      const posted = await chargehand.tick();
      const messages = channel.channels.flatMap(({ id }) => channel.messages(id));
      const shown = posted.flatMap(({ messageId }) => messages.find(({ id }) => id === messageId) ?? []);
      lastMessage = shown.at(-1) ?? lastMessage;
      const data = { posted: posted.map(({ answer }): Json => answer.data) };
      return done(shown.map(read).join('\n\n') || 'Nothing was due.', data);
    },
    async at(rest) {
      try {
        setClock(rest);
      } catch (error) {
        if (!(error instanceof UserError)) throw error;
        return refused(error.message);
      }
      return done(`It is now ${rest}.`, {});
    },
    async as(rest) {
      hands = channel.hands(rest);
      return done(`${rest} is typing.`, {});
    },
    async press(rest) {
      const [label = '', order] = rest.split(/\s+(?=#\d+$)/);
      const button = lastMessage && findButton(lastMessage, label, order?.slice(1));
      if (!lastMessage || !button?.custom_id)
        return refused(`There is no button "${rest}" on the last message.`);
      return told(await hands.press(lastMessage.id, button.custom_id));
    },
    async private(rest) {
      if (rest === '') return refused('Say what: @private 12.4 afr.');
      return told(await typed(rest, hands.directChannelId()));
    },
    async choose(rest) {
      const menu =
        lastMessage && menus(lastMessage.components).find(({ options }) => optionIn(options, rest));
      const value = menu && optionIn(menu.options, rest);
      if (!lastMessage || !menu || value === undefined)
        return refused(`There is no "${rest}" to choose on the last message.`);
      return told(await hands.choose(lastMessage.id, menu.customId, [value]));
    },
    async attach(rest) {
      try {
        const upload = await uploadOf(rest);
        attached = [...attached, upload];
        return done(`${upload.name} goes with the next line.`, { bytes: upload.bytes.length });
      } catch (error) {
        if (!(error instanceof UserError)) throw error;
        return refused(error.message);
      }
    },
    async fill(rest) {
      if (!lastForm) return refused('No form is open. @press the button that opens one.');
      const form = lastForm;
      lastForm = undefined;
      return told(await hands.submit(form, { ...standing(form), ...fieldsIn(rest) }));
    },
  };

  function typed(line: string, channelId?: string): Promise<Outcome> {
    const files = attached;
    attached = [];
    return hands.type(line, { files, ...(channelId === undefined ? {} : { channelId }) });
  }

  /** A line without a slash: the bot answers it, asks back, or has nothing to say to it. */
  async function listened({ id, channel_id: channelId }: WireMessage): Promise<Omit<Spoken, 'input'>> {
    const answer = await heard(id);
    if (answer === null) return done('Nothing was asked.', { kind: 'none' });
    const { result, messageId } = answer;
    lastMessage = channel.messages(channelId).find((message) => message.id === messageId) ?? lastMessage;
    const text = lastMessage === undefined ? '' : read(lastMessage);
    const data = result.reply.kind === 'answer' ? result.reply.data : null;
    return { ok: result.ok, text, data, error: result.ok ? null : result.error.message };
  }

  async function told(outcome: Outcome): Promise<Omit<Spoken, 'input'>> {
    if (outcome.kind === 'refused') return refused(outcome.problem);
    if (outcome.kind === 'unanswered') return refused('No answer came in time.');
    if (outcome.kind === 'posted') return listened(outcome.message);
    const text = textOf(outcome.kind === 'answered' ? await finished(outcome) : outcome);
    const result = results.get(outcome.interactionId);
    if (result && !result.ok) {
      const data = result.reply.kind === 'answer' ? result.reply.data : null;
      return { ok: false, text, data, error: result.error.message };
    }
    return done(text, result?.reply.kind === 'answer' ? result.reply.data : null);
  }

  /** Waits for the answer itself where the message so far only says how far the work has come. */
  async function finished(answered: Outcome & { kind: 'answered' }): Promise<Outcome & { kind: 'answered' }> {
    const begun = answered.message;
    if (!read(begun).startsWith(UNDER_WAY)) return answered;
    const now = channel.messages(begun.channel_id).find(({ id }) => id === begun.id);
    if (now !== undefined && !read(now).startsWith(UNDER_WAY)) return { ...answered, message: now };
    const { promise, resolve } = Promise.withResolvers<WireMessage>();
    const stop = channel.onMessage((message, what) => {
      if (message.id !== begun.id) return;
      // an answer meant for one person alone takes the place of what all could see
      if (what === 'removed') setImmediate(() => resolve(hands.sees(begun.channel_id).at(-1) ?? begun));
      else if (!read(message).startsWith(UNDER_WAY)) resolve(message);
    });
    const message = await promise;
    stop();
    return { ...answered, message };
  }

  function textOf(outcome: Exclude<Outcome, { kind: 'refused' | 'unanswered' | 'posted' }>): string {
    if (outcome.kind === 'quiet') return '';
    if (outcome.kind === 'form') {
      lastForm = outcome.form;
      return formText(outcome.form);
    }
    lastMessage = outcome.message;
    return read(outcome.message);
  }

  return {
    async run(input) {
      const directive = /^@(\w+)\s*(.*)$/.exec(input);
      const [, name = '', rest = ''] = directive ?? [];
      const act = Object.hasOwn(directives, name) ? directives[name] : undefined;
      // a mention of the bot is a line as any other
      const mention = name.toLowerCase() === channel.botName.toLowerCase();
      if (directive && !act && !mention) {
        return {
          input,
          ...refused(
            `There is no @${name}. Known: ${Object.keys(directives)
              .map((known) => `@${known}`)
              .join(', ')}.`,
          ),
        };
      }
      const shown = lastMessage;
      const spoken = await (act ? act(rest.trim()) : told(await typed(input)));
      if (filesTo !== undefined && lastMessage !== undefined && lastMessage !== shown)
        await keepFiles(lastMessage, filesTo);
      return { input, ...spoken };
    },
  };
}

const done = (text: string, data: JsonObject | null): Omit<Spoken, 'input'> => ({
  ok: true,
  text,
  data,
  error: null,
});
const refused = (error: string): Omit<Spoken, 'input'> => ({ ok: false, text: error, data: null, error });

/** The button of this label; where several orders stand in one message, the one of this order. */
function findButton({ components }: WireMessage, label: string, order: string | undefined) {
  return pressable(components).find(
    (one) =>
      one.label?.toLowerCase() === label.toLowerCase() &&
      (order === undefined || new URLSearchParams(one.custom_id?.split('?')[1]).get('order') === order),
  );
}

/** What already stands in a form's fields. */
function standing({ components }: OpenForm): Record<string, string | readonly string[]> {
  return Object.fromEntries(
    components.flatMap(({ component }): [string, string | readonly string[]][] => {
      if (component?.custom_id === undefined) return [];
      if (typeof component['value'] === 'string') return [[component.custom_id, component['value']]];
      const options: unknown = component['options'];
      const chosen = Array.isArray(options)
        ? options.flatMap((option: unknown) =>
            typeof option === 'object' &&
            option !== null &&
            'default' in option &&
            option.default &&
            'value' in option
              ? [String(option.value)]
              : [],
          )
        : [];
      return chosen.length === 0 ? [] : [[component.custom_id, chosen]];
    }),
  );
}

/** `due="12 Dec" condition=wrong`: names and values, quoted where there are spaces. */
function fieldsIn(text: string): Record<string, string> {
  return Object.fromEntries(
    [...text.matchAll(/([\w-]+)=(?:"([^"]*)"|(\S+))/g)].map(([, name = '', quoted, bare]) => [
      name,
      quoted ?? bare ?? '',
    ]),
  );
}

/** The value of the option of this label, or of the one that begins so. */
function optionIn(
  options: readonly { readonly label: string; readonly value: string }[],
  typed: string,
): string | undefined {
  const wanted = typed.toLowerCase();
  const same = options.find(({ label }) => label.toLowerCase() === wanted);
  return (same ?? options.find(({ label }) => label.toLowerCase().startsWith(wanted)))?.value;
}
