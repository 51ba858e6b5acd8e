import { buildHere, crewOf, openBuildHere } from '../../bot/crew.ts';
import type { Hand } from '../../bot/hand.ts';
import { undoButton } from '../../bot/undo-button.ts';
import type { Answer } from '../../core/reply.ts';
import { findPort } from '../../records/ports/find-port.ts';
import { notePort, type PortReading, removePort } from '../../records/ports/note-port.ts';
import type { Port } from '../../records/ports/port.ts';
import { portAnswer } from '../../records/ports/port-answer.ts';

/** Every port noted for this channel's build, by name. */
export function portsHere(hand: Hand): readonly Port[] {
  const build = buildHere(hand);
  return build ? hand.record.ports.ofBuild(build.id) : [];
}

/** @throws UserError 'not-found' or 'which-one' about the option `field`. */
export function portHere(hand: Hand, typed: string, field: string): Port {
  return findPort(hand.record, buildHere(hand)?.id, typed, field);
}

export function showPort(hand: Hand, typed: string): Answer {
  return portAnswer({ port: portHere(hand, typed, 'name'), today: crewOf(hand).today });
}

/** Notes or corrects a port. `readAs` is its end in words. */
export function notePortHere(
  hand: Hand,
  said: Omit<PortReading, 'buildId' | 'by' | 'on'>,
  readAs: string,
): Answer {
  const { today } = crewOf(hand);
  const changed = hand.change((record) =>
    notePort(record, { ...said, buildId: openBuildHere(record, hand).id, by: hand.who.name, on: today }),
  );
  const { port, before } = changed.value;
  const was = before === undefined || before.endId === port.endId ? '' : ` It was ${before.endId}.`;
  const card = portAnswer({
    port,
    today,
    said: changed.said,
    certainty: `Read as ${readAs}.${was}`,
    extraButtons: [undoButton(changed)],
  });
  return { ...card, data: { ...card.data, change: changed.changeId } };
}

export function removePortHere(hand: Hand, typed: string): Answer {
  const found = portHere(hand, typed, 'port');
  const changed = hand.change((record) => removePort(record, found));
  return {
    kind: 'answer',
    subject: 'Port',
    result: `${found.name} is off the list`,
    buttons: [undoButton(changed)],
    audience: 'crew',
    data: { port: found.id, said: changed.said, change: changed.changeId },
  };
}
