import type { WholeBuild } from '../../records/builds/whole-build.ts';
import type { Sheet } from '../csv.ts';

/** Every port that was noted. */
export function portSheet({ record, build }: WholeBuild): Sheet {
  return {
    name: 'ports',
    head: ['port', 'end', 'typed', 'note', 'link', 'noted by', 'noted on'],
    rows: record.ports
      .ofBuild(build.id)
      .map((port) => [port.name, port.endId, port.typed, port.note, port.link, port.notedBy, port.notedOn]),
  };
}
