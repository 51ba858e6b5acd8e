import { sayLimit } from '../../calc/readings/limit.ts';
import { isUnitId } from '../../calc/units/table.ts';
import type { JsonObject } from '../../core/json.ts';
import type { Answer, Item } from '../../core/reply.ts';
import { type ReadingLimit, readingLimits } from '../../tables/reading-limits.ts';
import type { Kind } from './kinds.ts';
import { sayOwnLimit } from './own-rules.ts';
import type { OwnLimit } from './reading.ts';
import { dataKey } from './say.ts';
import { sayOrigin } from './verdict.ts';

/** A page holds these with a button each. */
const MOST_SHOWN = 8;

export interface LimitsView {
  readonly kinds: readonly Kind[];
  readonly limits: readonly OwnLimit[];
  /** Only of this kind, common ones too. */
  readonly kind?: Kind | undefined;
  readonly page: number;
}

/** The limits in force: the maker's and the crew's, and for one kind what common practice says where those are silent. */
export function limitsAnswer({ kinds, limits, kind, page }: LimitsView): Answer {
  const own = limits.filter((limit) => kind === undefined || limit.kind === kind.name);
  const common = kind === undefined ? [] : commonOf(kind);
  const ranked = own.toSorted((a, b) => Number(b.origin === 'maker') - Number(a.origin === 'maker'));
  const items = [...ranked.map((limit) => ownItem(limit, kinds)), ...common.map(commonItem)];
  const pages = Math.max(1, Math.ceil(items.length / MOST_SHOWN));
  const at = Math.min(Math.max(page, 1), pages);
  const turn = (to: number, label: string) => ({
    label,
    does: {
      command: 'reading',
      action: 'limits',
      args: { page: to, ...(kind === undefined ? {} : { kind: kind.name }) },
    },
  });
  return {
    kind: 'answer',
    subject: 'Limits',
    result: headline(own.length, common.length, kind),
    certainty:
      own.length === 0
        ? `The maker's figure comes first: /reading limits kind:"${kind?.name ?? 'oil pressure'}" limit:"at least 3 bar at 2000 rpm hot" from:maker.`
        : pages > 1
          ? `Page ${at} of ${pages}.`
          : "The maker's comes before the crew's, and both before common practice.",
    items: items.slice((at - 1) * MOST_SHOWN, at * MOST_SHOWN),
    buttons: [...(at > 1 ? [turn(at - 1, 'Back')] : []), ...(at < pages ? [turn(at + 1, 'More')] : [])],
    audience: 'crew',
    data: {
      limits: ranked.map((limit) => limitData(limit, kinds)),
      common: common.map(({ id }) => id),
      page: at,
      pages,
    },
  };
}

function headline(own: number, common: number, kind: Kind | undefined): string {
  const of = kind === undefined ? '' : ` for ${kind.name}`;
  const yours =
    own === 0 ? `No limit of your own${of}` : `${own} ${own === 1 ? 'limit' : 'limits'} of your own${of}`;
  return common === 0 ? yours : `${yours}, ${common} by common practice`;
}

/** What common practice has for a kind; figures that only mark a value are no limits. */
const commonOf = (kind: Kind): readonly ReadingLimit[] =>
  readingLimits.filter((row) => row.kind === kind.common && row.rule !== 'marks');

function ownItem(limit: OwnLimit, kinds: readonly Kind[]): Item {
  const kind = kinds.find(({ name }) => name === limit.kind);
  return {
    text: kind === undefined ? `${limit.kind}: ${limit.typed}` : sayOwnLimit(limit, kind, kind.shown),
    note: `${sayOrigin(limit.origin)}, given as “${limit.typed}” by ${limit.byName}.`,
    buttons: [
      {
        label: 'Take off',
        weight: 'grave',
        does: { command: 'reading', action: 'drop-limit', args: { limit: limit.id } },
      },
    ],
  };
}

function commonItem(row: ReadingLimit): Item {
  const ends = {
    ...(row.min === undefined ? {} : { min: row.min }),
    ...(row.max === undefined ? {} : { max: row.max }),
  };
  const said =
    row.rule === 'warns' && row.min !== undefined
      ? `from ${sayLimit({ max: row.min, unit: row.unit }).replace('at most ', '')} on`
      : sayLimit({ ...ends, unit: row.unit });
  return {
    text: `${row.item}: ${said}`,
    note: `Common practice, no source${row.note === undefined ? '' : `; ${row.note}`}.`,
  };
}

export function limitData(
  { id, kind, min, max, origin, typed, conditions }: OwnLimit,
  kinds: readonly Kind[],
): JsonObject {
  const unit = kinds.find(({ name }) => name === kind)?.unit ?? '';
  const key = dataKey(unit);
  const ending = key.charAt(0).toUpperCase() + key.slice(1);
  const { states, ...figures } = conditions;
  return {
    limit: id,
    kind,
    ...(min === null ? {} : { [`least${ending}`]: min }),
    ...(max === null ? {} : { [`most${ending}`]: max }),
    ...(isUnitId(unit) ? {} : { unit }),
    origin,
    typed,
    conditions: { ...figures, states: [...states] },
  };
}
