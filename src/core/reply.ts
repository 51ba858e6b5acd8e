import type { JsonObject } from './json.ts';

/**
 * What a command answers, as plain data. All text is plain text: the renderer escapes it, so a part named `**x**` or
 * `@everyone` is shown as it was typed and can neither style nor ping.
 */
export type Reply = Answer | Form;

export interface Answer {
  readonly kind: 'answer';
  /** What the card is about, a word or two: "Thread", "Order #12". */
  readonly subject: string;
  /** The result in one line that can be read at arm's length. */
  readonly result: string;
  readonly tone?: Tone;
  /** How sure, in one line. */
  readonly certainty?: string;
  /** Lines of working, shown folded where space is short. */
  readonly working?: readonly string[];
  readonly facts?: readonly Fact[];
  /** Things listed one under the other, each with its own buttons. */
  readonly items?: readonly Item[];
  /** A choice among more things than buttons can hold. */
  readonly menu?: Menu;
  /** Ready-made texts to copy and send on. */
  readonly drafts?: readonly Draft[];
  /** What could hurt somebody; always shown, never folded. */
  readonly caution?: string;
  /** Assumptions and sources, in small print. */
  readonly smallPrint?: readonly string[];
  readonly pictures?: readonly Picture[];
  /** Pictures still to be painted; whoever runs the command turns them into `pictures`. */
  readonly drawings?: readonly Drawing[];
  /** Files to keep or open elsewhere, each shown by its name. */
  readonly files?: readonly AnswerFile[];
  readonly buttons?: readonly Button[];
  /** People to ping, by platform id; nobody else is ever pinged. */
  readonly notify?: readonly string[];
  /** Shared with the crew, or seen by the asker alone. */
  readonly audience: 'crew' | 'asker';
  /** Replaces the message its button sits on, instead of adding one. */
  readonly inPlace?: boolean;
  /** The typed result, units in its key names; what `say --json` prints as `data`. */
  readonly data: JsonObject;
}

export type Tone = 'plain' | 'late' | 'soon' | 'done';
export type Fact = readonly [label: string, value: string];

export interface Item {
  readonly text: string;
  readonly note?: string;
  readonly tone?: Tone;
  readonly buttons?: readonly Button[];
}

export interface Draft {
  readonly label: string;
  readonly text: string;
}

export interface Picture {
  readonly name: string;
  /** What the picture shows, in words, with its least, greatest and last value where there are any. */
  readonly alt: string;
  readonly png: Uint8Array;
}

/** A file that goes with an answer: `fuel-table.csv`. */
export interface AnswerFile {
  /** Letters, digits, dots and dashes, with its ending. */
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** A picture as it is drawn: SVG text and its size, so that what a command answers stays plain and quick to compare. */
export interface Drawing {
  readonly name: string;
  /** As a picture's. */
  readonly alt: string;
  readonly svg: string;
  readonly width: number;
  readonly height: number;
}

/** Names what a press leads to: an action of a command, with the few arguments it needs. */
export interface ActionRef {
  readonly command: string;
  readonly action: string;
  readonly args: Readonly<Record<string, string | number>>;
}

export interface Button {
  /** Says what happens: "Arrived", "Only some came". At most 34 characters, a phone's width. */
  readonly label: string;
  readonly does: ActionRef;
  readonly weight?: 'main' | 'plain' | 'grave';
}

export interface Menu {
  readonly prompt: string;
  readonly does: ActionRef;
  /** The chosen value reaches the action as the argument of this name. */
  readonly arg: string;
  readonly choices: readonly { readonly label: string; readonly note?: string; readonly value: string }[];
}

/** A form to fill in; its fields join the action's arguments when it comes back. */
export interface Form {
  readonly kind: 'form';
  readonly title: string;
  readonly does: ActionRef;
  readonly fields: readonly FormField[];
}

export interface FormField {
  readonly name: string;
  readonly label: string;
  readonly hint?: string;
  readonly value?: string;
  readonly required?: boolean;
  readonly long?: boolean;
  readonly choices?: readonly { readonly label: string; readonly value: string }[];
}
