import type { PageEntry } from '../page-api.ts';
import { component } from './components.ts';
import type { Deeds } from './deeds.ts';
import { make, named, pressable } from './dom.ts';
import { embed } from './embeds.ts';
import { entryId } from './ids.ts';
import { attachments } from './media.ts';
import { placesOf } from './show-place.ts';
import { plainText } from './text.ts';
import { clockTime } from './times.ts';
import { isMadeOfComponents } from './wire.ts';

/** One entry of the day-book: what was asked, if anything, and what was written, each with its margin. */
export function drawEntry(entry: PageEntry, deeds: Deeds): HTMLLIElement {
  const { message } = entry;
  const item = make('li', { class: 'entry', id: entryId(message.id), tabindex: '-1' });
  item.toggleAttribute('data-private', entry.private);
  if (entry.asked !== undefined) {
    const line = make('p', { class: 'asked', dir: 'auto' }, entry.asked.line);
    item.append(margin(entry.asked.by, message.timestamp, deeds), make('div', { class: 'written' }, line));
  }
  const body = make(
    'div',
    { class: 'written' },
    ...notesAbove(entry, deeds),
    ...content(entry, deeds),
    ...notesBelow(entry, deeds),
  );
  item.append(margin(deeds.nameOf(message.author), message.timestamp, deeds), body);
  return item;
}

/** Time and initials; the whole name is there for whoever cannot see the square. */
function margin(name: string, timestamp: string, deeds: Deeds): HTMLElement {
  return make(
    'div',
    { class: 'margin' },
    make('time', { datetime: timestamp }, clockTime(timestamp)),
    make('span', { class: 'square', 'aria-hidden': 'true', title: name }, deeds.initials(name)),
    make('span', { class: 'unseen' }, named(name), ':'),
  );
}

function content(entry: PageEntry, deeds: Deeds): readonly Node[] {
  const { message } = entry;
  if (entry.working) return [make('p', { class: 'under-way' }, 'On it …')];
  const show = placesOf(entry, deeds.putOnLine);
  const setting = { messageId: message.id, show, deeds, inCard: false };
  const parts = message.components.flatMap((part) => component(part, setting));
  if (isMadeOfComponents(message)) return parts;
  const embeds = message.embeds.map((raw) => embed(raw, show));
  return [...plainText(message.content, show), ...attachments(message), ...embeds, ...parts];
}

function notesAbove(entry: PageEntry, deeds: Deeds): readonly Node[] {
  const { replyTo } = entry;
  if (replyTo === undefined) return [];
  const jump = pressable('', () => deeds.jumpTo(replyTo.id), { class: 'word', dir: 'auto' });
  // one run of text: the button lays its children out side by side, and spaces between them would be lost
  jump.append(make('span', {}, 'On ', named(replyTo.by), `: ${replyTo.start}`));
  return [jump];
}

function notesBelow(entry: PageEntry, deeds: Deeds): readonly Node[] {
  const notes: Node[] = entry.reactions.map(({ emoji, names }) =>
    make('p', { class: 'small' }, `${emoji} `, make('bdi', {}, names.join(', '))),
  );
  const marks = [
    entry.pinned ? 'Pinned' : '',
    entry.message.edited_timestamp === null || entry.message.author.bot === true ? '' : 'Changed since',
  ];
  const words = marks.filter((mark) => mark !== '').join(' · ');
  if (words !== '') notes.push(make('p', { class: 'small' }, words));
  if (entry.private) {
    const away = pressable('Put away', () => deeds.putAway(entry.message.id));
    notes.push(make('div', { class: 'only-you' }, make('p', { class: 'small' }, 'Only you see this.'), away));
  }
  return notes;
}
