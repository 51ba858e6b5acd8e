import type { Sheet } from '../csv.ts';
import type { SheetSource } from './sheet-source.ts';

/** Every port that was noted. */
export function portSheet({ record, build }: SheetSource): Sheet {
  return {
    name: 'ports',
    head: ['port', 'end', 'typed', 'note', 'link', 'noted by', 'noted on'],
    rows: record.ports
      .ofBuild(build.id)
      .map((port) => [port.name, port.endId, port.typed, port.note, port.link, port.notedBy, port.notedOn]),
  };
}
