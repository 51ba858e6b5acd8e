import { type Day, dayAt, sayDay } from '../../core/time.ts';
import type { TeamRecord } from '../team-record.ts';
import { type Kind, kindsWith } from './kinds.ts';
import { sayOwn } from './log-readings.ts';
import { judgedBy, lookAt, spreadOf } from './look-at.ts';
import type { Reading } from './reading.ts';
import { capital, figureIn, sayValue, signOf } from './say.ts';
import { sayLimits, sayStands, sayVerdict } from './verdict.ts';

/** Readings of one line beside one another, as bars. */
export interface CylinderSet {
  readonly title: string;
  readonly axis: string;
  readonly bars: readonly {
    readonly label: string;
    readonly value: number;
    readonly words: string;
    readonly standing: 'ok' | 'low' | 'high';
  }[];
  readonly limit?: { readonly value: number; readonly words: string };
  readonly called: { readonly low: string; readonly high: string };
}

/** The newest line of cylinders of a kind; nothing where its newest reading stands alone. */
export function cylinderSet(
  record: TeamRecord,
  buildId: number,
  kind: Kind,
  today: Day,
  zone: string,
): CylinderSet | undefined {
  const last = record.readings.latest(buildId, kind.name);
  if (last === undefined || last.setId === null || kind.place === undefined) return undefined;
  const set = record.readings.ofKind(buildId, kind.name).filter(({ setId }) => setId === last.setId);
  const by = judgedBy(record, buildId);
  const spread = spreadOf(set, by, kindsWith([]));
  const looks = set.map((reading) => lookAt(record, reading, by));
  const shown = (value: number): number => figureIn(value, last.unit, last.shownIn);
  const best = Math.max(...set.map(({ value }) => value));
  const share = spread?.verdict.limit?.max;
  const least = share === undefined ? undefined : best * (1 - share);
  const worst =
    looks.find(({ verdict }) => verdict.grade === 'bad') ??
    looks.find(({ verdict }) => verdict.side !== 'ok');
  const most = (worst ?? looks[0])?.verdict.limit?.max;
  const when = sayDay(dayAt(last.takenAtMs, zone), today);
  const bars = looks.map(({ reading, verdict }) => ({
    label: labelOf(reading),
    value: shown(reading.value),
    words: sayOwn(reading).replace(` ${signOf(reading.shownIn)}`, ''),
    standing: least !== undefined && reading.value < least ? ('low' as const) : verdict.side,
  }));
  const limit =
    least !== undefined
      ? { value: shown(least), words: `${sayValue(share ?? 0, '1', 'percent', 2)} below the best` }
      : most !== undefined
        ? { value: shown(most), words: sayLimits({ max: most }, last.unit, last.shownIn) }
        : undefined;
  return {
    title:
      spread !== undefined
        ? `${capital(kind.name)} spreads ${sayValue(spread.ratio, '1', 'percent', 2)}, ${spread.weakest.conditions.place ?? 'one'} the lowest: ${sayVerdict(spread.verdict, '1', 'percent')}`
        : worst !== undefined
          ? `${capital(kind.name)} of ${worst.reading.conditions.place ?? 'one'}, ${sayOwn(worst.reading)}, ${sayStands(worst.verdict, last.unit, last.shownIn)}`
          : `${capital(kind.name)} of all ${set.length}: ${sayVerdict(looks[0]?.verdict ?? { grade: 'unjudged', side: 'ok' }, last.unit, last.shownIn)}`,
    axis: `${capital(kind.name)}${signOf(last.shownIn) === '' ? '' : `, ${signOf(last.shownIn)}`}, ${when}`,
    bars,
    ...(limit === undefined ? {} : { limit }),
    called:
      kind.name === 'leak-down'
        ? { low: 'low', high: 'leaks' }
        : kind.name === 'compression'
          ? { low: 'weak', high: 'high' }
          : { low: 'tight', high: 'wide' },
  };
}

/** "3" of "cylinder 3", else the whole place. */
function labelOf({ conditions: { place = '' } }: Reading): string {
  return place.replace(/^cylinder /u, '');
}
