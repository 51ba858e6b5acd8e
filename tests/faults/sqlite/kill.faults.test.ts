import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { startChild } from '../../support/child.ts';
import { scratchFolder } from '../../support/scratch-folder.ts';
import { lastWholeChange, workedOutContents } from '../../support/workload.ts';

const WRITER = new URL('../../support/acknowledging-writer.ts', import.meta.url);
const KILLS = 20;
const MORE_THAN_IT_GETS_TO = 1_000_000;

describe('a writer that is killed', () => {
  it(`${KILLS} times over leaves whole changes only, all it has acknowledged, and is followed without a hand's turn`, async () => {
    const path = join(scratchFolder(), 'team.sqlite');
    const contents = workedOutContents();
    let last = 0;
    for (let kill = 0; kill < KILLS; kill += 1) {
      const writer = startChild(WRITER, [path, String(MORE_THAN_IT_GETS_TO)]);
      const acksBeforeTheEnd = 1 + ((kill * 7) % 13);
      let acknowledged = last;
      for (let seen = 0; seen < acksBeforeTheEnd; seen += 1) {
        const line = await writer.nextLine();
        expect(line, writer.errors()).toMatch(/^ack \d+$/);
        acknowledged = Number(line?.slice('ack '.length));
      }
      await writer.kill();
      last = lastWholeChange(path, contents);
      expect(last).toBeGreaterThanOrEqual(acknowledged);
    }
    expect(last).toBeGreaterThan(KILLS);
  });
});
