import { type APIComponentInContainer, type APITextDisplayComponent, ComponentType } from 'discord.js';

/** The platform's limits on one message of components: all text together, and components counted with the nested ones. */
export const MOST_TEXT = 4000;
export const MOST_COMPONENTS = 40;

/** What is left of one message while it is being filled. */
export interface Room {
  /** Takes the parts in, all of them or none; says whether they went in. */
  take(...parts: readonly APIComponentInContainer[]): boolean;
  /** Takes as many whole lines as fit into one text; undefined when not even the first does. */
  takeLines(lines: readonly string[]): APITextDisplayComponent | undefined;
  /** Whether anything has been turned away. */
  readonly full: boolean;
}

export function openRoom(text: number, components: number): Room {
  const left = { text, components };
  let full = false;
  const take = (...parts: readonly APIComponentInContainer[]): boolean => {
    const letters = parts.reduce((sum, part) => sum + textOf(part), 0);
    const count = parts.reduce((sum, part) => sum + countOf(part), 0);
    if (letters > left.text || count > left.components) {
      full = true;
      return false;
    }
    left.text -= letters;
    left.components -= count;
    return true;
  };
  return {
    take,
    takeLines(lines) {
      for (let count = lines.length; count > 0; count--) {
        const part = textPart(lines.slice(0, count).join('\n'));
        if (take(part)) return part;
      }
      return undefined;
    },
    get full() {
      return full;
    },
  };
}

export const textPart = (content: string): APITextDisplayComponent => ({
  type: ComponentType.TextDisplay,
  content,
});

const textOf = (part: APIComponentInContainer): number =>
  part.type === ComponentType.TextDisplay ? part.content.length : 0;

const countOf = (part: APIComponentInContainer): number =>
  'components' in part ? 1 + part.components.length : 1;
