import MarkdownIt from 'markdown-it';

/**
 * The platform's markup as far as it is CommonMark, read by a library that is not ours: what a card's text would look
 * like. Raw addresses become links too, as the platform has it.
 */
const markup = new MarkdownIt('zero', { html: false, breaks: true, linkify: true }).enable([
  'heading',
  'blockquote',
  'list',
  'fence',
  'newline',
  'escape',
  'backticks',
  'strikethrough',
  'emphasis',
  'link',
  'image',
  'autolink',
  'linkify',
]);

export interface Shown {
  /** What a reader sees, lines kept. */
  readonly words: string;
  /** Names of the elements it is shown in, paragraphs and line ends aside. */
  readonly elements: readonly string[];
}

/** What a text looks like to a reader. */
export function shownAs(text: string): Shown {
  const elements: string[] = [];
  const words: string[] = [];
  const look = (tokens: ReturnType<typeof markup.parse>): void => {
    for (const { type, tag, nesting, content, children } of tokens) {
      if (children) look(children);
      else if (type === 'softbreak' || type === 'hardbreak') words.push('\n');
      else if (nesting === 0) words.push(content);
      const plain =
        type === 'inline' || type === 'text' || type === 'text_special' || tag === 'p' || tag === 'br';
      if (!plain && nesting !== -1) elements.push(tag);
      if (nesting === -1 && (tag === 'p' || tag.startsWith('h'))) words.push('\n');
    }
  };
  look(markup.parse(text, {}));
  return { words: words.join('').replace(/\n$/, ''), elements };
}
