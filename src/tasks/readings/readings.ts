import { buildHere, crewOf, openBuildHere } from '../../bot/crew.ts';
import type { Changed, Hand } from '../../bot/hand.ts';
import { undoButton } from '../../bot/undo-button.ts';
import type { Answer } from '../../core/reply.ts';
import { UserError } from '../../core/user-error.ts';
import type { LineReading } from '../../phrases/readings/line-reading.ts';
import { LINE_EXAMPLES, type LineContext, readLine } from '../../phrases/readings/read-line.ts';
import { sayLine, typedValue } from '../../phrases/readings/say-line.ts';
import { findReading } from '../../records/readings/find-reading.ts';
import { type Kind, kindsWith } from '../../records/readings/kinds.ts';
import { logReadings, removeReading } from '../../records/readings/log-readings.ts';
import { judgedBy, lookAt, spreadOf } from '../../records/readings/look-at.ts';
import { unlikely } from '../../records/readings/plausible.ts';
import type { Reading } from '../../records/readings/reading.ts';
import { readingAnswer } from '../../records/readings/reading-answer.ts';
import { READINGS_A_PAGE, readingList } from '../../records/readings/reading-list.ts';
import { figureIn } from '../../records/readings/say.ts';
import type { TeamRecord } from '../../records/team-record.ts';

/** The stoichiometric air–fuel ratio of a fuel by its name here; undefined where nobody knows it. */
export type AfrOf = LineContext['afrOf'];

/** Every kind this channel's build knows. */
export function kindsHere(hand: Hand): readonly Kind[] {
  const build = buildHere(hand);
  return kindsWith(build ? hand.record.readingRules.ownKinds(build.id) : []);
}

/** What somebody typed about a reading. */
export interface Said {
  readonly typed: string;
  readonly note?: string | undefined;
  readonly link?: string | undefined;
}

/** Someone has looked at the figure again: it is written down however unlikely it is. */
export const SURE = /^=\s*/;

/**
 * Reads a line and logs it.
 *
 * @throws UserError 'which-one' about the option `reading` when it means several things or is unlikely; else 'bad-input'.
 */
export function logReadingHere(hand: Hand, said: Said, afrOf: AfrOf): Answer {
  const sure = SURE.test(said.typed);
  const typed = said.typed.replace(SURE, '');
  const kinds = kindsHere(hand);
  const read = meant(readLine(typed, { kinds, afrOf }), 'reading');
  const kind = kindOf(kinds, read.kind);
  if (!sure) askOnce(hand, typed, read, kind);
  const changed = hand.change((record) =>
    logReadings(record, {
      buildId: openBuildHere(record, hand).id,
      kind,
      values: read.values,
      typed,
      note: said.note ?? read.note ?? null,
      link: said.link ?? null,
      atMs: hand.clock.nowMs(),
      byName: hand.who.name,
    }),
  );
  return report(hand, changed, read.readAs.join(' '));
}

/** @throws UserError for anything but a single meaning. */
export function meant(found: LineReading, field: string): LineReading & { readonly verdict: 'read' } {
  switch (found.verdict) {
    case 'read':
      return found;
    case 'ask':
      throw found.options.length === 0
        ? new UserError('bad-input', `${found.question} Nothing was logged.`)
        : new UserError('which-one', found.question, {
            field,
            choices: found.options.map(({ label, typed }) => ({ label: label.slice(0, 100), value: typed })),
          });
    case 'refuse':
      throw new UserError('bad-input', `${found.problem} Nothing was logged. Type it like ${LINE_EXAMPLES}.`);
  }
}

/** An unlikely value is asked about once: the picked line is taken as it stands. */
function askOnce(
  hand: Hand,
  typed: string,
  { values, kind: name, note }: LineReading & { readonly verdict: 'read' },
  kind: Kind,
): void {
  const build = buildHere(hand);
  const earlier = build ? hand.record.readings.ofKind(build.id, name) : [];
  for (const [index, { value, shownIn }] of values.entries()) {
    const doubt = unlikely(value, shownIn, kind, earlier, hand.clock.nowMs());
    if (doubt === undefined) continue;
    const lines = doubt.instead.map(({ figure, unit }) => ({
      label: typedValue(figure, unit),
      line: sayLine(
        name,
        values.map((each, at) => ({
          figure: at === index ? figure : figureIn(each.value, kind.unit, each.shownIn),
          unit: at === index ? unit : each.shownIn,
          conditions: each.conditions,
        })),
      ),
    }));
    const noted = note === undefined ? '' : ` note ${note}`;
    throw new UserError('which-one', `${doubt.why} Nothing was logged yet.`, {
      field: 'reading',
      choices: [
        ...lines.map(({ label, line }) => ({ label, value: `=${line}${noted}` })),
        {
          label: `As typed: ${typedValue(figureIn(value, kind.unit, shownIn), shownIn)}`,
          value: `=${typed}`,
        },
      ],
    });
  }
}

function kindOf(kinds: readonly Kind[], name: string): Kind {
  const found = kinds.find((kind) => kind.name === name);
  if (found) return found;
  throw new Error(`a line was read as ${name}, which is no kind`);
}

/** The card of what has just been logged or changed. */
export function report(hand: Hand, changed: Changed<readonly Reading[]>, certainty: string): Answer {
  return readingAnswer({
    ...view(hand, changed.value),
    certainty,
    said: changed.said,
    changeId: changed.changeId,
    extraButtons: [undoButton(changed)],
  });
}

function view(hand: Hand, readings: readonly Reading[]) {
  const { record } = hand;
  const { settings, today } = crewOf(hand);
  const buildId = readings[0]?.buildId ?? 0;
  const by = judgedBy(record, buildId);
  return {
    looks: readings.map((reading) => lookAt(record, reading, by)),
    spread: spreadOf(readings, by, kindsHere(hand)),
    today,
    zone: settings.zone,
  };
}

/** The reading named by number, or the newest of a kind. */
export function readingHere(hand: Hand, typed: string): Reading {
  return findReading(hand.record, buildHere(hand)?.id, typed);
}

export function showReading(hand: Hand, typed: string): Answer {
  const reading = readingHere(hand, typed);
  const whole = /^#?\d+$/u.test(typed.trim()) ? [reading] : setOf(hand.record, reading);
  return readingAnswer(view(hand, whole));
}

/** The readings typed in one line with this one. */
function setOf(record: TeamRecord, reading: Reading): readonly Reading[] {
  if (reading.setId === null) return [reading];
  return record.readings.ofKind(reading.buildId, reading.kind).filter(({ setId }) => setId === reading.setId);
}

export function listReadings(hand: Hand, kind: string | undefined, page: number): Answer {
  const build = buildHere(hand);
  const { settings, today } = crewOf(hand);
  const { readings } = hand.record;
  const all = build === undefined ? 0 : readings.count(build.id, kind);
  const wanted = Math.min(Math.max(page, 1), Math.max(1, Math.ceil(all / READINGS_A_PAGE)));
  const shown =
    build === undefined ? [] : readings.page(build.id, kind, READINGS_A_PAGE, (wanted - 1) * READINGS_A_PAGE);
  const by = build === undefined ? undefined : judgedBy(hand.record, build.id);
  return readingList({
    looks: shown.map((reading) => lookAt(hand.record, reading, by)),
    page: wanted,
    all,
    kind,
    today,
    zone: settings.zone,
  });
}

export function removeReadingHere(hand: Hand, typed: string): Answer {
  const reading = readingHere(hand, typed);
  const changed = hand.change((record) => removeReading(record, reading));
  return {
    kind: 'answer',
    subject: 'Reading',
    result: `Reading #${reading.id} is off the record`,
    buttons: [undoButton(changed)],
    audience: 'crew',
    data: { reading: reading.id, said: changed.said, change: changed.changeId },
  };
}
