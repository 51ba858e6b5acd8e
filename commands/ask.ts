import { z } from 'zod';
import { action, defineCommand, type Outcome } from '../src/bot/command.ts';
import type { Hand } from '../src/bot/hand.ts';
import { AskedBack, type Handover } from '../src/bot/handover.ts';
import { filled, fillForm, questionCard } from '../src/bot/quick-card.ts';
import { withQuickData } from '../src/bot/quick-data.ts';
import { dayAnswer, dayContext, settingsHere } from '../src/bot/quick-date.ts';
import { recordHandover } from '../src/bot/quick-record.ts';
import { quickRun } from '../src/bot/quick-run.ts';
import { sumAnswer } from '../src/bot/sum-answer.ts';
import { knownBolt } from '../src/calc/fasteners/known-bolt.ts';
import { pressureAcrossInjector } from '../src/calc/fuel/injector-pressure.ts';
import { threadCatalogue } from '../src/calc/threads/catalogue.ts';
import { threadName } from '../src/calc/threads/wording.ts';
import { sayIn, sayNumber } from '../src/calc/units/say.ts';
import type { Json } from '../src/core/json.ts';
import type { Answer } from '../src/core/reply.ts';
import { readQuick } from '../src/phrases/quick/read-quick.ts';
import { readRecordQuestion } from '../src/phrases/quick/read-record.ts';
import type { QuickAnswer, QuickContext } from '../src/phrases/quick/reading.ts';
import { readThreadSize } from '../src/phrases/threads/size.ts';
import { boltClasses } from '../src/tables/fasteners.ts';
import { fuelNames } from '../src/tables/fuels.ts';
import { tapDrill } from '../src/tables/thread-practice.ts';
import { threadTables } from '../src/tables/threads.ts';
import { loggable, saidOfEngine } from '../src/tasks/readings/said-here.ts';

const threads = threadCatalogue(threadTables);
const classNames = [...new Set(boltClasses.map(({ id }) => id))];

/** What quick text is read against, apart from the day. */
const quickTables: Omit<QuickContext, 'dates'> = { fuels: fuelNames, boltClasses: classNames };

/** What a line of free text asks: answered by the command that has the answer, asked back, or left alone. */
function answerTo(text: string, hand: Hand): Outcome {
  const question = readRecordQuestion(text);
  if (question !== undefined) return recordHandover(question);
  const settings = settingsHere(hand);
  const dates = dayContext({ clock: hand.clock, settings });
  const reading = readQuick(text, { ...quickTables, dates });
  switch (reading.verdict) {
    case 'none':
      return saidOfEngine(text, settings === null ? null : hand);
    case 'ask':
      throw new AskedBack(questionCard(reading));
    case 'answer': {
      if (reading.kind === 'date') return dayAnswer(reading, dates);
      if (reading.form === 'rail-pressure') return railPressure(reading);
      if (reading.form === 'per-cylinder') return perCylinder(reading);
      if (reading.form === 'thread-pitch' || reading.form === 'tap-drill') return namedThread(reading);
      return loggable(handedOver(reading), reading.form, text, settings === null ? null : hand);
    }
  }
}

function handedOver(reading: QuickAnswer): Handover {
  const asks = quickRun(reading);
  if (asks === undefined) throw new Error(`no command answers ${reading.form}`);
  return { kind: 'handover', asks, finish: (answer) => withQuickData(answer, reading) };
}

/** The pitch of a thread that was only named, or the drill before its tap: coarse where no pitch was said. */
function namedThread(reading: QuickAnswer): Handover {
  const { size = '' } = reading.said;
  const { thread } = knownBolt(readThreadSize(size), threads);
  const row = tapDrill(thread.id);
  const drillMm = row?.drill_mm ?? thread.basic.majorMm - thread.pitchMm;
  const wantsDrill = reading.form === 'tap-drill';
  const name = threadName(thread);
  const result = wantsDrill
    ? `${sayNumber(drillMm, 3)} mm drill for ${name}`
    : `${sayNumber(thread.pitchMm, 4)} mm pitch${thread.tpi === undefined ? '' : ` (${thread.tpi} tpi)`}: ${name}${thread.family === 'iso-metric' ? ' is the coarse thread' : ''}`;
  return {
    kind: 'handover',
    asks: { kind: 'run', command: 'thread', subcommand: null, options: { size: thread.id } },
    finish: (answer) =>
      withQuickData(
        {
          ...answer,
          result,
          certainty: wantsDrill
            ? row === undefined
              ? 'Diameter less pitch, the usual rule (common practice): about four fifths of the full thread.'
              : `From the tables: ${row.drill}.`
            : `Drill ${sayNumber(drillMm, 3)} mm before the tap.`,
          data: {
            ...answer.data,
            pitchMm: thread.pitchMm,
            drillMm,
            result: { value: wantsDrill ? drillMm : thread.pitchMm, unit: 'mm' },
          },
        },
        { ...reading, numbers: { ...reading.numbers, pitchMm: thread.pitchMm } },
      ),
  };
}

function railPressure({ numbers }: QuickAnswer): Answer {
  const [baseKpa, manifoldKpa] = [numberOf(numbers['baseKPa']), numberOf(numbers['boostKPa'])];
  const sum = pressureAcrossInjector({ baseKpa, manifoldKpa, referenced: true });
  const { railKpa, acrossKpa } = sum.value;
  return sumAnswer({
    subject: 'Rail pressure',
    result: `${sayIn(railKpa, 'bar', 3)} (${sayIn(railKpa, 'psi', 3)}) at the rail`,
    certainty: 'By gauge, with a regulator that follows the manifold 1:1.',
    working: [
      `${sayIn(baseKpa, 'bar', 3)} base and ${sayIn(manifoldKpa, 'bar', 3)} boost`,
      `${sayIn(acrossKpa, 'bar', 3)} stays across the injector`,
    ],
    calculation: sum,
    data: {
      kind: 'pressure',
      baseKPa: baseKpa,
      boostKPa: manifoldKpa,
      railKPa: railKpa,
      acrossKPa: acrossKpa,
      result: { value: railKpa, unit: 'kPa' },
    },
  });
}

function perCylinder({ numbers }: QuickAnswer): Answer {
  const [displacementCc, cylinders] = [numberOf(numbers['displacementCc']), numberOf(numbers['cylinders'])];
  const each = displacementCc / cylinders;
  return sumAnswer({
    subject: 'Engine',
    result: `${sayNumber(each, 4)} cm³ in each of ${cylinders} cylinders`,
    working: [`${sayNumber(displacementCc, 4)} cm³ in all (${sayIn(displacementCc / 1000, 'in3', 4)})`],
    calculation: { assumptions: [], sources: [], caveats: [] },
    data: { kind: 'displacement', displacementCc, cylinders, result: { value: each, unit: 'cc' } },
  });
}

/** @throws RangeError for what the reader always sets. */
function numberOf(value: Json | undefined): number {
  if (typeof value === 'number') return value;
  throw new RangeError('a reading lacks its number');
}

/** A text with gaps, and what goes into one of them. */
const begun = z.string().max(120);
const figure = z.string().max(60).default('');

export default defineCommand({
  description: 'Ask in your own words: a thread, a mixture, a torque, a conversion, a date',
  example: '/ask text:"21.9 x 1.5"',
  input: z.object({
    text: z
      .string()
      .min(1)
      .max(400)
      .describe('21.9 x 1.5, 12.4 afr, 58psi, m10 10.9 torque, 3 weeks from friday'),
  }),
  run: ({ text }, hand) => answerTo(text, hand),
  actions: {
    fill: action({ input: z.object({ text: begun }), run: ({ text }) => fillForm(text) }),
    filled: action({
      input: z.object({ text: begun, gap1: figure, gap2: figure, gap3: figure, gap4: figure, gap5: figure }),
      run: ({ text, gap1, gap2, gap3, gap4, gap5 }, hand) =>
        answerTo(filled(text, [gap1, gap2, gap3, gap4, gap5]), hand),
    }),
  },
});
