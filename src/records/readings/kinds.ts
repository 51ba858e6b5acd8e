import { isUnitId, units } from '../../calc/units/table.ts';
import type { Dimension } from '../../calc/units/unit.ts';
import { UserError } from '../../core/user-error.ts';
import { readingKinds } from '../../tables/reading-kinds.ts';
import type { OwnKind } from './reading.ts';

/** How a kind's value is typed; null where its unit is the crew's own word. */
export type KindField =
  | 'pressure'
  | 'temperature'
  | 'voltage'
  | 'current'
  | 'resistance'
  | 'speed'
  | 'length'
  | 'distance'
  | 'time'
  | 'ratio'
  | 'percent'
  | 'force'
  | 'torque'
  | 'angle'
  | 'mass'
  | 'volume'
  | null;

type Bounds = readonly [min: number, max: number];

/** A kind of reading: one that everybody knows, or one of the crew's own. */
export interface Kind {
  readonly name: string;
  readonly words: readonly string[];
  readonly field: KindField;
  /** What it is kept in. */
  readonly unit: string;
  /** What `possible` and `usual` are counted in, and what it is shown in unless it was typed otherwise. */
  readonly shown: string;
  /** Beyond it a number is refused. */
  readonly possible?: Bounds;
  /** Beyond it a number is asked about once. */
  readonly usual?: Bounds;
  readonly place?: 'cylinder' | 'bearing' | 'valve';
  /** It counts up, as an odometer does. */
  readonly grows?: true;
  /** A fall is bad news even within limits. */
  readonly falling?: true;
  readonly grave: readonly ('low' | 'high')[];
  /** The name its common limits stand under. */
  readonly common: string;
  /** What to do before anything else. */
  readonly first: { readonly low: string; readonly high: string; readonly falling?: string };
  /** The crew's own. */
  readonly own: boolean;
}

const BUILT_IN: readonly Kind[] = readingKinds.map((row) => ({
  ...row,
  common: row.common ?? row.name,
  own: false,
}));

/** Every kind a build knows: the built-in ones, then its own. */
export function kindsWith(own: readonly OwnKind[]): readonly Kind[] {
  return [...BUILT_IN, ...own.map(ofOwn)];
}

/** @throws Error when no kind is called so: a reading whose kind was taken off keeps its own name and unit. */
export function kindNamed(name: string, own: readonly OwnKind[], unit: string): Kind {
  return kindsWith(own).find((kind) => kind.name === name) ?? ofOwn({ id: 0, buildId: 0, name, unit });
}

function ofOwn({ name, unit }: OwnKind): Kind {
  return {
    name,
    words: [name.toLowerCase()],
    field: isUnitId(unit) ? (FIELDS[units[unit].dimension] ?? null) : null,
    unit,
    shown: unit,
    grave: ['low', 'high'],
    common: name,
    first: { low: `Check ${name} again before going on.`, high: `Check ${name} again before going on.` },
    own: true,
  };
}

const FIELDS: Partial<Record<Dimension, KindField>> = {
  pressure: 'pressure',
  temperature: 'temperature',
  voltage: 'voltage',
  current: 'current',
  resistance: 'resistance',
  rotation: 'speed',
  length: 'length',
  time: 'time',
  force: 'force',
  torque: 'torque',
  angle: 'angle',
  mass: 'mass',
  volume: 'volume',
  ratio: 'percent',
};

const MOST_OWN = 40;

/** @throws UserError when the name is taken, by a word of a known kind too, or there are too many. */
export function requireNewKind(name: string, own: readonly OwnKind[]): void {
  const plain = name.toLowerCase();
  const taken = kindsWith(own).find(
    (kind) => kind.name.toLowerCase() === plain || kind.words.includes(plain),
  );
  if (taken !== undefined) {
    throw new UserError(
      'already-done',
      `"${name}" is a kind here already: ${taken.name}. Choose another name.`,
    );
  }
  if (/\d/u.test(name)) {
    throw new UserError(
      'bad-input',
      `"${name}" has a figure in it, which would be taken for the value. Name it in words.`,
    );
  }
  if (own.length >= MOST_OWN) {
    throw new UserError(
      'not-now',
      `There are ${MOST_OWN} kinds of your own already. Take one off first: /reading kind name:… unit:none.`,
    );
  }
}
