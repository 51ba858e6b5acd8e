import { expect, it } from 'vitest';
import { standings } from '../../../../src/records/parts/standings.ts';
import { BOOKKEEPING, openTeamRecord, STANDING } from '../../../../src/records/team-record.ts';
import { openLedger } from '../../../../src/sqlite/ledger.ts';
import { migrate } from '../../../../src/sqlite/migrate.ts';
import { migrations } from '../../../../src/sqlite/migrations/list.ts';
import { openDatabase } from '../../../../src/sqlite/open.ts';

const by = (interactionId: string) => ({ interactionId, personId: 'ada', personName: 'Ada', atMs: 1 });

/** A file from before parts were kept, in which an order was placed; then brought up to date. */
function olderFile() {
  const before = migrations.findIndex(({ name }) => name === '0004-parts');
  expect(before).toBeGreaterThan(0);
  const db = openDatabase(':memory:', { migrations: migrations.slice(0, before), nowMs: 0 });
  const old = openLedger(db, { unrecorded: ['morning', 'outbox', 'draft'] });
  const placed = old.change(by('placed'), () => {
    db.exec(`
      INSERT INTO build (channel_id, name) VALUES ('600', 'Coupe');
      INSERT INTO supplier (name) VALUES ('Norvale');
      INSERT INTO orders (build_id, what, supplier_id, quantity, ordered_on, promised_on, first_promised_on, chaser_id, chaser_name)
        VALUES (1, 'head gasket', 1, 2, '2026-11-16', '2026-11-20', '2026-11-20', 'ada', 'Ada')`);
    return { value: null, said: 'order #1 placed' };
  });
  const cancelled = old.change(by('cancelled'), () => {
    db.exec('UPDATE orders SET cancelled = 1');
    return { value: null, said: 'order #1 cancelled' };
  });
  // the triggers of the old schema go with its connection; here both share one
  for (const { name } of db
    .prepare<[], { name: string }>("SELECT name FROM sqlite_temp_schema WHERE type = 'trigger'")
    .all()) {
    db.exec(`DROP TRIGGER temp."${name}"`);
  }
  db.exec('DROP TABLE temp.open_change');
  migrate(db, migrations);
  return { db, placed, cancelled, ledger: openLedger(db, { unrecorded: BOOKKEEPING, standing: STANDING }) };
}

it('an order from before parts were kept is put back by undo, and counts for the part of its name', () => {
  const { db, cancelled, ledger } = olderFile();
  const record = openTeamRecord(db);
  expect(ledger.undo(by('undo'), cancelled.changeId).said).toBe('Undone: order #1 cancelled');
  expect(record.orders.find(1)).toMatchObject({
    cancelled: false,
    partId: null,
    kind: 'goods',
    purchaseId: null,
  });
  ledger.change(by('part'), () => {
    const details = {
      origin: 'new',
      system: null,
      singleUse: true,
      note: null,
      link: null,
      guess: null,
    } as const;
    record.parts.add({ buildId: 1, name: 'head gasket', needed: 2, ...details });
    return { value: null, said: 'a part' };
  });
  expect(standings(record, 1, '2026-11-18')).toMatchObject([{ coming: [{ quantity: 2 }], missing: 0 }]);
  db.close();
});

it('the change that placed it is undone and put back, the newer columns at their first values', () => {
  const { db, placed, cancelled, ledger } = olderFile();
  const record = openTeamRecord(db);
  ledger.undo(by('undo 1'), cancelled.changeId);
  const undone = ledger.undo(by('undo 2'), placed.changeId);
  expect(record.orders.find(1)).toBeUndefined();
  ledger.undo(by('undo 3'), undone.changeId);
  expect(record.orders.find(1)).toMatchObject({
    what: 'head gasket',
    partId: null,
    kind: 'goods',
    link: null,
  });
  expect(ledger.audit()).toEqual([]);
  db.close();
});
