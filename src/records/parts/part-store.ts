import type { Database } from 'better-sqlite3';
import type { Day } from '../../core/time.ts';
import type { Money } from '../orders/order.ts';
import type { Origin, Part } from './part.ts';

/** A row as the file's own types and checks have it; read by the thousand, so it is not checked over again. */
interface PartRow {
  readonly id: number;
  readonly build_id: number;
  readonly name: string;
  readonly origin: Origin;
  readonly needed: number;
  readonly system: string | null;
  readonly single_use: 0 | 1;
  readonly note: string | null;
  readonly link: string | null;
  readonly guess_minor: number | null;
  readonly guess_currency: string | null;
}

interface NameRow {
  readonly part_id: number;
  readonly name: string;
}

export const MOVES = ['counted', 'fitted', 'taken off', 'used up', 'sent back'] as const;
export const PLACES = ['shelf', 'box'] as const;
export type Place = (typeof PLACES)[number];

/** A part with what one of it is likely to cost, where the crew gave a guess. */
export interface KnownPart extends Part {
  readonly guess: Money | null;
}

/** Something said of a part beside its orders. */
export interface PartMove {
  readonly id: number;
  readonly partId: number;
  /** A count changes what is in hand by its quantity; the others say what became of so many. */
  readonly kind: (typeof MOVES)[number];
  readonly quantity: number;
  readonly place: Place | null;
  /** How many had come of orders by then: what comes later is still in its box. */
  readonly hadCome: number;
  readonly saidOn: Day;
  readonly byName: string;
  readonly note: string | null;
}

export interface PartStore {
  add(part: Omit<KnownPart, 'id' | 'alsoCalled'>): KnownPart;
  correct(part: KnownPart): void;
  find(id: number): KnownPart | undefined;
  /** All parts of a build, in the order in which they were first named. */
  ofBuild(buildId: number): readonly KnownPart[];
  /** Takes a part off, with its other names and what was said of it. */
  remove(id: number): void;
  call(partId: number, name: string): void;
  uncall(partId: number, name: string): void;
  say(move: Omit<PartMove, 'id'>): void;
  movesOf(partId: number): readonly PartMove[];
  movesOfBuild(buildId: number): readonly PartMove[];
}

const NO_NAMES: readonly string[] = [];

const MOVE = `id, part_id AS partId, kind, quantity, place, had_come AS hadCome, said_on AS saidOn,
  by_name AS byName, note`;

export function openPartStore(db: Database): PartStore {
  const insert = db.prepare(
    `INSERT INTO part (build_id, name, origin, needed, system, single_use, note, link, guess_minor, guess_currency)
     VALUES (@buildId, @name, @origin, @needed, @system, @singleUse, @note, @link, @guessMinor, @guessCurrency)`,
  );
  const update = db.prepare(
    `UPDATE part SET name = @name, origin = @origin, needed = @needed, system = @system, single_use = @singleUse,
       note = @note, link = @link, guess_minor = @guessMinor, guess_currency = @guessCurrency WHERE id = @id`,
  );
  const byId = db.prepare<[number], PartRow>('SELECT * FROM part WHERE id = ?');
  const namesOf = db.prepare<[number], NameRow>(
    'SELECT part_id, name FROM part_name WHERE part_id = ? ORDER BY id',
  );
  const ofBuild = db.prepare<[number], PartRow>('SELECT * FROM part WHERE build_id = ? ORDER BY id');
  const namesOfBuild = db.prepare<[number], NameRow>(
    `SELECT part_id, part_name.name FROM part_name JOIN part ON part.id = part_id WHERE build_id = ? ORDER BY part_name.id`,
  );
  const removals = ['DELETE FROM part_name WHERE part_id = ?', 'DELETE FROM part_move WHERE part_id = ?'].map(
    (sql) => db.prepare(sql),
  );
  const remove = db.prepare('DELETE FROM part WHERE id = ?');
  const call = db.prepare('INSERT INTO part_name (part_id, name) VALUES (?, ?)');
  const uncall = db.prepare('DELETE FROM part_name WHERE part_id = ? AND name = ?');
  const say = db.prepare(
    `INSERT INTO part_move (part_id, kind, quantity, place, had_come, said_on, by_name, note)
     VALUES (@partId, @kind, @quantity, @place, @hadCome, @saidOn, @byName, @note)`,
  );
  const movesOf = db.prepare<[number], PartMove>(
    `SELECT ${MOVE} FROM part_move WHERE part_id = ? ORDER BY id`,
  );
  const movesOfBuild = db.prepare<[number], PartMove>(
    `SELECT ${MOVE} FROM part_move WHERE part_id IN (SELECT id FROM part WHERE build_id = ?) ORDER BY id`,
  );

  const read = (rows: readonly PartRow[], names: readonly NameRow[]): readonly KnownPart[] => {
    const also = Map.groupBy(names, (row) => row.part_id);
    return rows.map((row) => partOf(row, also.get(row.id)?.map(({ name }) => name) ?? NO_NAMES));
  };
  const find = (id: number): KnownPart | undefined => read(byId.all(id), namesOf.all(id))[0];
  return {
    add(part) {
      const { lastInsertRowid } = insert.run(columnsOf(part));
      return { ...part, id: Number(lastInsertRowid), alsoCalled: [] };
    },
    correct: (part) => void update.run({ ...columnsOf(part), id: part.id }),
    find,
    ofBuild: (buildId) => read(ofBuild.all(buildId), namesOfBuild.all(buildId)),
    remove(id) {
      for (const removal of removals) removal.run(id);
      remove.run(id);
    },
    call: (partId, name) => void call.run(partId, name),
    uncall: (partId, name) => void uncall.run(partId, name),
    say: (move) => void say.run(move),
    movesOf: (partId) => movesOf.all(partId),
    movesOfBuild: (buildId) => movesOfBuild.all(buildId),
  };
}

const partOf = (row: PartRow, alsoCalled: readonly string[]): KnownPart => ({
  id: row.id,
  buildId: row.build_id,
  name: row.name,
  alsoCalled,
  origin: row.origin,
  needed: row.needed,
  system: row.system,
  singleUse: row.single_use === 1,
  note: row.note,
  link: row.link,
  guess:
    row.guess_minor === null || row.guess_currency === null
      ? null
      : { minor: row.guess_minor, currency: row.guess_currency },
});

const columnsOf = (part: Omit<KnownPart, 'id' | 'alsoCalled'>) => ({
  buildId: part.buildId,
  name: part.name,
  origin: part.origin,
  needed: part.needed,
  system: part.system,
  singleUse: part.singleUse ? 1 : 0,
  note: part.note,
  link: part.link,
  guessMinor: part.guess?.minor ?? null,
  guessCurrency: part.guess?.currency ?? null,
});
