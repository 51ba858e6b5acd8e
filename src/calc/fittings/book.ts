import type { Thread } from '../threads/thread.ts';
import type { End, EndSeat, Ring, System } from './end.ts';
import { SEAT_NAMES } from './end.ts';

/** A row of the fitting tables. */
export interface FittingRow {
  readonly id: string;
  readonly kind: 'jic37' | 'an37' | 'sae45' | 'orb' | 'iso6149' | 'orfs' | 'banjo';
  readonly threadId: string;
  readonly dash: number | undefined;
  readonly oRing: string | undefined;
  readonly washers: readonly Ring[];
  readonly washerSource: readonly string[];
}

/** What the ends are made up from. */
export interface EndTables {
  readonly threads: readonly Thread[];
  readonly fittings: readonly FittingRow[];
  readonly kinds: ReadonlyMap<string, { readonly seat: EndSeat; readonly standard: string }>;
  readonly oRings: ReadonlyMap<string, { readonly name: string; readonly source: readonly string[] }>;
  readonly rings: ReadonlyMap<
    string,
    { readonly rings: readonly Ring[]; readonly source: readonly string[] }
  >;
}

/** Every end there is a name for. */
export interface EndBook {
  readonly ends: readonly End[];
  find(id: string): End | undefined;
}

type Draft = Pick<End, 'id' | 'system' | 'gender' | 'seat' | 'standard'> & Partial<End>;

/** The ends of all threads and fittings of the tables, each under a name of its own. */
export function endBook(tables: EndTables): EndBook {
  const byThread = new Map(tables.threads.map((thread) => [thread.id, thread]));
  const rings = ringsOf(tables);
  const ends = [
    ...tables.fittings.flatMap((row) => fittingEnds(row, byThread.get(row.threadId), tables)),
    ...tables.threads.flatMap((thread) => threadEnds(thread, rings.get(thread.id))),
  ];
  const byId = new Map(ends.map((end) => [end.id.toLowerCase(), end]));
  return { ends, find: (id) => byId.get(id.toLowerCase()) };
}

interface RingSet {
  readonly rings: readonly Ring[];
  readonly ringSource: readonly string[];
}

/** Sealing rings by thread: those of the hollow bolts fit any flat joint of the same size. */
function ringsOf({ fittings, rings }: EndTables): ReadonlyMap<string, RingSet> {
  return new Map([
    ...[...rings].map(
      ([thread, row]) => [thread, { rings: row.rings, ringSource: row.source }] as [string, RingSet],
    ),
    ...fittings
      .filter(({ kind }) => kind === 'banjo')
      .map((row): [string, RingSet] => [row.threadId, { rings: row.washers, ringSource: row.washerSource }]),
  ]);
}

function makeEnd(thread: Thread, draft: Draft): End {
  return {
    thread,
    tapered: thread.tapered,
    fittingId: undefined,
    dash: undefined,
    usual: true,
    oRing: undefined,
    rings: [],
    ringSource: [],
    ...draft,
  };
}

/** @throws RangeError when the table of fittings names a thread or kind that no table has: a fault of the tables. */
function fittingEnds(
  row: FittingRow,
  thread: Thread | undefined,
  { kinds, oRings }: EndTables,
): readonly End[] {
  const kind = kinds.get(row.kind);
  if (thread === undefined || kind === undefined) throw new RangeError(`no thread or kind for ${row.id}`);
  const oRing =
    oRings.get(row.id) ?? (row.oRing === undefined ? undefined : { name: row.oRing, source: ['MEM'] });
  const genders = row.kind === 'banjo' ? (['male'] as const) : (['male', 'female'] as const);
  return genders.map((gender) =>
    makeEnd(thread, {
      id: row.kind === 'banjo' ? row.id : `${row.id} ${gender}`,
      system: row.kind,
      gender,
      seat: kind.seat,
      standard: kind.standard,
      fittingId: row.id,
      dash: row.dash,
      oRing,
      rings: row.washers,
      ringSource: row.washerSource,
    }),
  );
}

function threadEnds(thread: Thread, rings: RingSet | undefined): readonly End[] {
  switch (thread.family) {
    case 'bsp-parallel':
      return parallelPipeEnds(thread, rings);
    case 'bsp-taper':
      return [
        pipeEnd(thread, 'r', `R ${thread.nominal} male`, 'male', 'ISO 7-1'),
        pipeEnd(thread, 'rc', `Rc ${thread.nominal} female`, 'female', 'ISO 7-1'),
        pipeEnd(thread, 'rp', `Rp ${thread.nominal} female`, 'female', 'ISO 7-1', { tapered: false }),
      ];
    case 'npt':
      return americanPipeEnds(thread);
    case 'iso-metric':
    case 'unified':
    case 'whitworth':
      return plainEnds(thread, rings);
  }
}

/** Nominal pipe bore in sixteenths: a 1/4 pipe goes by -4. */
export function pipeDash(nominal: string): number {
  const [whole = '0', fraction] = nominal.includes('/') ? splitMixed(nominal) : [nominal];
  const [top = 0, bottom = 1] = (fraction ?? '0/1').split('/').map(Number);
  return 16 * (Number(whole) + top / bottom);
}

function splitMixed(nominal: string): readonly [string, string] {
  const [first = '', second] = nominal.split('-');
  return second === undefined ? ['0', first] : [first, second];
}

function pipeEnd(
  thread: Thread,
  system: System,
  id: string,
  gender: End['gender'],
  standard: string,
  more: Partial<End> = {},
): End {
  return makeEnd(thread, {
    id,
    system,
    gender,
    seat: 'taper',
    standard,
    dash: pipeDash(thread.nominal),
    ...more,
  });
}

function parallelPipeEnds(thread: Thread, rings: RingSet | undefined): readonly End[] {
  const seats: readonly (readonly [EndSeat, boolean, string])[] = [
    ['washer', true, 'ISO 228-1, ISO 1179-1'],
    ['cone60', false, 'ISO 228-1, ISO 8434-6'],
    ['flare30', false, 'JIS B 0202, JIS B 8363'],
    ['none', false, 'ISO 228-1'],
  ];
  return seats.flatMap(([seat, usual, standard]) =>
    (['male', 'female'] as const).map((gender) =>
      pipeEnd(thread, 'g', named(thread.id, gender, seat === 'washer' ? undefined : seat), gender, standard, {
        seat,
        usual,
        ...(seat === 'washer' ? rings : {}),
      }),
    ),
  );
}

function americanPipeEnds(thread: Thread): readonly End[] {
  const size = thread.id.replace(' NPT', '');
  const end = (system: System, suffix: string, gender: End['gender'], more: Partial<End> = {}): End =>
    pipeEnd(
      thread,
      system,
      named(`${size} ${suffix}`, gender, more.seat),
      gender,
      suffix === 'NPTF' ? 'ASME B1.20.3' : 'ASME B1.20.1',
      more,
    );
  return [
    end('npt', 'NPT', 'male'),
    end('npt', 'NPT', 'female'),
    end('nptf', 'NPTF', 'male'),
    end('nptf', 'NPTF', 'female'),
    end('npt', 'NPT', 'male', { usual: false, seat: 'seat30' }),
    end('nptf', 'NPTF', 'male', { usual: false, seat: 'seat30' }),
    end('npsm', 'NPSM', 'female', { seat: 'seat30', tapered: false }),
  ];
}

const STANDARD_OF: Readonly<Partial<Record<Thread['family'], string>>> = {
  'iso-metric': 'ISO 261',
  unified: 'ASME B1.1',
  whitworth: 'BS 84',
};

/** A thread of no fitting standard: sealed by a washer, by nothing, a brake pipe's end, or a bolt and its nut. */
function plainEnds(thread: Thread, rings: RingSet | undefined): readonly End[] {
  const seats: readonly EndSeat[] = ['washer', 'none', 'double-flare', 'bubble-flare', 'fastener'];
  return seats.flatMap((seat) =>
    (['male', 'female'] as const).map((gender) =>
      makeEnd(thread, {
        id:
          seat === 'fastener'
            ? `${thread.id} ${gender === 'male' ? 'bolt' : 'nut'}`
            : named(thread.id, gender, seat),
        system: 'plain',
        gender,
        seat,
        standard: STANDARD_OF[thread.family] ?? '',
        usual: seat === 'washer' || seat === 'none',
        ...(seat === 'washer' ? rings : {}),
      }),
    ),
  );
}

function named(thread: string, gender: End['gender'], seat: EndSeat | undefined): string {
  const seatName = seat === undefined ? undefined : SEAT_NAMES[seat];
  return [thread, gender, ...(seatName === undefined ? [] : [seatName])].join(' ');
}
