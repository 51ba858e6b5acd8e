import {
  type APIActionRowComponent,
  type APIButtonComponentWithCustomId,
  type APIComponentInContainer,
  type APIContainerComponent,
  type APIStringSelectComponent,
  type APITextDisplayComponent,
  AttachmentBuilder,
  ButtonStyle,
  ComponentType,
  escapeMarkdown,
} from 'discord.js';
import { writeActionRef } from '../bot/action-ref.ts';
import type { Answer, Button, Draft, Item, Menu, Tone } from '../core/reply.ts';

/** A message as the client takes it: one card, its pictures, and whom it may ping. */
export interface Card {
  readonly components: readonly (APITextDisplayComponent | APIContainerComponent)[];
  readonly files: readonly AttachmentBuilder[];
  readonly allowedMentions: { readonly parse: readonly []; readonly users: readonly string[] };
}

/** The state's colour beside its words, never instead of them. */
const ACCENT: Readonly<Record<Tone, number>> = {
  plain: 0x1d3a6e,
  late: 0xa63a24,
  soon: 0x8a6410,
  done: 0x2f6b57,
};

/** The platform's limits on one message of components: all text together, and components counted with the nested ones. */
const MOST_TEXT = 4000;
const MOST_COMPONENTS = 40;

const WEIGHT = {
  main: ButtonStyle.Primary,
  plain: ButtonStyle.Secondary,
  grave: ButtonStyle.Danger,
} as const;

/**
 * Lays an answer out as one card: subject, result, how sure, items with their buttons, facts and working, texts to
 * copy, caution, small print, buttons. What does not fit a message is cut from the end of the least needed part, and
 * the cut is said.
 */
export function cardOf(answer: Answer): Card {
  const budget = { text: MOST_TEXT - SAFETY, components: MOST_COMPONENTS - 1 };
  const foot = footOf(answer);
  for (const part of foot) spend(budget, part);
  const body: APIComponentInContainer[] = [];
  for (const part of bodyOf(answer)) {
    if (!fits(budget, part)) {
      body.push(text('-# More did not fit here; ask for it alone to see all of it.'));
      break;
    }
    spend(budget, part);
    body.push(part);
  }
  const container: APIContainerComponent = {
    type: ComponentType.Container,
    accent_color: ACCENT[answer.tone ?? 'plain'],
    components: [...body, ...foot],
  };
  return {
    components: [...pings(answer.notify ?? []), container],
    files: (answer.pictures ?? []).map(
      ({ name, alt, png }) =>
        new AttachmentBuilder(Buffer.from(png), { name, description: alt.slice(0, 1024) }),
    ),
    allowedMentions: { parse: [], users: answer.notify ?? [] },
  };
}

/** Room kept for the pings and the sentence that says something was cut. */
const SAFETY = 300;

interface Budget {
  text: number;
  components: number;
}

function fits(budget: Budget, part: APIComponentInContainer): boolean {
  return textOf(part) <= budget.text && countOf(part) <= budget.components - 1;
}

function spend(budget: Budget, part: APIComponentInContainer): void {
  budget.text -= textOf(part);
  budget.components -= countOf(part);
}

const textOf = (part: APIComponentInContainer): number =>
  part.type === ComponentType.TextDisplay ? part.content.length : 0;

const countOf = (part: APIComponentInContainer): number =>
  'components' in part ? 1 + part.components.length : 1;

function* bodyOf(answer: Answer): Generator<APIComponentInContainer> {
  yield text(`### ${asTyped(answer.subject)}`);
  yield text(lines([resultLine(answer.result), answer.certainty && `-# ${asTyped(answer.certainty)}`]));
  for (const { name, alt } of answer.pictures ?? []) {
    yield {
      type: ComponentType.MediaGallery,
      items: [{ media: { url: `attachment://${name}` }, description: alt.slice(0, 1024) }],
    };
  }
  for (const item of answer.items ?? []) yield* itemParts(item);
  if (answer.menu) yield row([menuPart(answer.menu)]);
  if (answer.facts?.length) {
    yield text(answer.facts.map(([label, value]) => `**${asTyped(label)}** ${asTyped(value)}`).join('\n'));
  }
  if (answer.working?.length) yield text(answer.working.map(asTyped).join('\n'));
  for (const draft of answer.drafts ?? []) yield text(draftText(draft));
}

/** A result is set large so that it reads at arm's length; a whole sentence set large would only push it off the screen. */
const resultLine = (result: string): string =>
  result.length <= LONGEST_HEADING ? `## ${asTyped(result)}` : asTyped(result);

const LONGEST_HEADING = 90;

/** What must never be cut: the caution, the small print and the buttons. */
function footOf(answer: Answer): APIComponentInContainer[] {
  const parts: APIComponentInContainer[] = [];
  if (answer.caution) parts.push(text(`> **Caution** ${asTyped(answer.caution)}`));
  if (answer.smallPrint?.length)
    parts.push(text(answer.smallPrint.map((line) => `-# ${asTyped(line)}`).join('\n')));
  if (answer.buttons?.length) parts.push(buttonRow(answer.buttons));
  return parts;
}

function* itemParts({ text: words, note, buttons }: Item): Generator<APIComponentInContainer> {
  yield text(lines([`**${asTyped(words)}**`, note && asTyped(note)]));
  if (buttons?.length) yield buttonRow(buttons);
}

/** A code block takes text as it is, so the only thing to mend is a fence inside it. */
const draftText = ({ label, text: words }: Draft): string =>
  `${asTyped(label)}\n\`\`\`\n${words.replaceAll('```', "'''")}\n\`\`\``;

function menuPart({ prompt, does, arg, choices }: Menu): APIStringSelectComponent {
  return {
    type: ComponentType.StringSelect,
    custom_id: writeActionRef({ ...does, args: { ...does.args, _menu: arg } }),
    placeholder: prompt.slice(0, 150),
    options: choices.slice(0, 25).map(({ label, note, value }) => ({
      label: label.slice(0, 100),
      value,
      ...(note === undefined ? {} : { description: note.slice(0, 100) }),
    })),
  };
}

const buttonRow = (buttons: readonly Button[]): APIActionRowComponent<APIButtonComponentWithCustomId> =>
  row(buttons.slice(0, 5).map(buttonPart));

function buttonPart({ label, does, weight }: Button): APIButtonComponentWithCustomId {
  return {
    type: ComponentType.Button,
    style: WEIGHT[weight ?? 'plain'],
    label: label.slice(0, 80),
    custom_id: writeActionRef(does),
  };
}

const row = <Part extends APIStringSelectComponent | APIButtonComponentWithCustomId>(
  components: Part[],
): APIActionRowComponent<Part> => ({ type: ComponentType.ActionRow, components });

const text = (content: string): APITextDisplayComponent => ({ type: ComponentType.TextDisplay, content });

const lines = (parts: readonly (string | undefined | '')[]): string => parts.filter(Boolean).join('\n');

function pings(people: readonly string[]): APITextDisplayComponent[] {
  return people.length === 0 ? [] : [text(people.map((id) => `<@${id}>`).join(' '))];
}

/**
 * Shows text as it was typed: no styling, no headings or lists, no links, and no mention that looks like one.
 * `allowed_mentions` is what stops pings; this is what stops the look of them.
 */
export function asTyped(words: string): string {
  return escapeMarkdown(words, { heading: true, bulletedList: true, numberedList: true, maskedLink: true })
    .replace(/^(\s*)(>|-#)/gm, '$1\\$2')
    .replaceAll('<', '\\<')
    .replaceAll('@everyone', '@\u200beveryone')
    .replaceAll('@here', '@\u200bhere');
}
