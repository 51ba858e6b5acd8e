import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { canRecord, type DiskEvent, recordDisk } from '../../support/disk-recording.ts';
import { cutDisk, type Fate } from '../../support/power-cut.ts';
import { scratchFolder } from '../../support/scratch-folder.ts';
import { lastWholeChange, workedOutContents } from '../../support/workload.ts';

const WRITER = new URL('../../support/acknowledging-writer.ts', import.meta.url);
const CHANGES = 60;
const CUTS = Number(process.env['CUTS'] ?? 1_200);
const FATES: readonly Fate[] = ['lost', 'torn', 'kept'];

const recordable = canRecord();

function record(synchronous: 'FULL' | 'NORMAL'): { folder: string; events: readonly DiskEvent[] } {
  const folder = join(scratchFolder(), 'disk');
  const args = [join(folder, 'team.sqlite'), String(CHANGES), synchronous];
  return { folder, events: recordDisk(WRITER, args, folder, scratchFolder()) };
}

/** Cuts the power at moments spread over the recording and opens what is left, as the program would after it. */
function cutAll({ folder, events }: ReturnType<typeof record>, cuts: number) {
  const contents = workedOutContents();
  const chance = chanceFrom(Number(process.env['FC_SEED'] ?? 20261124));
  const moments = Array.from({ length: cuts }, () => Math.floor(chance() * (events.length + 1))).toSorted(
    (a, b) => a - b,
  );
  const disk = cutDisk(folder);
  const left = join(scratchFolder(), 'left');
  const losses: string[] = [];
  const unusable: string[] = [];
  let fed = 0;
  let acknowledged = 0;
  for (const [index, moment] of moments.entries()) {
    for (const event of events.slice(fed, moment)) {
      disk.feed(event);
      if (event.kind === 'ack') acknowledged = event.change;
    }
    fed = moment;
    const fate = FATES[index % FATES.length] ?? 'torn';
    disk.cut(fate, chance, left);
    try {
      const last = lastWholeChange(join(left, 'team.sqlite'), contents);
      if (last < acknowledged) losses.push(`event ${moment}, writes ${fate}: ${last} of ${acknowledged}`);
    } catch (error) {
      unusable.push(
        `event ${moment}, writes ${fate}: ${error instanceof Error ? error.message : String(error)}`,
      );
    }
  }
  return { losses, unusable, acknowledged };
}

/** Numbers from 0 up to 1, the same for the same seed: Park and Miller's generator (CACM 36(7), 1993, p. 108). */
function chanceFrom(seed: number): () => number {
  let state = seed % 2_147_483_647;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

describe.runIf(recordable)('a power cut', () => {
  it(`loses no acknowledged change and leaves nothing half-written, at any of ${CUTS} moments`, () => {
    const { losses, unusable, acknowledged } = cutAll(record('FULL'), CUTS);
    expect(acknowledged).toBeGreaterThan(CHANGES / 2);
    expect(unusable).toEqual([]);
    expect(losses).toEqual([]);
  });

  it('would lose acknowledged changes if commits were not synced: the cuts can see it', () => {
    const { losses } = cutAll(record('NORMAL'), CUTS / 4);
    expect(losses).not.toEqual([]);
  });

  it('finds every change on the disk before the ledger has said that it is saved', () => {
    const { events } = record('FULL');
    let unsynced = 0;
    let written = 0;
    let acks = 0;
    for (const event of events) {
      const inLog = 'path' in event && event.path.endsWith('-wal');
      if (event.kind === 'write' && inLog) {
        unsynced += 1;
        written += 1;
      }
      if (event.kind === 'sync' && inLog) unsynced = 0;
      if (event.kind === 'ack') {
        expect(unsynced).toBe(0);
        expect(written).toBeGreaterThan(0);
        written = 0;
        acks += 1;
      }
    }
    expect(acks).toBe(CHANGES);
  });
});
