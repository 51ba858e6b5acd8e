import { z } from 'zod';
import { action, defineCommand, subcommand } from '../src/bot/command.ts';
import { crewOf } from '../src/bot/crew.ts';
import type { Hand } from '../src/bot/hand.ts';
import { quantity } from '../src/bot/quantity-option.ts';
import { undoButton } from '../src/bot/undo-button.ts';
import { GAUGE_AFR } from '../src/calc/fuel/lambda.ts';
import { typedFuel } from '../src/calc/fuel/typed-fuel.ts';
import { compareDrives } from '../src/calc/fuelling/compare.ts';
import { regionsOf } from '../src/calc/fuelling/regions.ts';
import { breather } from '../src/core/breathe.ts';
import type { GivenFile } from '../src/core/given-file.ts';
import type { Answer, Drawing, Reply } from '../src/core/reply.ts';
import { UserError } from '../src/core/user-error.ts';
import { type Analysed, analyse, type Undecided } from '../src/logs/analyse.ts';
import { assignedBy, columnForm, undecidedAnswer } from '../src/logs/columns-answer.ts';
import { headline, logAnswer } from '../src/logs/log-answer.ts';
import { openLog } from '../src/logs/read-log.ts';
import { type Assignment, requiredRoles } from '../src/logs/recognise.ts';
import { knownAnswer, tableAnswer } from '../src/logs/table-answer.ts';
import { readAxis, readTarget } from '../src/logs/typed-table.ts';
import { FUEL_EXAMPLES, readFuelName } from '../src/phrases/fuel-name.ts';
import { fuelMap } from '../src/pictures/fuel-map.ts';
import { fuelNames, fuelRows } from '../src/tables/fuels.ts';
import { type FuelTableSaid, fuelTableHere, keepFuelTable } from '../src/tasks/fuelling/fuel-table-here.ts';

/** As much as the local page takes; the platform's own limit lies below. */
const MOST_BYTES = 50 * 1024 * 1024;
const USUAL_CAP = 0.1;

const text = (most: number, description: string) => z.string().trim().min(1).max(most).describe(description);
const tableOptions = {
  load: text(300, 'Load breakpoints of the table: 20 40 60 80 100 kPa; kept for next time').optional(),
  speed: text(300, 'Speed breakpoints: 800 1200 1600 2000, or 500 to 7000 by 500; kept').optional(),
  target: text(300, 'λ wanted: 0.88, or by load 60:1 100:0.90 160:0.80; kept').optional(),
  cap: quantity('cap', 'percent', 'Largest change of a cell in one pass, e.g. 8 %; kept').optional(),
  fuel: text(80, 'What is in the tank, if not petrol: E85; kept').optional(),
  scale: z
    .enum(['petrol', 'fuel'])
    .optional()
    .describe('What an AFR column is counted in; petrol unless said; kept'),
};
type TableOptions = { readonly [Key in keyof typeof tableOptions]?: z.output<(typeof tableOptions)[Key]> };

const fuelling = subcommand({
  description: 'What a logged drive says of the fuel table: attach the logger’s CSV, plain or gzip',
  input: z.object({
    file: z
      .string()
      .meta({ picks: 'file' })
      .describe('The log of a drive or an idle, CSV or CSV packed with gzip'),
    before: z
      .string()
      .meta({ picks: 'file' })
      .optional()
      .describe('The log from before the last change, to compare'),
    ...tableOptions,
    suspects: z
      .enum(['leave', 'correct'])
      .default('leave')
      .describe('Cells under suspicion of a leak or misfire'),
  }),
  async run({ file, before, suspects, ...typed }, hand) {
    const said = saidOf(typed);
    // what was typed is kept before the log is read: a question about its columns must not lose it
    if (Object.keys(said).length > 0) keepFuelTable(hand, said);
    return fromLog(hand, {
      file: hand.file(file),
      before: before === undefined ? undefined : hand.file(before),
      suspects,
    });
  },
});

const table = subcommand({
  description: 'The fuel table of this build: its breakpoints, the λ wanted, the largest change in one pass',
  example: '/log table load:"20 40 60 80 100 130 160" speed:"800 to 6800 by 500"',
  input: z.object(tableOptions),
  run(typed, hand) {
    const said = saidOf(typed);
    if (Object.keys(said).length === 0) return tableAnswer(fuelTableHere(hand));
    const changed = keepFuelTable(hand, said);
    return tableAnswer(changed.value, {
      said: changed.said,
      button: undoButton(changed),
      change: changed.changeId,
    });
  },
});

const columns = subcommand({
  description: 'The loggers whose columns the crew has named, to forget one',
  example: '/log columns',
  input: z.object({}),
  run: (_, hand) => knownAnswer(hand.record.logHeaders.all()),
});

export default defineCommand({
  description: 'Fuelling from a logged drive: what to change in the fuel table, and how sure that is',
  subcommands: { fuel: fuelling, table, columns },
  actions: {
    columns: action({
      input: z.object({ file: z.string() }),
      run: ({ file }, hand) => askColumns(hand, hand.file(file)),
    }),
    assign: action({
      input: z.object({
        file: z.string(),
        ...Object.fromEntries([...requiredRoles, 'trimRatio'].map((role) => [role, z.string().optional()])),
      }),
      run: ({ file, ...picked }, hand) => assign(hand, hand.file(file), picked as Record<string, string>), // all are texts
    }),
    forget: action({
      input: z.object({ header: z.coerce.number().int() }),
      run: ({ header }, hand) => forget(hand, header),
    }),
  },
});

/** @throws UserError naming the option that cannot be read. */
function saidOf({ load, speed, target, cap, fuel, scale }: TableOptions): FuelTableSaid {
  if (target !== undefined) readTarget(target);
  if (fuel !== undefined) fuelOf(fuel);
  if (cap !== undefined && !(cap > 0 && cap <= 0.5)) {
    throw new UserError(
      'out-of-range',
      'cap: a cell is changed by 1 % to 50 % in one pass. Type one, e.g. 10 %.',
    );
  }
  return {
    ...(load === undefined ? {} : { loadAxisKPa: readAxis(load, 'load') }),
    ...(speed === undefined ? {} : { speedAxisRpm: readAxis(speed, 'speed') }),
    ...(target === undefined ? {} : { target }),
    ...(cap === undefined ? {} : { capRatio: cap }),
    ...(fuel === undefined ? {} : { fuel }),
    ...(scale === undefined ? {} : { scale }),
  };
}

const fuelOf = (typed: string) =>
  typedFuel(readFuelName(typed, fuelNames), fuelRows, { field: 'fuel', accepted: FUEL_EXAMPLES, petrol: {} })
    .value;

interface Errand {
  readonly file: GivenFile;
  readonly before?: GivenFile | undefined;
  readonly suspects?: 'leave' | 'correct';
}

/** Reads a log, and the one before it when there is one, by what is known of the build's table. */
async function fromLog(hand: Hand, { file, before, suspects = 'leave' }: Errand): Promise<Reply> {
  const capRatio = fuelTableHere(hand).capRatio ?? USUAL_CAP;
  const now = await read(hand, file, { suspects });
  if (now.kind === 'undecided') return undecidedAnswer(file, now);
  const then = before && (await read(hand, before, { suspects, like: now }));
  if (before !== undefined && then?.kind === 'undecided') return undecidedAnswer(before, then);
  const comparison =
    then?.kind === 'analysed' ? compareDrives(then.result.cells, now.result.cells) : undefined;
  const view = {
    name: file.name,
    analysed: now,
    capRatio,
    comparison,
    ...(before === undefined ? {} : { comparedWith: before.name }),
  };
  return withMap(logAnswer(view), now, headline(view, regionsOf(now.result.cells, now.axes)));
}

function read(
  hand: Hand,
  file: GivenFile,
  { suspects, like }: { readonly suspects: 'leave' | 'correct'; readonly like?: Analysed },
): Promise<Analysed | Undecided> {
  const known = fuelTableHere(hand);
  const loadKPa = like?.axes.loadKPa ?? known.loadAxisKPa;
  const speedRpm = like?.axes.speedRpm ?? known.speedAxisRpm;
  return analyse({
    bytes: hand.open(file, { mostBytes: MOST_BYTES }),
    size: file.bytes,
    assigned: (mark) => (inCrew(hand) ? (hand.record.logHeaders.ofMark(mark)?.roles ?? {}) : {}),
    stoichiometricAfr: known.scale === 'fuel' ? fuelOf(known.fuel ?? 'petrol').stoichiometricAfr : GAUGE_AFR,
    axes: { ...(loadKPa ? { loadKPa } : {}), ...(speedRpm ? { speedRpm } : {}) },
    target: known.target === null ? undefined : readTarget(known.target),
    capRatio: known.capRatio ?? USUAL_CAP,
    correctSuspects: suspects === 'correct',
    breathe: breather(),
    progress: (said) => hand.progress(`${file.name}: ${said}`),
  });
}

function withMap(answer: Answer, { result, axes }: Analysed, title: string): Answer {
  const spoken = result.cells
    .flat()
    .some((cell) => cell.fullMultiplierRatio !== undefined || isSuspect(cell.leftAlone));
  if (!result.usable || !spoken) return answer;
  const drawing: Drawing = fuelMap({
    title,
    ...axes,
    cells: result.cells.map((row) =>
      row.map((cell) => ({
        ...(cell.fullMultiplierRatio === undefined ? {} : { changeRatio: cell.multiplierRatio - 1 }),
        suspect: isSuspect(cell.leftAlone),
      })),
    ),
  });
  return { ...answer, drawings: [drawing] };
}

const isSuspect = (left: string | undefined): boolean => left === 'air-leak' || left === 'misfire';

/** The head of a log, without reading on. */
async function headOf(hand: Hand, file: GivenFile) {
  const log = await openLog({
    bytes: hand.open(file, { mostBytes: MOST_BYTES }),
    assigned: () => ({}),
    stoichiometricAfr: GAUGE_AFR,
    breathe: breather(),
  });
  await log.close();
  return log;
}

async function askColumns(hand: Hand, file: GivenFile): Promise<Reply> {
  return columnForm(file, await headOf(hand, file));
}

async function assign(hand: Hand, file: GivenFile, picked: Readonly<Record<string, string>>): Promise<Reply> {
  const { fingerprint, layout, recognised } = await headOf(hand, file);
  const roles: Assignment = assignedBy(layout.names, recognised, picked);
  hand.change((record) => ({
    value: record.logHeaders.tell({
      fingerprint,
      roles: { ...roles },
      toldBy: hand.who.name,
      toldOn: crewOf(hand).today,
    }),
    said: `columns of ${file.name}: ${Object.values(roles).join(', ')}`,
  }));
  return fromLog(hand, { file });
}

function forget(hand: Hand, id: number): Answer {
  const changed = hand.change((record) => {
    const header = record.logHeaders.find(id);
    if (header === undefined) throw new UserError('not-found', 'Those columns are forgotten already.');
    record.logHeaders.forget(id);
    return { value: header, said: `columns forgotten: ${Object.values(header.roles).join(', ')}` };
  });
  const answer = knownAnswer(hand.record.logHeaders.all());
  return {
    ...answer,
    buttons: [undoButton(changed)],
    inPlace: hand.pressedInPlace,
    data: { ...answer.data, said: changed.said, change: changed.changeId },
  };
}

/** Sums work outside a crew's channel too; what a crew has named is then out of reach. */
function inCrew(hand: Hand): boolean {
  try {
    return hand.place.teamId !== '';
  } catch (error) {
    if (error instanceof UserError && error.code === 'not-now') return false;
    throw error;
  }
}
