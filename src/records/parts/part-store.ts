import type { Database } from 'better-sqlite3';
import { z } from 'zod';
import type { Day } from '../../core/time.ts';
import type { Money } from '../orders/order.ts';
import { ORIGINS, type Part } from './part.ts';

const PartRow = z
  .object({
    id: z.int(),
    build_id: z.int(),
    name: z.string(),
    origin: z.enum(ORIGINS),
    needed: z.int(),
    system: z.string().nullable(),
    single_use: z.int(),
    note: z.string().nullable(),
    link: z.string().nullable(),
    guess_minor: z.int().nullable(),
    guess_currency: z.string().nullable(),
  })
  .transform(
    (row): Omit<KnownPart, 'alsoCalled'> => ({
      id: row.id,
      buildId: row.build_id,
      name: row.name,
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
    }),
  );

const NameRow = z.object({ part_id: z.int(), name: z.string() });

export const MOVES = ['counted', 'fitted', 'taken off', 'used up', 'sent back'] as const;
export const PLACES = ['shelf', 'box'] as const;
export type Place = (typeof PLACES)[number];

const MoveRow = z
  .object({
    id: z.int(),
    part_id: z.int(),
    kind: z.enum(MOVES),
    quantity: z.int(),
    place: z.enum(PLACES).nullable(),
    had_come: z.int(),
    said_on: z.string(),
    by_name: z.string(),
    note: z.string().nullable(),
  })
  .transform(
    ({ part_id: partId, had_come: hadCome, said_on: saidOn, by_name: byName, ...same }): PartMove => ({
      ...same,
      partId,
      hadCome,
      saidOn,
      byName,
    }),
  );

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

const Parts = z.array(PartRow);
const Names = z.array(NameRow);
const Moves = z.array(MoveRow);

export function openPartStore(db: Database): PartStore {
  const insert = db.prepare(
    `INSERT INTO part (build_id, name, origin, needed, system, single_use, note, link, guess_minor, guess_currency)
     VALUES (@buildId, @name, @origin, @needed, @system, @singleUse, @note, @link, @guessMinor, @guessCurrency)`,
  );
  const update = db.prepare(
    `UPDATE part SET name = @name, origin = @origin, needed = @needed, system = @system, single_use = @singleUse,
       note = @note, link = @link, guess_minor = @guessMinor, guess_currency = @guessCurrency WHERE id = @id`,
  );
  const byId = db.prepare('SELECT * FROM part WHERE id = ?');
  const namesOf = db.prepare('SELECT part_id, name FROM part_name WHERE part_id = ? ORDER BY id');
  const ofBuild = db.prepare('SELECT * FROM part WHERE build_id = ? ORDER BY id');
  const namesOfBuild = db.prepare(
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
  const movesOf = db.prepare('SELECT * FROM part_move WHERE part_id = ? ORDER BY id');
  const movesOfBuild = db.prepare(
    'SELECT part_move.* FROM part_move JOIN part ON part.id = part_id WHERE build_id = ? ORDER BY part_move.id',
  );

  const read = (rows: readonly unknown[], names: readonly unknown[]): readonly KnownPart[] => {
    const also = Map.groupBy(Names.parse(names), (row) => row.part_id);
    return Parts.parse(rows).map((part) => ({
      ...part,
      alsoCalled: (also.get(part.id) ?? []).map(({ name }) => name),
    }));
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
    movesOf: (partId) => Moves.parse(movesOf.all(partId)),
    movesOfBuild: (buildId) => Moves.parse(movesOfBuild.all(buildId)),
  };
}

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
