import { dayAt, sayFullDay } from '../../core/time.ts';
import { cylinderBars } from '../../pictures/cylinder-bars.ts';
import { readingChart } from '../../pictures/reading-chart.ts';
import type { WholeBuild } from '../../records/builds/whole-build.ts';
import { chartSeries } from '../../records/readings/chart-series.ts';
import { cylinderSet } from '../../records/readings/cylinder-set.ts';
import { kindNamed } from '../../records/readings/kinds.ts';
import { judgedBy, lookAt } from '../../records/readings/look-at.ts';
import { capital, sayConditions, sayValue } from '../../records/readings/say.ts';
import { sayVerdict } from '../../records/readings/verdict.ts';
import type { Block, Section } from '../paper.ts';

/** A curve needs this many points to say more than its last value. */
const LEAST_FOR_A_CHART = 3;

/** The newest reading of each kind with its verdict, then a picture of each kind that has a history. */
export function readings(source: WholeBuild): Section {
  const { record, build } = source;
  const used = record.readings.kindsUsed(build.id);
  if (used.length === 0) {
    return { heading: 'Readings', blocks: [{ kind: 'words', text: 'No reading is logged.' }] };
  }
  return {
    heading: 'Readings',
    blocks: [
      {
        kind: 'table',
        head: ['What', 'Newest', 'At', 'On', 'Against its limits'],
        shares: [3, 2, 3, 3, 6],
        rows: used.flatMap(({ kind }) => newestOf(source, kind)),
      },
      ...used.flatMap(({ kind, count }) => pictureOf(source, kind, count)),
    ],
  };
}

function newestOf({ record, build, zone }: WholeBuild, name: string): readonly (readonly string[])[] {
  const newest = record.readings.latest(build.id, name);
  if (newest === undefined) return [];
  const { kind, verdict } = lookAt(record, newest, judgedBy(record, build.id));
  const corrected =
    newest.firstValue === null ? '' : ` (first ${sayValue(newest.firstValue, kind.unit, newest.shownIn)})`;
  return [
    [
      capital(name),
      `${sayValue(newest.value, kind.unit, newest.shownIn)}${corrected}`,
      sayConditions(newest.conditions),
      `${sayFullDay(dayAt(newest.takenAtMs, zone))}, ${newest.byName}`,
      verdict.grade === 'unjudged' ? 'no limit is known' : sayVerdict(verdict, kind.unit, newest.shownIn),
    ],
  ];
}

function pictureOf(
  { record, build, today, zone }: WholeBuild,
  name: string,
  count: number,
): readonly Block[] {
  const newest = record.readings.latest(build.id, name);
  if (newest === undefined) return [];
  const kind = kindNamed(name, record.readingRules.ownKinds(build.id), newest.unit);
  const set = cylinderSet(record, build.id, kind, today, zone);
  if (set !== undefined) {
    return [{ kind: 'figure', drawing: cylinderBars({ ...set, name: `${name}.png` }) }];
  }
  const series = count < LEAST_FOR_A_CHART ? undefined : chartSeries(record, build.id, kind);
  if (series === undefined) return [];
  const { sentence, panel } = series;
  return [
    {
      kind: 'figure',
      drawing: readingChart({ title: sentence, panels: [panel], zone, name: `${name}.png` }),
    },
  ];
}
