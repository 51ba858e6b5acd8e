import type { JsonObject } from '../../core/json.ts';
import type { Answer, Button, Fact } from '../../core/reply.ts';
import { type Day, sayDay } from '../../core/time.ts';
import type { Port } from './port.ts';

export interface PortView {
  readonly port: Port;
  readonly today: Day;
  /** What has just been done, in words. */
  readonly said?: string;
  /** How the end was read. */
  readonly certainty?: string;
  readonly extraButtons?: readonly Button[];
}

/** One port as a card. */
export function portAnswer({ port, today, said, certainty, extraButtons = [] }: PortView): Answer {
  const { name, endId, typed, note, link, notedBy, notedOn } = port;
  const facts: readonly Fact[] = [
    ['Typed', typed],
    ...(note === null ? [] : [['Note', note] as const]),
    ...(link === null ? [] : [['Photo', link] as const]),
    ['Noted by', `${notedBy}, ${sayDay(notedOn, today)}`],
  ];
  return {
    kind: 'answer',
    subject: 'Port',
    result: `${name}: ${endId}`,
    ...(certainty === undefined ? {} : { certainty }),
    facts,
    buttons: [removeButton(port), ...extraButtons],
    audience: 'crew',
    data: { ...portData(port), ...(said === undefined ? {} : { said }) },
  };
}

/** All ports of a build. */
export function portList(ports: readonly Port[]): Answer {
  return {
    kind: 'answer',
    subject: 'Ports',
    result:
      ports.length === 0
        ? 'No port is noted yet'
        : `${ports.length} ${ports.length === 1 ? 'port' : 'ports'} noted`,
    ...(ports.length === 0
      ? { certainty: '/fitting port writes one down: its name, and its end as you measured it.' }
      : {}),
    items: ports.map(({ name, endId, note }) => ({
      text: `${name}: ${endId}`,
      ...(note === null ? {} : { note }),
    })),
    audience: 'crew',
    data: { ports: ports.map(portData) },
  };
}

function removeButton({ id }: Port): Button {
  return {
    label: 'Remove',
    weight: 'grave',
    does: { command: 'fitting', action: 'remove', args: { port: `#${id}` } },
  };
}

export function portData({ id, name, endId, typed, note, link, notedBy, notedOn }: Port): JsonObject {
  return { port: id, name, end: endId, typed, note, link, notedBy, notedOn };
}
