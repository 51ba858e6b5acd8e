import { buildHere, crewOf } from '../../bot/crew.ts';
import type { Hand } from '../../bot/hand.ts';
import type { Answer, Drawing } from '../../core/reply.ts';
import { UserError } from '../../core/user-error.ts';
import { cylinderBars } from '../../pictures/cylinder-bars.ts';
import { readingChart } from '../../pictures/reading-chart.ts';
import type { ChartPanel } from '../../pictures/reading-data.ts';
import { type ChartSeries, chartSeries } from '../../records/readings/chart-series.ts';
import { cylinderSet } from '../../records/readings/cylinder-set.ts';
import { findKind } from '../../records/readings/find-reading.ts';

/** More would be thinner than a thumb. */
const MOST_PANELS = 4;

/**
 * Readings of one kind, or of several over the same time, as a picture.
 *
 * @param typed kinds by name, parted by commas.
 * @throws UserError 'not-found' when there is nothing to draw.
 */
export function chartReadings(hand: Hand, typed: string, place: string | undefined): Answer {
  const build = buildHere(hand);
  const names = typed.split(/\s*(?:,|;|\+| and )\s*/u).filter((name) => name !== '');
  const kinds = [...new Set(names.map((name) => findKind(hand.record, build?.id, name)))];
  if (kinds.length > MOST_PANELS) {
    throw new UserError(
      'out-of-range',
      `${kinds.length} kinds are too many for one picture: ${MOST_PANELS} at most. Name fewer.`,
    );
  }
  const { settings, today } = crewOf(hand);
  const series =
    build === undefined ? [] : kinds.flatMap((kind) => chartSeries(hand.record, build.id, kind, place) ?? []);
  const [first] = series;
  if (build === undefined || first === undefined) {
    const which = kinds.map(({ name }) => name).join(', ');
    const at = place === undefined ? '' : ` of ${place}`;
    throw new UserError(
      'not-found',
      `No ${which}${at} is logged yet, so there is nothing to draw. /reading log writes one down.`,
    );
  }
  const set =
    kinds.length === 1 && place === undefined
      ? cylinderSet(hand.record, build.id, first.kind, today, settings.zone)
      : undefined;
  const drawing: Drawing =
    set === undefined
      ? readingChart({
          title: series.map(({ sentence }) => sentence).join('. '),
          panels: series.map(panelOf),
          zone: settings.zone,
          name: 'readings.png',
        })
      : cylinderBars({ ...set, name: 'cylinders.png' });
  return {
    kind: 'answer',
    subject: 'Chart',
    result: set?.title ?? series.map(({ sentence }) => sentence).join('. '),
    tone: series.some(({ newest }) => newest === 'bad') ? 'late' : 'plain',
    drawings: [drawing],
    buttons: kinds.slice(0, 1).map(({ name }) => ({
      label: 'List',
      does: { command: 'reading', action: 'list', args: { kind: name } },
    })),
    audience: 'crew',
    data: {
      kinds: series.map(({ kind }) => kind.name),
      readings: series.map(({ panel }) => panel.points.length),
      alt: drawing.alt,
    },
  };
}

const panelOf = ({ panel }: ChartSeries): ChartPanel => panel;
