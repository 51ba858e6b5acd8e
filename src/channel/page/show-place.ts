import type { PageEntry } from '../page-api.ts';
import { make, named, pressable } from './dom.ts';
import type { ShowPlace } from './markup.ts';
import { stamp } from './times.ts';

/** Shows mentions by the names that came with the entry, times in the reader's zone, commands ready to be taken. */
export function placesOf(entry: PageEntry, putOnLine: (line: string) => void): ShowPlace {
  const nameOf = (id: string) => entry.mentions.find((mention) => mention.id === id)?.name;
  return (place) => {
    switch (place.kind) {
      case 'person':
        return make('span', { class: 'mention' }, '@', named(nameOf(place.id) ?? 'someone not here'));
      case 'channel':
        return make('span', { class: 'mention' }, '#', named(nameOf(place.id) ?? 'a channel not here'));
      case 'role':
        return make('span', { class: 'mention' }, '@a group');
      case 'emoji':
        return new Text(`:${place.name}:`);
      case 'command': {
        const line = `/${place.name}`;
        return pressable(line, () => putOnLine(`${line} `), { class: 'word' });
      }
      case 'time':
        return timeNode(place.seconds, place.style);
    }
  };
}

function timeNode(seconds: number, style: string): Node | undefined {
  const words = stamp(seconds, style, Date.now());
  if (words === undefined) return undefined;
  const relative = style === 'R' ? String(seconds) : undefined;
  return make('time', { datetime: new Date(seconds * 1000).toISOString(), 'data-relative': relative }, words);
}

/** Brings the relative times on the page up to now. */
export function refreshTimes(root: ParentNode): void {
  for (const time of root.querySelectorAll<HTMLElement>('time[data-relative]')) {
    time.textContent = stamp(Number(time.dataset['relative']), 'R', Date.now()) ?? time.textContent;
  }
}
