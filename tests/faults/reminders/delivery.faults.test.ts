import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { clockAt, type SetClock } from '../../../src/core/clock.ts';
import { instantOf } from '../../../src/core/time.ts';
import { place } from '../../../src/records/orders/place.ts';
import { openTeams, type Teams } from '../../../src/teams.ts';
import { Crash, type FakePlatform, fakePlatform, type Mishap } from '../../support/fake-platform.ts';
import { scratchFolder } from '../../support/scratch-folder.ts';
import { integrityOf } from '../../support/table-state.ts';

const MORNING = instantOf('2026-12-14', '08:30', 'Europe/London');
const MINUTE = 60_000;
const TICK = 15_000;

/** Where the process ends, and how the disk's side of it is brought about. */
const CRASHES = {
  'before the message is written down': 'BEFORE INSERT ON outbox',
  'between writing it down and marking the morning': 'BEFORE INSERT ON morning',
  'before the attempt is claimed': "BEFORE UPDATE ON outbox WHEN NEW.state = 'claimed'",
  'before it reached the platform': null,
  'before the answer came back': null,
  'before it is marked as sent': "BEFORE UPDATE ON outbox WHEN NEW.state = 'sent'",
} as const;
type CrashPoint = keyof typeof CRASHES;

const FAULTS: readonly Mishap[] = [
  'none',
  'server error before it took effect',
  'server error after it took effect',
  'answer lost',
  'too many',
];

const RESTARTS = {
  '1 s': 1_000,
  '3 min': 3 * MINUTE,
  '1 h': 60 * MINUTE,
  '3 days': 3 * 24 * 60 * MINUTE,
} as const;

/** A team with a late order, its bot not started yet. */
interface Bench {
  readonly file: string;
  readonly clock: SetClock;
  readonly platform: FakePlatform;
  readonly faults: unknown[];
  open(): Teams;
}

function bench(): Bench {
  const file = `${scratchFolder()}/crew.sqlite`;
  const clock = clockAt(MORNING);
  const faults: unknown[] = [];
  const open = (): Teams => {
    const teams = openTeams({ shelf: { file }, clock, report: (fault) => void faults.push(fault) });
    teams.at('1');
    return teams;
  };
  const teams = open();
  const { record, ledger } = teams.at('1');
  ledger.change({ interactionId: '1', personId: '1', personName: 'Ada', atMs: 0 }, () => {
    const build = record.builds.open('7', 'Hill-climb seven');
    return place(record, {
      buildId: build.id,
      what: 'head gasket',
      supplier: 'Norvale Gaskets',
      quantity: 1,
      price: null,
      orderedOn: '2026-12-07',
      due: '2026-12-09',
      chaser: { id: '1', name: 'Ada' },
    });
  });
  teams.close();
  return { file, clock, platform: fakePlatform(() => clock.nowMs()), faults, open };
}

/** Makes the next write of this kind fail, as if the process ended right before it. */
function endAt(file: string, event: string): () => void {
  const change = (sql: string): void => {
    const db = new Database(file);
    db.exec(sql);
    db.close();
  };
  change(`CREATE TRIGGER the_end ${event} BEGIN SELECT RAISE(ABORT, 'the process ends here'); END`);
  return () => change('DROP TRIGGER the_end');
}

async function ticks(teams: Teams, { clock, platform }: Bench, forMs: number): Promise<void> {
  const endMs = clock.nowMs() + forMs;
  for (; clock.nowMs() <= endMs; clock.set(clock.nowMs() + TICK))
    await teams.tick(clock.nowMs(), platform.post);
}

/** One run: the first attempt suffers `fault`, the process ends at `point` of the next, and is back after `awayMs`. */
async function crashed(point: CrashPoint, fault: Mishap, awayMs: number): Promise<Bench> {
  const made = bench();
  const { file, clock, platform, faults } = made;
  const teams = made.open();
  if (fault !== 'none') {
    platform.suffer(fault);
    await teams.tick(clock.nowMs(), platform.post);
    clock.set(clock.nowMs() + TICK);
  }
  const event = CRASHES[point];
  const mend = event === null ? () => {} : endAt(file, event);
  if (event === null)
    platform.suffer(
      point === 'before it reached the platform' ? `crash ${point}` : 'crash before the answer came back',
    );
  await teams.tick(clock.nowMs(), platform.post);
  expect(faults.at(-1)).toSatisfy(
    (last) => last instanceof Crash || String(last).includes('the process ends here'),
  );
  teams.close();
  mend();
  clock.set(clock.nowMs() + awayMs);
  const back = made.open();
  await ticks(back, made, 5 * MINUTE);
  clock.set(clock.nowMs() + 60 * MINUTE);
  await ticks(back, made, MINUTE);
  back.close();
  return made;
}

const days = ({ platform }: Bench): readonly unknown[] =>
  platform.posted.map(({ answer }) => answer.data['day']);

const rows = (Object.keys(CRASHES) as CrashPoint[]).flatMap((point) =>
  FAULTS
    // once it is written down it is not written down again
    .filter(
      (fault) => fault === 'none' || !(point.startsWith('before the message') || point.startsWith('between')),
    )
    .flatMap((fault) =>
      (Object.keys(RESTARTS) as (keyof typeof RESTARTS)[]).map((away) => ({ point, fault, away })),
    ),
);

describe('a process that ends', () => {
  it.each(rows)('$point, after "$fault", and is back after $away', async ({ point, fault, away }) => {
    const made = await crashed(point, fault, RESTARTS[away]);
    const gotThrough =
      fault === 'server error after it took effect' ||
      fault === 'answer lost' ||
      point === 'before the answer came back' ||
      point === 'before it is marked as sent';
    const monday = away === '3 days' && !gotThrough ? [] : ['2026-12-14'];
    const thursday = away === '3 days' ? ['2026-12-17'] : [];
    expect(days(made)).toEqual([...monday, ...thursday]);
    expect(integrityOf(made.file)).toBe('ok');
  });
});

describe('a message held up', () => {
  /** Every attempt fails from this wall time of Monday on, for so long. */
  async function heldUp(from: string, forMs: number): Promise<Bench> {
    const made = bench();
    made.clock.set(instantOf('2026-12-14', from, 'Europe/London'));
    made.platform.suffer(...Array.from({ length: 40 }, (): Mishap => 'server error before it took effect'));
    const teams = made.open();
    await ticks(teams, made, forMs);
    teams.close();
    return made;
  }

  it('is not tried more than a few times an hour', async () => {
    const { faults } = await heldUp('08:30', 3 * 60 * MINUTE);
    expect(faults.length).toBeGreaterThan(4);
    expect(faults.length).toBeLessThan(10);
  });

  it('until the evening waits for the next morning instead of coming at night', async () => {
    const made = await heldUp('19:45', 20 * MINUTE);
    const healed = fakePlatform(() => made.clock.nowMs());
    const teams = made.open();
    for (const [day, time] of [
      ['2026-12-14', '21:30'],
      ['2026-12-15', '03:00'],
      ['2026-12-15', '08:29'],
    ] as const) {
      made.clock.set(instantOf(day, time, 'Europe/London'));
      await teams.tick(made.clock.nowMs(), healed.post);
      expect(healed.posted).toEqual([]);
    }
    made.clock.set(instantOf('2026-12-15', '08:30', 'Europe/London'));
    await teams.tick(made.clock.nowMs(), healed.post);
    expect(healed.posted.map(({ answer }) => answer.data['day'])).toEqual(['2026-12-15']);
    teams.close();
  });

  it('says nothing any more when all of it has been dealt with meanwhile', async () => {
    const made = await heldUp('08:30', MINUTE);
    const teams = made.open();
    const { record, ledger } = teams.at('1');
    const [late] = record.orders.ofBuild(1);
    if (late === undefined) throw new Error('the bench has an order');
    ledger.change({ interactionId: '2', personId: '1', personName: 'Ada', atMs: 0 }, () => {
      record.orders.cancel(late.id);
      return { value: null, said: 'cancelled' };
    });
    const healed = fakePlatform(() => made.clock.nowMs());
    made.clock.set(made.clock.nowMs() + 30 * MINUTE);
    await teams.tick(made.clock.nowMs(), healed.post);
    expect(healed.posted).toEqual([]);
    teams.close();
  });

  it('comes once more at most where the history cannot be read, and says that it may be a repeat', async () => {
    const made = bench();
    const { clock, platform } = made;
    platform.hideHistory();
    platform.suffer('crash before the answer came back');
    const teams = made.open();
    await teams.tick(clock.nowMs(), platform.post);
    teams.close();
    clock.set(clock.nowMs() + 10 * MINUTE);
    const back = made.open();
    await ticks(back, made, 10 * MINUTE);
    back.close();
    expect(platform.posted).toHaveLength(2);
    expect(platform.posted[1]?.answer.certainty).toContain('This may be a repeat');
  });
});
