import type { Hand } from '../../bot/hand.ts';
import type { Answer } from '../../core/reply.ts';
import { UserError } from '../../core/user-error.ts';
import type { LineConditions, LineReading } from '../../phrases/readings/line-reading.ts';
import { readLine } from '../../phrases/readings/read-line.ts';
import { sayLine, typedValue } from '../../phrases/readings/say-line.ts';
import { type Kind, kindNamed } from '../../records/readings/kinds.ts';
import { correctReading } from '../../records/readings/log-readings.ts';
import { unlikely } from '../../records/readings/plausible.ts';
import { type AfrOf, kindsHere, meant, readingHere, report, SURE } from './readings.ts';

/** Corrects a reading: what is typed is its value as it should have been, with conditions where they change. */
export function correctReadingHere(hand: Hand, typed: string, value: string, afrOf: AfrOf): Answer {
  const reading = readingHere(hand, typed);
  const kinds = kindsHere(hand);
  const sure = SURE.test(value);
  const text = value.replace(SURE, '');
  const kind = kindNamed(reading.kind, hand.record.readingRules.ownKinds(reading.buildId), reading.unit);
  const found = readLine(`${reading.kind} ${text}`, {
    kinds: kinds.map((each) => (each.name === reading.kind ? withoutPlace(each) : each)),
    afrOf,
    anyState: true,
  });
  const read = meant(stripKind(found, reading.kind), 'value');
  const [only, another] = read.values;
  if (only === undefined || another !== undefined || read.kind !== reading.kind) {
    throw new UserError(
      'bad-input',
      `One value corrects a reading; "${text}" has several. Nothing was changed.`,
    );
  }
  const earlier = hand.record.readings
    .ofKind(reading.buildId, reading.kind)
    .filter(({ id }) => id !== reading.id);
  const doubt = sure ? undefined : unlikely(only.value, only.shownIn, kind, earlier, reading.takenAtMs);
  if (doubt !== undefined) {
    throw new UserError('which-one', `${doubt.why} Nothing was changed yet.`, {
      field: 'value',
      choices: [
        ...doubt.instead.map(({ figure, unit }) => {
          const line = sayLine('', [{ figure, unit, conditions: only.conditions }]);
          return { label: typedValue(figure, unit), value: `=${line}` };
        }),
        { label: `As typed: ${text}`.slice(0, 80), value: `=${text}` },
      ],
    });
  }
  const changed = hand.change((record) =>
    correctReading(record, reading, {
      value: only.value,
      shownIn: only.shownIn,
      typed: text,
      conditions: merged(reading.conditions, only.conditions),
    }),
  );
  return report(hand, { ...changed, value: [changed.value] }, read.readAs.join(' '));
}

function withoutPlace({ place: _place, ...kind }: Kind): Kind {
  return kind;
}

/** A picked answer to a question about a value is a value, without the kind's name in front. */
function stripKind(found: LineReading, kind: string): LineReading {
  if (found.verdict !== 'ask') return found;
  const stripped = (typed: string): string =>
    typed.startsWith(`${kind} `) ? typed.slice(kind.length + 1) : typed;
  return {
    ...found,
    options: found.options.map(({ typed }) => ({ label: stripped(typed), typed: stripped(typed) })),
  };
}

/** What the correction does not say stays as it was. */
function merged(before: LineConditions, now: LineConditions): LineConditions {
  return { ...before, ...now, states: now.states.length > 0 ? now.states : before.states };
}
