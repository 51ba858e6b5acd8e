import { z } from 'zod';
import { action, defineCommand, type Suggest, subcommand } from '../src/bot/command.ts';
import { buildHere } from '../src/bot/crew.ts';
import { turned, turnedPage } from '../src/bot/turned.ts';
import { blank, line } from '../src/bot/typed.ts';
import { knownFuel } from '../src/calc/fuel/known-fuel.ts';
import { UserError } from '../src/core/user-error.ts';
import { readFuelName } from '../src/phrases/fuel-name.ts';
import { NOTICE_ARG } from '../src/records/orders/order-buttons.ts';
import {
  findKind,
  suggestKinds,
  suggestLines,
  suggestReadings,
} from '../src/records/readings/find-reading.ts';
import { correctForm, readingForm } from '../src/records/readings/reading-forms.ts';
import { fuelNames, fuelRows } from '../src/tables/fuels.ts';
import { correctReadingHere } from '../src/tasks/readings/correct-reading.ts';
import { chartReadings } from '../src/tasks/readings/reading-chart.ts';
import { dropLimitHere, ownKindHere, setLimitHere, showLimits } from '../src/tasks/readings/reading-rules.ts';
import {
  listReadings,
  logReadingHere,
  readingHere,
  removeReadingHere,
  showReading,
} from '../src/tasks/readings/readings.ts';

const link = line(300).refine((text) => /^https?:\/\/\S+$/.test(text), 'must be an address like https://…');
const kindName = line(60);
const readingRef = line(80).describe('Its number, or its kind for the newest one');

const offerKinds: Suggest = (typed, hand) => suggestKinds(hand.record, buildHere(hand)?.id, typed);
const offerReadings: Suggest = (typed, hand) => {
  const build = buildHere(hand);
  return build ? suggestReadings(hand.record, build.id, typed) : [];
};

/** Lines logged before, to be picked and given another value. */
const offerLines: Suggest = (typed, hand) => {
  const build = buildHere(hand);
  return build ? suggestLines(hand.record, build.id, typed) : [];
};

export default defineCommand({
  description: 'Readings: pressures, temperatures, compression, battery, distance; limits and trends',
  subcommands: {
    log: subcommand({
      description: 'Log a reading as you would say it: what, value, conditions',
      example: '/reading log reading:"oil 4.2 bar at 2500 rpm 92C"',
      input: z.object({
        reading: line(200).describe(
          'oil 4.2 bar at 2500 rpm 92C; compression 12.1 12.0 11.8 11.9 bar; odo 1234 km',
        ),
        note: line(200).optional().describe('Anything worth remembering about it'),
        link: link.optional().describe('Address of a photograph'),
      }),
      suggest: { reading: offerLines },
      run: ({ reading, note, link: photo }, hand) =>
        logReadingHere(hand, { typed: reading, note, link: photo }, afrOf),
    }),
    form: subcommand({
      description: 'Log a reading by filling in a form',
      input: z.object({}),
      run: () => readingForm(),
    }),
    list: subcommand({
      description: 'What was measured, the newest first',
      example: '/reading list',
      input: z.object({ kind: kindName.optional().describe('Only this kind') }),
      suggest: { kind: offerKinds },
      run: ({ kind }, hand) =>
        listReadings(
          hand,
          kind === undefined ? undefined : findKind(hand.record, buildHere(hand)?.id, kind).name,
          1,
        ),
    }),
    show: subcommand({
      description: 'One reading with its limits, its trend and what it was first given as',
      input: z.object({ reading: readingRef }),
      suggest: { reading: offerReadings },
      run: ({ reading }, hand) => showReading(hand, reading),
    }),
    correct: subcommand({
      description: 'Correct a reading; the old value stays beside it',
      input: z.object({
        reading: readingRef,
        value: line(100).describe('What it should have been: 4.1 bar, or 4.1 bar at 2000 rpm'),
      }),
      suggest: { reading: offerReadings },
      run: ({ reading, value }, hand) => correctReadingHere(hand, reading, value, afrOf),
    }),
    remove: subcommand({
      description: 'Take a reading off the record',
      input: z.object({ reading: readingRef }),
      suggest: { reading: offerReadings },
      run: ({ reading }, hand) => removeReadingHere(hand, reading),
    }),
    limits: subcommand({
      description: 'The limits readings are judged by; or put one down',
      example: '/reading limits kind:"oil pressure"',
      input: z.object({
        kind: kindName.optional().describe('Only this kind, with what common practice says'),
        limit: line(100)
          .optional()
          .describe('A new one: at least 3 bar at 2000 rpm hot; 13.8 to 14.7 V charging'),
        from: z
          .enum(['maker', 'crew'])
          .default('crew')
          .describe("Whose figure it is; the maker's comes first"),
      }),
      suggest: { kind: offerKinds },
      run({ kind, limit, from }, hand) {
        if (limit === undefined) return showLimits(hand, kind, 1);
        if (kind !== undefined) return setLimitHere(hand, { kind, limit, from }, afrOf);
        throw new UserError(
          'bad-input',
          'kind: say what the limit is of, as in kind:"oil pressure". No limit was changed.',
        );
      },
    }),
    kind: subcommand({
      description: 'Make a kind of reading of your own, with its unit and limits',
      input: z.object({
        name: line(40).describe('What you call it: belt tension'),
        unit: line(20).optional().describe('What it is counted in: N, mm, turns, clicks'),
        limit: line(100).optional().describe('Its limits: 300 to 500 N'),
        remove: z.boolean().default(false).describe('Take the kind off; its readings stay'),
      }),
      run: (said, hand) => ownKindHere(hand, said, afrOf),
    }),
    chart: subcommand({
      description: 'Readings as a picture: over time with limits, or cylinder beside cylinder',
      input: z.object({
        kind: line(120).describe(
          'What to draw; several over the same time: oil pressure, coolant temperature',
        ),
        place: line(40).optional().describe('Only this place: cylinder 3'),
      }),
      suggest: { kind: offerKinds },
      run: ({ kind, place }, hand) => chartReadings(hand, kind, place),
    }),
  },
  actions: {
    log: action({
      input: z.object({
        what: line(60),
        value: line(100),
        conditions: blank,
        note: blank,
        link: blank.pipe(link.optional()),
      }),
      run: ({ what, value, conditions, note, link: photo }, hand) =>
        logReadingHere(
          hand,
          { typed: `${what} ${value} ${conditions ?? ''}`.trim(), note, link: photo },
          afrOf,
        ),
    }),
    list: action({
      input: z.object({ kind: kindName.optional(), page: turnedPage }),
      run: ({ kind, page }, hand) => turned(hand, page, (to) => listReadings(hand, kind, to)),
    }),
    chart: action({
      // on an alert the button says which message it sits on
      input: z.object({ kind: line(60), [NOTICE_ARG]: z.coerce.number().int().positive().optional() }),
      run: ({ kind }, hand) => chartReadings(hand, kind, undefined),
    }),
    correct: action({
      input: z.object({ reading: line(20) }),
      run: ({ reading }, hand) => correctForm(readingHere(hand, reading)),
    }),
    'correct-done': action({
      input: z.object({ reading: line(20), value: line(100) }),
      run: ({ reading, value }, hand) => correctReadingHere(hand, reading, value, afrOf),
    }),
    limits: action({
      input: z.object({ kind: kindName.optional(), page: turnedPage }),
      run: ({ kind, page }, hand) => turned(hand, page, (to) => showLimits(hand, kind, to)),
    }),
    'drop-limit': action({
      input: z.object({ limit: z.coerce.number().int().positive() }),
      run: ({ limit }, hand) => dropLimitHere(hand, limit),
    }),
  },
});

/** The stoichiometric air–fuel ratio of a fuel by its name. */
function afrOf(fuel: string): number | undefined {
  const read = readFuelName(fuel, fuelNames);
  return read.verdict === 'blend' ? knownFuel(fuelRows, read.parts).value.stoichiometricAfr : undefined;
}
