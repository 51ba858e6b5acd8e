import { takeApart } from './header-name.ts';
import type { Layout } from './layout.ts';
import { type ColumnReader, fits, readerFor } from './readers.ts';
import { isUnit, type LogUnit, unitOf } from './unit-words.ts';
import { type Role, RULES } from './words.ts';

/** A column that is used, and how. */
export interface UsedColumn {
  readonly role: Role;
  readonly index: number;
  readonly name: string;
  readonly reader: ColumnReader;
}

/** A reading that nothing can be said without, and the columns it could be. */
export interface OpenColumn {
  readonly role: RequiredRole;
  readonly candidates: readonly string[];
}

export const requiredRoles = ['timeS', 'speedRpm', 'loadKPa', 'lambda'] as const;
export type RequiredRole = (typeof requiredRoles)[number];

export interface Recognised {
  readonly columns: readonly UsedColumn[];
  readonly open: readonly OpenColumn[];
  /** Columns that nothing was made of. */
  readonly unused: readonly string[];
}

/** What the crew said of a log's columns: the column's name by what it is; empty for none. */
export type Assignment = Readonly<Partial<Record<Role, string>>>;

interface Known {
  readonly index: number;
  readonly name: string;
  readonly words: string;
  readonly unit: LogUnit | undefined;
  readonly sample: readonly string[];
}

/** Says which column is what, by the words of the trade and by units; what is in doubt is left open and never guessed. */
export function recognise(layout: Layout, assigned: Assignment, stoichiometricAfr: number): Recognised {
  const known = layout.names.map((name, index) => knownColumn(layout, name, index));
  const taken = new Set<number>();
  const columns: UsedColumn[] = [];
  const open: OpenColumn[] = [];
  const use = (role: Role, column: Known): void => {
    taken.add(column.index);
    const { words, unit, sample } = column;
    const context = { words, unit, sample, decimalComma: layout.decimalComma, stoichiometricAfr };
    columns.push({ role, index: column.index, name: column.name, reader: readerFor(role, context) });
  };
  for (const [role, name] of Object.entries(assigned) as [Role, string][]) {
    const column = known.find((one) => one.name === name);
    if (column !== undefined) use(role, column);
  }
  const guesses = known.flatMap((column) => {
    const guess = RULES.find((rule) => matches(rule, column));
    return guess === undefined ? [] : [{ column, role: guess.role, sure: guess.sure }];
  });
  const roles = [...new Set(guesses.map(({ role }) => role))].filter((role) => assigned[role] === undefined);
  for (const role of roles) {
    const own = guesses.filter((guess) => guess.role === role && !taken.has(guess.column.index));
    const alive = own.filter(({ column }) => isAlive(column, role));
    const best = Math.max(...(alive.length > 0 ? alive : own).map(({ sure }) => sure));
    const top = (alive.length > 0 ? alive : own)
      .filter(({ sure }) => sure === best)
      .map(({ column }) => column);
    const [first, ...others] = top;
    if (first === undefined) continue;
    if (others.length === 0 || !isRequired(role)) use(role, first);
    else {
      const chosen = settled(role, top);
      if (chosen === undefined) open.push({ role, candidates: top.map(({ name }) => name) });
      else use(role, chosen);
    }
  }
  for (const role of requiredRoles) {
    const found = columns.some((column) => column.role === role) || open.some((each) => each.role === role);
    if (found || (role === 'loadKPa' && columns.some((column) => column.role === 'vacuumKPa'))) continue;
    const free = known.filter(
      ({ index, unit, sample }) =>
        !taken.has(index) && fits(role, unit) && sample.some((cell) => /\d/.test(cell)),
    );
    // a time rises and nearly nothing else does all along
    const rising = role === 'timeS' ? free.filter(rises) : [];
    open.push({ role, candidates: (rising.length > 0 ? rising : free).map(({ name }) => name) });
  }
  const unused = known.filter(({ index }) => !taken.has(index)).map(({ name }) => name);
  return { columns, open, unused };
}

function knownColumn(layout: Layout, name: string, index: number): Known {
  const apart = takeApart(name, isUnit);
  const said = layout.units[index] ?? '';
  const unit = unitOf(said === '' ? apart.unit : said) ?? unitOf(apart.unit);
  return { index, name, words: apart.words, unit, sample: layout.sample.map((row) => row[index] ?? '') };
}

function matches({ role, all, none, units }: (typeof RULES)[number], { words, unit }: Known): boolean {
  if (units !== undefined && !units.includes(unit?.unit ?? '')) return false;
  const text = words === '' ? (unit?.unit ?? '') : words;
  return all.every((each) => each.test(text)) && !(none?.test(text) ?? false) && fits(role, unit);
}

const isRequired = (role: Role): role is RequiredRole => (requiredRoles as readonly Role[]).includes(role);

/** A column that holds nothing, or the same all along, is no second sensor. A time or a speed may stand still for a while. */
function isAlive({ sample }: Known, role: Role): boolean {
  if (role !== 'lambda' && role !== 'loadKPa') return true;
  const said = new Set(sample.map((cell) => cell.trim()).filter((cell) => cell !== ''));
  return said.size > 1;
}

/** The one of several alike columns that is meant, where it can be told. */
function settled(role: RequiredRole, top: readonly Known[]): Known | undefined {
  const same = top.every((column) => column.sample.join('\n') === top[0]?.sample.join('\n'));
  if (same) return top[0];
  if (role === 'timeS') return top.find((column) => rises(column)) ?? top[0];
  if (role === 'lambda') {
    // the same reading is often written twice, as λ and as AFR
    const asLambda = top.filter((column) => typical(column) < 3);
    const asAfr = top.filter((column) => typical(column) >= 3);
    const [lambda] = asLambda;
    const [afr] = asAfr;
    if (asLambda.length === 1 && asAfr.length === 1 && lambda && afr) {
      const scale = typical(afr) / typical(lambda);
      const alike = lambda.sample.every((cell, row) => {
        const [a, b] = [number(cell), number(afr.sample[row] ?? '')];
        return Number.isNaN(a) || Number.isNaN(b) || Math.abs(b / a / scale - 1) < 0.02;
      });
      if (alike) return lambda;
    }
  }
  return undefined;
}

const number = (cell: string): number => (cell.trim() === '' ? Number.NaN : Number(cell.replace(',', '.')));

function typical({ sample }: Known): number {
  const values = sample
    .map(number)
    .filter((value) => value > 0)
    .sort((a, b) => a - b);
  return values[values.length >> 1] ?? Number.NaN;
}

function rises({ sample }: Known): boolean {
  const values = sample.map(number).filter((value) => !Number.isNaN(value));
  return (
    values.length > 1 &&
    values.every((value, index) => index === 0 || value >= (values[index - 1] ?? value)) &&
    values[0] !== values.at(-1)
  );
}

/** The same header gives the same mark, whatever order of capitals or spaces it is written in. */
export function fingerprintOf({
  names,
  units,
  delimiter,
}: Pick<Layout, 'names' | 'units' | 'delimiter'>): string {
  const text = [
    delimiter,
    ...names.map((name, index) => `${name.trim().toLowerCase()}|${units[index] ?? ''}`),
  ].join('\n');
  // FNV-1a, twice over with different beginnings: a mark to find a header by, no secret
  let [a, b] = [0x811c9dc5, 0x01000193];
  for (let place = 0; place < text.length; place++) {
    const code = text.charCodeAt(place);
    a = Math.imul(a ^ code, 0x01000193) >>> 0;
    b = Math.imul(b ^ (code + place), 0x85ebca6b) >>> 0;
  }
  return a.toString(16).padStart(8, '0') + b.toString(16).padStart(8, '0');
}
