import { dayAt, sayFullDay } from '../../core/time.ts';
import type { WholeBuild } from '../../records/builds/whole-build.ts';
import type { TeamRecord } from '../../records/team-record.ts';
import { guideOf } from '../../records/walks/guide-book.ts';
import { sayOutcome, sayStep } from '../../records/walks/say-finding.ts';
import { isOpen, type Walk } from '../../records/walks/walk.ts';
import type { Section } from '../paper.ts';

/** Every search for a fault: what was found step by step, and what it came to. */
export function faults({ record, build, zone }: WholeBuild): Section {
  const walks = record.walks.ofBuild(build.id);
  return {
    heading: 'Faults looked for',
    blocks:
      walks.length === 0
        ? [{ kind: 'words', text: 'None was looked for with the guide.' }]
        : [
            {
              kind: 'table',
              head: ['Symptom', 'Begun', 'Found', 'It was'],
              shares: [3, 3, 6, 4],
              rows: walks.map((walk) => rowOf(record, walk, zone)),
            },
          ],
  };
}

function rowOf(record: TeamRecord, walk: Walk, zone: string): readonly string[] {
  const guide = guideOf(walk.symptom);
  const cause = guide.causes.find(({ id }) => id === walk.cause);
  const found = walk.findings.map(
    ({ step, outcome, note }) =>
      `${sayStep(record, guide, step)}: ${sayOutcome(guide, step, outcome)}${note === null ? '' : ` (${note})`}`,
  );
  return [
    guide.name,
    `${sayFullDay(dayAt(walk.startedAtMs, zone))}, ${walk.startedBy}`,
    found.join('; '),
    isOpen(walk) ? 'still looked for' : [cause?.name, walk.note].filter(Boolean).join(': ') || 'not found',
  ];
}
