import { sayFullDay } from '../../core/time.ts';
import type { WholeBuild } from '../../records/builds/whole-build.ts';
import type { Section } from '../paper.ts';

/** Every port and thread that somebody measured once. */
export function ports({ record, build }: WholeBuild): Section {
  const rows = record.ports
    .ofBuild(build.id)
    .map(({ name, endId, typed, note, link, notedBy, notedOn }) => [
      name,
      endId,
      [typed, note, link].filter((text) => text !== null).join('; '),
      `${notedBy}, ${sayFullDay(notedOn)}`,
    ]);
  return {
    heading: 'Ports and threads',
    blocks:
      rows.length === 0
        ? [{ kind: 'words', text: 'No port is noted.' }]
        : [{ kind: 'table', head: ['Port', 'End', 'Measured as', 'Noted by'], shares: [3, 3, 5, 3], rows }],
  };
}
