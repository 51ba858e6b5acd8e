import type { Day } from '../../core/time.ts';
import { plain } from '../suppliers/supplier.ts';
import type { TeamRecord } from '../team-record.ts';
import type { Port } from './port.ts';

/** What somebody says of a port; a note or link left out stays as it was. */
export interface PortReading {
  readonly buildId: number;
  readonly name: string;
  readonly endId: string;
  readonly typed: string;
  readonly note: string | undefined;
  readonly link: string | undefined;
  readonly by: string;
  readonly on: Day;
}

/** Writes a port down, or corrects the one of that name; names compare without case and spaces. */
export function notePort(
  record: TeamRecord,
  reading: PortReading,
): { readonly value: { readonly port: Port; readonly before: Port | undefined }; readonly said: string } {
  const { buildId, name, endId, typed, by, on } = reading;
  const before = record.ports.ofBuild(buildId).find((port) => plain(port.name) === plain(name));
  const written = {
    buildId,
    name: before?.name ?? name,
    endId,
    typed,
    note: reading.note ?? before?.note ?? null,
    link: reading.link ?? before?.link ?? null,
    notedBy: by,
    notedOn: on,
  };
  if (before === undefined) {
    const port = record.ports.note(written);
    return { value: { port, before }, said: `port "${port.name}" noted: ${endId}` };
  }
  const port = { ...written, id: before.id };
  record.ports.correct(port);
  const was = before.endId === endId ? '' : `, was ${before.endId}`;
  return { value: { port, before }, said: `port "${port.name}" corrected: ${endId}${was}` };
}

/** Takes a port off the build. */
export function removePort(record: TeamRecord, port: Port): { readonly value: Port; readonly said: string } {
  record.ports.remove(port.id);
  return { value: port, said: `port "${port.name}" (${port.endId}) removed` };
}
