import type { JsonObject } from '../../core/json.ts';
import type { Answer, Fact, Item } from '../../core/reply.ts';
import { sourceWords } from '../threads/facts.ts';
import { INCH_MM } from '../units/definitions.ts';
import { type DashMatch, type DashMeasure, type DashRow, tubeOdIn } from './dash.ts';

/** An end of a dash size: `JIC -6`, `9/16-18 UNF`, and where that is from. */
export interface DashFitting {
  readonly id: string;
  readonly thread: string;
  readonly source: readonly string[];
}

export interface DashView {
  readonly fittingsOf: (dash: number) => readonly DashFitting[];
  /** Keys of the sources of tube and bore. */
  readonly source: readonly string[];
}

/** To a hundredth of a micrometre, so that 6/16 in is 9.525 mm and not 9.524999999999999. */
const inMm = (inches: number): number => Number((inches * INCH_MM).toFixed(5));

const mm = (inches: number): string => `${Number(inMm(inches).toFixed(3))} mm`;

/** One dash size: tube, hose and threads. */
export function dashAnswer(rows: readonly DashRow[], view: DashView): Answer {
  const [first] = rows;
  const only = rows.length === 1 ? first : undefined;
  return {
    kind: 'answer',
    subject: 'Dash size',
    result: rows.map((row) => `-${row.dash}: tube ${mm(tubeOdIn(row.dash))}`).join('; '),
    ...(only === undefined
      ? { items: rows.map((row) => dashItem(row, view)) }
      : { facts: dashFacts(only, view) }),
    smallPrint: smallPrint(view),
    audience: 'crew',
    data: { sizes: rows.map((row) => dashData(row, view)) },
  };
}

/** The dash sizes a measured diameter can be. */
export function nearestAnswer(diameterMm: number, matches: readonly DashMatch[], view: DashView): Answer {
  const sizes = [...new Set(matches.map(({ row }) => row.dash))];
  const [best] = matches;
  return {
    kind: 'answer',
    subject: 'Dash size',
    result: sizes.length === 1 ? `-${sizes[0]}` : matches.map(sayMatch).join(', '),
    certainty:
      best === undefined
        ? 'No size is near.'
        : `${diameterMm.toFixed(2)} mm is nearest to ${Number(best.nominalMm.toFixed(3))} mm, ${off(best)}.`,
    items: matches.map(
      (match): Item => ({
        text: `${sayMatch(match)}: nominal ${Number(match.nominalMm.toFixed(3))} mm, ${off(match)}`,
        note: threadLine(match.row, view),
      }),
    ),
    smallPrint: smallPrint(view),
    audience: 'crew',
    data: {
      diameterMm,
      matches: matches.map(({ row, measure, nominalMm, offMm }) => ({
        ...dashData(row, view),
        as: measure,
        nominalMm,
        offMm,
      })),
    },
  };
}

const MEASURE_WORDS: Readonly<Record<DashMeasure, string>> = {
  tube: 'tube outside',
  bore: 'hose named by its bore',
  'tube-sized bore': 'hose named by its tube',
};

const sayMatch = ({ row, measure }: DashMatch): string => `-${row.dash} as ${MEASURE_WORDS[measure]}`;

function off({ offMm }: DashMatch): string {
  const by = Math.abs(offMm).toFixed(2);
  if (Number(by) === 0) return 'on the size';
  const hardly = Math.abs(offMm) > 0.5 ? ', too far off to be sure' : '';
  return `${by} mm ${offMm > 0 ? 'over' : 'under'}${hardly}`;
}

function dashFacts(row: DashRow, view: DashView): readonly Fact[] {
  return [
    ['Tube outside', `${tubeOdIn(row.dash)} in (${mm(tubeOdIn(row.dash))})`],
    ['Hose by bore', `${row.byBoreIn} in (${mm(row.byBoreIn)}) bore`],
    ...(row.byTubeIn === undefined
      ? []
      : [['Hose by tube', `${row.byTubeIn} in (${mm(row.byTubeIn)}) bore`] as const]),
    ...view
      .fittingsOf(row.dash)
      .map(({ id, thread, source }): Fact => [id, `${thread} (${sourceWords(source)})`]),
  ];
}

function dashItem(row: DashRow, view: DashView): Item {
  return { text: `-${row.dash}, tube ${mm(tubeOdIn(row.dash))}`, note: threadLine(row, view) };
}

const threadLine = (row: DashRow, view: DashView): string =>
  view
    .fittingsOf(row.dash)
    .map(({ id, thread }) => `${id} ${thread}`)
    .join(', ') || 'no thread in the tables';

function smallPrint({ source }: DashView): readonly string[] {
  return [
    'The dash number is the tube’s outside diameter in sixteenths of an inch. Hose goes by its own bore, or by the tube it stands in for, whose bore is smaller; braided hose differs between makers: measure it.',
    `Tube and hose from ${source.join(', ')}.`,
  ];
}

function dashData(row: DashRow, view: DashView): JsonObject {
  return {
    dash: row.dash,
    tubeOdMm: inMm(tubeOdIn(row.dash)),
    hoseBoreMm: inMm(row.byBoreIn),
    tubeSizedHoseBoreMm: row.byTubeIn === undefined ? null : inMm(row.byTubeIn),
    fittings: view.fittingsOf(row.dash).map(({ id, thread, source }) => ({
      fitting: id,
      designation: thread,
      source,
    })),
  };
}
