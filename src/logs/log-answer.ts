import { delayAt, flowOf } from '../calc/fuelling/delay.ts';
import { isWorthwhile, type Region, regionsOf } from '../calc/fuelling/regions.ts';
import { SAFE_TARGET } from '../calc/fuelling/target.ts';
import type { Answer, Fact } from '../core/reply.ts';
import type { Analysed } from './analyse.ts';
import { sayDanger, saySuspicion } from './danger-words.ts';
import { logData } from './log-data.ts';
import type { LogView } from './log-view.ts';
import { detailCsv, tableCsv } from './table-csv.ts';

const DROPPED: Readonly<Record<string, string>> = {
  'no-reading': 'no reading',
  'not-running': 'engine not running',
  'fuel-cut': 'fuel cut',
  'cold-sensor': 'cold sensor',
  'sensor-fault': 'sensor fault',
  'warm-up': 'warm-up',
  transient: 'transients',
  outlier: 'outliers',
};

const CAUTION =
  'A road is no test bed: somebody else drives, within the law, and nobody looks at a screen at the wheel. Stop at once on knock, on λ above its target under boost, on falling oil or fuel pressure, or when anything runs hot. The maker’s limits go first. Keep the old table.';

const percent = (ratio: number, digits = 0): string => `${(Math.abs(ratio) * 100).toFixed(digits)} %`;
const seconds = (s: number): string => (s < 120 ? `${Math.round(s)} s` : `${Math.round(s / 60)} min`);

/** What a log says of the fuel table, in words, with its table as files: dangers first, then the three things to do. */
export function logAnswer(view: LogView): Answer {
  const { analysed, name } = view;
  const { result, axes, dangers } = analysed;
  const regions = result.usable ? regionsOf(result.cells, axes) : [];
  const todo = thingsToDo(view, regions);
  const danger = dangers[0];
  return {
    kind: 'answer',
    subject: 'Fuelling from a log',
    result: danger === undefined ? headline(view, regions) : sayDanger(danger).seen,
    tone: danger !== undefined ? 'late' : result.usable ? (regions.length === 0 ? 'done' : 'plain') : 'soon',
    certainty: certaintyOf(view),
    items: todo.map((text, index) => ({ text: `${index + 1}. ${text}` })),
    facts: factsOf(view),
    working: workingOf(view),
    caution: CAUTION,
    smallPrint: smallPrintOf(view),
    ...(result.usable
      ? {
          files: [
            { name: 'fuel-multipliers.csv', bytes: tableCsv(result.cells, axes) },
            { name: 'fuel-multipliers-detail.csv', bytes: detailCsv(result.cells, axes) },
          ],
        }
      : {}),
    audience: 'crew',
    data: { ...logData(view), file: name, todo: [...todo] },
  };
}

/** The answer in a sentence, as the picture's title has it too. */
export function headline({ analysed: { result } }: LogView, regions: readonly Region[]): string {
  if (!result.usable) return 'Nothing in this log can be used, and nothing is to be changed';
  const known = result.cells.flat().filter(({ fullMultiplierRatio }) => fullMultiplierRatio !== undefined);
  const wrong = known.filter(isWorthwhile).length;
  if (known.length === 0) return 'No cell is known well enough to be changed';
  const [first] = regions;
  if (first === undefined) return `All ${known.length} cells that were driven are right`;
  return `${wrong} of ${known.length} cells to change, first ${regionWords(first)}`;
}

function regionWords({ direction, fromRatio, toRatio, speedRpm, loadKPa }: Region): string {
  const [from, to] = [percent(fromRatio), percent(toRatio)];
  const much = from === to ? to : `${from.replace(' %', '')} to ${to}`;
  const range = ([least, most]: readonly [number, number], unit: string): string =>
    least === most ? `${least} ${unit}` : `${least} to ${most} ${unit}`;
  return `${direction === 'richer' ? 'put' : 'take'} ${much} ${direction === 'richer' ? 'in' : 'out'} at ${range(speedRpm, 'rpm')} and ${range(loadKPa, 'kPa')}`;
}

function thingsToDo({ analysed, capRatio }: LogView, regions: readonly Region[]): readonly string[] {
  const { dangers, result } = analysed;
  const capped = result.cells.flat().filter((cell) => cell.capped).length;
  const more = [
    ...dangers.map((danger) => `${sayDanger(danger).first} (${sayDanger(danger).seen}.)`),
    ...result.suspicions.map(
      (suspicion) => `${saySuspicion(suspicion).first} (${saySuspicion(suspicion).seen}.)`,
    ),
    ...unsteady(analysed),
    ...regions.map((region) => {
      const words = regionWords(region);
      const rests = `${region.cells} ${region.cells === 1 ? 'cell' : 'cells'}, ${seconds(region.seconds)}`;
      const held = region.toRatio > capRatio + 0.005 ? `; ${percent(capRatio)} at most in this pass` : '';
      return `${words.slice(0, 1).toUpperCase()}${words.slice(1)} (${rests}${held}).`;
    }),
    ...(capped === 0
      ? []
      : [
          `Drive again after this pass: ${capped} ${capped === 1 ? 'cell was' : 'cells were'} held to ${percent(capRatio)}.`,
        ]),
    ...(result.usable ? gathering(analysed) : missing(analysed)),
  ];
  return more.slice(0, 3);
}

/** A sound engine's λ scatters by less than one per cent, a failing one's by four and more; common practice, no source. */
const UNSTEADY_RATIO = 0.03;

/** λ that is never still over the whole drive stands out from no cell, so no suspicion falls on one. */
function unsteady({ result: { noiseRatio, suspicions } }: Analysed): readonly string[] {
  if (!(noiseRatio > UNSTEADY_RATIO) || suspicions.some(({ kind }) => kind === 'misfire')) return [];
  return [
    `Find out why λ is never still, ±${percent(noiseRatio)} at steady running: a misfire, a leak before the sensor or a loose plug. Leave the table until then.`,
  ];
}

/** Where more seconds are worth driving for. */
function gathering({ result, axes }: Analysed): readonly string[] {
  const thin = result.cells.flatMap((row, i) =>
    row.flatMap((cell, j) =>
      cell.leftAlone === 'too-little' ? [{ cell, load: axes.loadKPa[i], rpm: axes.speedRpm[j] }] : [],
    ),
  );
  const [best] = thin.toSorted((a, b) => b.cell.seconds - a.cell.seconds);
  const again = 'Write the table back, drive the same road, and send the next log with this one as before.';
  if (best === undefined) return [again];
  return [
    `Hold ${best.rpm} rpm and ${best.load} kPa for five seconds next time: ${thin.length} ${thin.length === 1 ? 'cell has' : 'cells have'} too little to go by.`,
    again,
  ];
}

/** What kept a log from being used, the greatest share first. */
function missing({ result }: Analysed): readonly string[] {
  const [reason, lost] = Object.entries(result.droppedS).toSorted((a, b) => b[1] - a[1])[0] ?? [];
  const most =
    reason === undefined || !lost ? '' : `Most of it was dropped: ${DROPPED[reason]} (${seconds(lost)}). `;
  const sensor =
    reason === 'sensor-fault'
      ? 'Look at the sensor first: its plug, its heater, what it is counted in. Then warm'
      : 'Warm';
  return [
    `${most}${sensor} the engine up, let the sensor heat, and hold steady speeds and loads for five seconds at a time.`,
  ];
}

function certaintyOf({ analysed: { result, columns, dangers } }: LogView): string {
  const known = result.cells.flat().flatMap(({ uncertaintyRatio }) => uncertaintyRatio ?? []);
  const middle = known.sort((a, b) => a - b)[known.length >> 1];
  const used = `${seconds(result.usedS)} of ${seconds(result.totalS)} could be used`;
  // a danger takes the first line, which would have said it
  if (!result.usable && dangers.length > 0) return `Nothing is to be changed in the table: ${used}.`;
  if (!result.usable || middle === undefined) return `${used}.`;
  const worst = known.at(-1) ?? middle;
  const blind = columns.some(({ role }) => role === 'coolantC')
    ? ''
    : ' The log has no coolant temperature: this holds only if the engine was warm.';
  return `Known to ±${percent(middle, 1)} for most cells, ±${percent(worst, 1)} at worst, 19 times out of 20; ${used}.${blind}`;
}

function factsOf({ analysed, comparison, comparedWith = 'before' }: LogView): readonly Fact[] {
  const { result } = analysed;
  const dropped = Object.entries(result.droppedS)
    .filter(([, s]) => s >= 0.5)
    .toSorted((a, b) => b[1] - a[1])
    .map(([reason, s]) => `${DROPPED[reason]} ${seconds(s)}`);
  return [
    ...(comparison === undefined
      ? []
      : [
          [
            `Against ${comparedWith}`,
            `${comparison.cells} cells in both: off by ${percent(comparison.beforeRatio, 1)} then, ${percent(comparison.afterRatio, 1)} now; ${comparison.nearer} nearer, ${comparison.further} further, ${comparison.alike} alike`,
          ] as const,
        ]),
    ['Dropped', dropped.length === 0 ? 'nothing' : dropped.join(', ')],
  ];
}

function workingOf({ analysed }: LogView): readonly string[] {
  const { result, columns, tally, dangers } = analysed;
  const { delay } = result;
  const idleMs = Math.round(1000 * delayAt(delay, flowOf(900, 35)));
  const fullMs = Math.round(1000 * delayAt(delay, flowOf(5000, 150)));
  const mended = [
    [tally.repeatedHeaders, 'repeated header'],
    [tally.clockResets, 'reset of the clock'],
    [tally.clockJumps, 'jump of the clock'],
    [tally.withoutTime, 'row without a usable time'],
    [tally.notRows, 'line that is no row'],
  ].flatMap(([count, what]) => (count ? [`${count} × ${what}`] : []));
  return [
    ...dangers.slice(1).map((danger) => `${sayDanger(danger).seen}.`),
    ...result.suspicions.map((suspicion) => `${saySuspicion(suspicion).seen}.`),
    `The sensor hears late by ${idleMs} ms at idle, ${fullMs} ms under full load, and lags ${Math.round(delay.lagS * 1000)} ms: ${delay.from === 'log' ? 'found from the steps in this log' : 'usual figures, as the steps in this log do not tell it'}.`,
    `${tally.rows.toLocaleString('en-GB')} rows. Read as: ${columns.map(({ name, role, reader }) => `${name} (${roleWords[role] ?? role}${reader.as === 'a number' ? '' : `, ${reader.as}`}${reader.guessed ? ' by its values' : ''})`).join('; ')}.`,
    ...(mended.length === 0 ? [] : [`Passed over: ${mended.join(', ')}.`]),
  ];
}

/** What a reading is called. */
export const roleWords: Readonly<Partial<Record<string, string>>> = {
  timeS: 'time',
  speedRpm: 'engine speed',
  loadKPa: 'manifold pressure',
  vacuumKPa: 'manifold vacuum',
  barometerKPa: 'air pressure',
  lambda: 'λ',
  targetLambda: 'target λ',
  throttleRatio: 'throttle',
  trimRatio: 'closed-loop trim',
  longTrimRatio: 'long-term trim',
  coolantC: 'coolant temperature',
  oilC: 'oil temperature',
  chargeC: 'charge temperature',
  oilKPa: 'oil pressure',
  fuelKPa: 'fuel pressure',
  pulseMs: 'injector pulse',
  dutyRatio: 'injector duty',
  batteryV: 'battery',
  knock: 'knock',
  fuelCut: 'fuel cut',
  sensorC: 'sensor temperature',
  sensorFault: 'sensor status',
  enrichmentRatio: 'warm-up enrichment',
  transientFuel: 'acceleration enrichment',
  closedLoop: 'closed loop',
  vehicleKmH: 'road speed',
  gear: 'gear',
  dateOnly: 'date',
};

function smallPrintOf({ analysed, capRatio }: LogView): readonly string[] {
  const { targetFrom, axesFrom, notes, axes } = analysed;
  const safe = SAFE_TARGET.map(({ loadKPa, lambda }) => `${lambda.toFixed(2)} at ${loadKPa} kPa`).join(', ');
  return [
    ...(targetFrom === 'safe'
      ? [`Assumed: λ wanted ${safe}, common practice for petrol with boost. Type target: for your own.`]
      : [`λ wanted: ${targetFrom === 'log' ? 'as the log’s own column says' : 'as you said'}.`]),
    ...(axesFrom === 'usual'
      ? [
          `Assumed: breakpoints at ${axes.loadKPa.join(' ')} kPa and ${axes.speedRpm.join(' ')} rpm. /log table takes your own.`,
        ]
      : []),
    `No cell is changed by more than ${percent(capRatio)} in one pass. Fitted over the table’s own interpolation, all cells together.`,
    ...notes.map((note) => `Assumed: ${note}`),
    'Sources: HUBER, TUKEY, PRIESTLEY, ABRAMOWITZ, COMMON (docs/sources.md)',
  ];
}
