import {
  type APIComponentInContainer,
  type APIContainerComponent,
  type APITextDisplayComponent,
  AttachmentBuilder,
  ComponentType,
} from 'discord.js';
import type { Answer, Draft, Item, Tone } from '../core/reply.ts';
import { asTyped, asTypedWithin, shorten } from './as-typed.ts';
import { buttonRows, menuRow } from './controls.ts';
import { MOST_COMPONENTS, MOST_TEXT, openRoom, textPart } from './room.ts';

/** A message as the client takes it: one card, its pictures and files, and whom it may ping. */
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

/** Characters the parts that must be there may take: together they leave a message room for its pings. */
const MOST = { subject: 150, result: 1000, certainty: 400, caution: 2000, item: 400, note: 800 } as const;

/** More names than these would push the card out of the message; the orders of the others are in it all the same. */
const MOST_PINGED = 12;
const MOST_BUTTONS = 25;

const CUT = textPart('-# More did not fit here; ask for it alone to see all of it.');

/** Pings, the container itself, and the sentence that says something was cut. */
const KEPT_BACK = { text: MOST_PINGED * 24 + CUT.content.length, components: 3 };

/**
 * Lays an answer out as one card: subject, result, how sure, items with their buttons, facts and working, texts to
 * copy, caution, small print, buttons. Subject, result, caution, menu, files and buttons are always there; of the rest what
 * does not fit a message is left out from the end of its part, and the cut is said.
 */
export function cardOf(answer: Answer): Card {
  const pinged = (answer.notify ?? []).slice(0, MOST_PINGED);
  const container: APIContainerComponent = {
    type: ComponentType.Container,
    accent_color: ACCENT[answer.tone ?? 'plain'],
    components: [...partsOf(answer)],
  };
  return {
    components: [...pings(pinged), container],
    files: [
      ...(answer.pictures ?? []).map(
        ({ name, alt, png }) =>
          new AttachmentBuilder(Buffer.from(png), { name, description: shorten(alt, 1024) }),
      ),
      ...(answer.files ?? []).map(({ name, bytes }) => new AttachmentBuilder(Buffer.from(bytes), { name })),
    ],
    allowedMentions: { parse: [], users: pinged },
  };
}

function partsOf(answer: Answer): readonly APIComponentInContainer[] {
  const room = openRoom(MOST_TEXT - KEPT_BACK.text, MOST_COMPONENTS - KEPT_BACK.components);
  const seen = new Set<string>();
  const head = [
    textPart(`### ${asTypedWithin(answer.subject, MOST.subject)}`),
    textPart(resultLines(answer)),
  ];
  const menu = answer.menu ? [menuRow(answer.menu)] : [];
  const caution = answer.caution
    ? [textPart(`> **Caution** ${asTypedWithin(oneLine(answer.caution), MOST.caution)}`)]
    : [];
  const buttons = buttonRows((answer.buttons ?? []).slice(0, MOST_BUTTONS), seen);
  const files = (answer.files ?? []).map(({ name }) => ({
    type: ComponentType.File as const,
    file: { url: `attachment://${name}` },
  }));
  room.take(...head, ...menu, ...caution, ...files, ...buttons);

  const body: APIComponentInContainer[] = [];
  const take = (...parts: readonly APIComponentInContainer[]): boolean => {
    const fits = room.take(...parts);
    if (fits) body.push(...parts);
    return fits;
  };
  const takeLines = (lines: readonly string[]): void => {
    const part = room.takeLines(lines);
    if (part) body.push(part);
  };
  for (const { name, alt } of answer.pictures ?? []) {
    const media = { url: `attachment://${name}` };
    take({ type: ComponentType.MediaGallery, items: [{ media, description: shorten(alt, 1024) }] });
  }
  for (const item of answer.items ?? []) if (!take(...itemParts(item, seen))) break;
  body.push(...menu);
  takeLines((answer.facts ?? []).map(([label, value]) => `**${asTyped(oneLine(label))}** ${asTyped(value)}`));
  takeLines((answer.working ?? []).map(asTyped));
  for (const draft of answer.drafts ?? []) if (!take(textPart(draftText(draft)))) break;
  const smallPrint = room.takeLines((answer.smallPrint ?? []).map(small));
  const foot = [...caution, ...files, ...(smallPrint ? [smallPrint] : []), ...buttons];
  return [...head, ...body, ...(room.full ? [CUT] : []), ...foot];
}

/** A result is set large so that it reads at arm's length; a whole sentence set large would only push it off the screen. */
function resultLines({ result, certainty }: Answer): string {
  const words = asTypedWithin(oneLine(result), MOST.result);
  const large = result.length <= LONGEST_HEADING ? `## ${words}` : words;
  return certainty ? `${large}\n-# ${asTypedWithin(oneLine(certainty), MOST.certainty)}` : large;
}

const LONGEST_HEADING = 90;

/** Marks at the head of a line hold for that line alone. */
const oneLine = (words: string): string => words.replace(/\s*\n\s*/g, ' ').trim();

const small = (words: string): string => `-# ${asTyped(oneLine(words))}`;

function itemParts({ text, note, buttons = [] }: Item, seen: Set<string>): APIComponentInContainer[] {
  const name = `**${asTypedWithin(oneLine(text), MOST.item)}**`;
  const words = note ? `${name}\n${asTypedWithin(note, MOST.note)}` : name;
  return [textPart(words), ...buttonRows(buttons, seen)];
}

/** A code block takes text as it is, so the only thing to mend is a fence inside it. */
const draftText = ({ label, text }: Draft): string =>
  `${asTyped(label)}\n\`\`\`\n${text.replaceAll('```', "'''")}\n\`\`\``;

function pings(people: readonly string[]): APITextDisplayComponent[] {
  return people.length === 0 ? [] : [textPart(people.map((id) => `<@${id}>`).join(' '))];
}
