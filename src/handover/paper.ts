import type { Drawing, Fact } from '../core/reply.ts';

/** A document as plain data: what it says, not how it looks. All text is plain text. */
export interface Paper {
  readonly title: string;
  /** Under the title: whose it is, when it was made. */
  readonly subtitle: string;
  readonly sections: readonly Section[];
}

export interface Section {
  readonly heading: string;
  readonly blocks: readonly Block[];
}

export type Block = Words | Facts | Table | Figure;

export interface Words {
  readonly kind: 'words';
  readonly text: string;
  /** What is still open or could hurt somebody is set apart, by a word in front as well as by colour. */
  readonly tone?: 'plain' | 'open' | 'caution';
}

export interface Facts {
  readonly kind: 'facts';
  readonly facts: readonly Fact[];
}

export interface Table {
  readonly kind: 'table';
  readonly head: readonly string[];
  /** How much of the width each column takes; shares of their sum. */
  readonly shares: readonly number[];
  readonly rows: readonly (readonly string[])[];
}

export interface Figure {
  readonly kind: 'figure';
  readonly drawing: Drawing;
}

/** What each tone says in front of its words. */
export const TONE_WORD: Readonly<Record<NonNullable<Words['tone']>, string>> = {
  plain: '',
  open: 'Open: ',
  caution: 'Caution: ',
};

/** A paper with its figures painted, ready to be set. */
export interface PaintedPaper extends Omit<Paper, 'sections'> {
  readonly sections: readonly PaintedSection[];
}

export interface PaintedSection {
  readonly heading: string;
  readonly blocks: readonly (Exclude<Block, Figure> | PaintedFigure)[];
}

export interface PaintedFigure {
  readonly kind: 'figure';
  readonly png: Uint8Array;
  readonly alt: string;
  readonly width: number;
  readonly height: number;
}
