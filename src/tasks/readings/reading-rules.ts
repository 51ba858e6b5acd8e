import { buildHere, crewOf, openBuildHere } from '../../bot/crew.ts';
import type { Hand } from '../../bot/hand.ts';
import { undoButton } from '../../bot/undo-button.ts';
import type { Answer } from '../../core/reply.ts';
import { UserError } from '../../core/user-error.ts';
import { fields } from '../../phrases/quantity/fields.ts';
import { readQuantity } from '../../phrases/quantity/read-quantity.ts';
import { resolveUnit } from '../../phrases/quantity/resolve-unit.ts';
import { readLimit } from '../../phrases/readings/read-limit.ts';
import { findKind } from '../../records/readings/find-reading.ts';
import { kindsWith } from '../../records/readings/kinds.ts';
import { limitData, limitsAnswer } from '../../records/readings/limits-answer.ts';
import { dropKind, dropLimit, makeKind, sayOwnLimit, setLimit } from '../../records/readings/own-rules.ts';
import type { LimitOrigin } from '../../records/readings/reading.ts';
import { type AfrOf, kindsHere } from './readings.ts';

/** The limits in force, of all kinds or of one. */
export function showLimits(hand: Hand, kind: string | undefined, page: number): Answer {
  const build = buildHere(hand);
  const found = kind === undefined ? undefined : findKind(hand.record, build?.id, kind);
  const limits = build === undefined ? [] : hand.record.readingRules.limits(build.id);
  return limitsAnswer({ kinds: kindsHere(hand), limits, kind: found, page });
}

export interface LimitSaid {
  readonly kind: string;
  readonly limit: string;
  readonly from: LimitOrigin;
}

/** Puts a limit down. @throws UserError 'which-one' about the option `limit`, or 'bad-input'. */
export function setLimitHere(hand: Hand, said: LimitSaid, afrOf: AfrOf): Answer {
  const kind = findKind(hand.record, buildHere(hand)?.id, said.kind);
  const read = readLimit(said.limit, kind.name, { kinds: kindsHere(hand), afrOf });
  if (read.verdict === 'refuse') throw new UserError('bad-input', `${read.problem} No limit was changed.`);
  if (read.verdict === 'ask') {
    throw new UserError('which-one', read.question, {
      field: 'limit',
      choices: read.options.map(({ label, typed }) => ({ label: label.slice(0, 100), value: typed })),
    });
  }
  const changed = hand.change((record) =>
    setLimit(record, {
      buildId: openBuildHere(record, hand).id,
      kind: kind.name,
      min: read.min,
      max: read.max,
      conditions: read.conditions,
      origin: said.from,
      typed: said.limit,
      byName: hand.who.name,
      setOn: crewOf(hand).today,
    }),
  );
  const { limit, before } = changed.value;
  return {
    kind: 'answer',
    subject: 'Limit',
    result: sayOwnLimit(limit, kind, read.shownIn),
    certainty:
      before === undefined
        ? `Readings of ${kind.name} are judged by it from now on.`
        : `It was “${before.typed}”.`,
    buttons: [undoButton(changed)],
    audience: 'crew',
    data: { ...limitData(limit, kindsHere(hand)), said: changed.said, change: changed.changeId },
  };
}

export function dropLimitHere(hand: Hand, id: number): Answer {
  const buildId = buildHere(hand)?.id ?? 0;
  const changed = hand.change((record) => dropLimit(record, buildId, id));
  return {
    kind: 'answer',
    subject: 'Limit',
    result: `The limit of ${changed.value.kind} is off: ${changed.value.typed}`,
    buttons: [undoButton(changed)],
    audience: 'crew',
    data: { limit: id, said: changed.said, change: changed.changeId },
  };
}

export interface KindSaid {
  readonly name: string;
  readonly unit?: string | undefined;
  readonly limit?: string | undefined;
  readonly remove: boolean;
}

/** Makes, changes or takes off a kind of the crew's own. */
export function ownKindHere(hand: Hand, said: KindSaid, afrOf: AfrOf): Answer {
  if (said.remove) return dropKindHere(hand, said.name);
  const { name } = said;
  const changed = hand.change((record) => {
    const buildId = openBuildHere(record, hand).id;
    const made = makeKind(record, buildId, { name, unit: unitOf(said.unit) });
    const kinds = kindsWith(record.readingRules.ownKinds(buildId));
    if (said.limit === undefined) return made;
    const read = readLimit(said.limit, name, { kinds, afrOf });
    if (read.verdict !== 'read') {
      const problem = read.verdict === 'refuse' ? read.problem : `${read.question} Say the unit with it.`;
      throw new UserError('bad-input', `The limit “${said.limit}”: ${problem} The kind was not made.`);
    }
    const { min, max, conditions } = read;
    const limit = { buildId, kind: name, min, max, conditions, origin: 'crew', typed: said.limit } as const;
    setLimit(record, { ...limit, byName: hand.who.name, setOn: crewOf(hand).today });
    return { value: made.value, said: `${made.said}, ${said.limit}` };
  });
  const { unit } = changed.value;
  return {
    kind: 'answer',
    subject: 'Kind of reading',
    result: `${name}, in ${unit}`,
    certainty: `Logged like any other: /reading log reading:"${name} 12 ${unit}".`,
    buttons: [undoButton(changed)],
    audience: 'crew',
    data: { kind: name, unit, limit: said.limit ?? null, said: changed.said, change: changed.changeId },
  };
}

/** A unit the bot knows by its own name, so that it converts; any other word stays the crew's. */
function unitOf(typed: string | undefined): string {
  const word = typed?.trim() ?? '';
  if (word === '')
    throw new UserError('bad-input', 'unit: say what it is counted in, as in N, mm, turns or clicks.');
  for (const field of [
    'pressure',
    'temperature',
    'voltage',
    'current',
    'resistance',
    'length',
    'force',
    'torque',
    'angle',
    'mass',
    'volume',
    'time',
    'percent',
  ] as const) {
    const meant = resolveUnit(word, fields[field]);
    if (meant.kind === 'unit' && !meant.slip) {
      const read = readQuantity(`1 ${word}`, field);
      return read.verdict === 'read' ? read.typedUnit : meant.unit;
    }
  }
  if (/\d/u.test(word))
    throw new UserError(
      'bad-input',
      `unit: “${word}” has a figure in it. Say the unit alone, as in N or turns.`,
    );
  return word;
}

function dropKindHere(hand: Hand, name: string): Answer {
  const buildId = buildHere(hand)?.id ?? 0;
  const changed = hand.change((record) => dropKind(record, buildId, name));
  return {
    kind: 'answer',
    subject: 'Kind of reading',
    result: `${changed.value.name} is off; its readings stay`,
    buttons: [undoButton(changed)],
    audience: 'crew',
    data: { kind: changed.value.name, said: changed.said, change: changed.changeId },
  };
}
