import { withoutManners } from './line.ts';
import { QUESTIONS, type RecordAsks } from './record-questions.ts';

/** A question to the crew's record. */
export interface RecordQuestion {
  readonly asks: RecordAsks;
  /** As typed: 90 min. */
  readonly minutes?: string;
  readonly people?: number;
  /** By a name that the starting stages have. */
  readonly stage?: string;
  /** As often said to people: answered only to whoever speaks to the bot. */
  readonly near: boolean;
}

/** Nobody asks the record in more. */
const LONGEST = 100;

/** What a stage is called in a question, and by what name it is found; any other word asks about something else. */
const STAGES: readonly (readonly [RegExp, string])[] = [
  [
    /^(?:first |1st )?(?:start|start-?up|fire|fire-?up|firing|fire (?:it|her) up|start (?:it|her)|run|fire up|light(?:ing)? up)(?: up)?$/u,
    'first start',
  ],
  [
    /^(?:ersten? start|starten|anlassen|premier démarrage|démarrage|démarrer|primer arranque|arranque|arrancar)$/u,
    'first start',
  ],
  [
    /^(?:cranking|crank|crank (?:it|her)|oil pressure|priming|prime (?:it|the oil))(?: (?:for|by) .+)?$/u,
    'cranking',
  ],
  [/^(?:fuel pressure|fuel)$/u, 'fuel pressure'],
  [/^(?:fluids|oil and coolant)$/u, 'fluids in'],
  [/^(?:warm-?up|warming up)(?: checks?)?$/u, 'warm-up checks'],
  [/^idle(?: fuelling| tune)?$/u, 'idle fuelling'],
  [/^(?:road(?: fuelling)?|road tune|(?:(?:first|test) )?drive|driving|drive (?:it|her))$/u, 'road fuelling'],
  [/^(?:running[ -]?in|break[ -]?in|einfahren|rodage|rodaje)$/u, 'running in'],
  [
    /^(?:mapping|the mapper|map (?:it|her)|the dyno|dyno|rolling road|abstimmung|abstimmen|cartographie)$/u,
    'mapping',
  ],
  [/^(?:sign[ -]?off|inspection|abnahme)$/u, 'sign-off'],
];

/** A whole line that asks the record; undefined for anything else, and for the stages of other things ("ready for lunch"). */
export function readRecordQuestion(said: string): RecordQuestion | undefined {
  if (said.length > LONGEST * 2) return undefined;
  const text = withoutManners(said)
    .toLowerCase()
    .replace(/[’‘]/gu, "'")
    .replace(/^¿ ?/u, '')
    .replace(/[ ?.!…]+$/u, '')
    .replace(/\s+/gu, ' ');
  if (text.length > LONGEST) return undefined;
  for (const { asks, pattern, near } of QUESTIONS) {
    const groups = pattern.exec(text)?.groups;
    if (groups === undefined) {
      if (!pattern.test(text)) continue;
      return { asks, near: near === true };
    }
    const named = (name: string): string | undefined =>
      Object.entries(groups).find(([key, value]) => key.startsWith(name) && value !== undefined)?.[1];
    const stageSaid = named('stage');
    const stage = stageSaid === undefined ? undefined : stageOf(stageSaid);
    if (stageSaid !== undefined && stage === undefined) continue;
    const [minutes, people] = [
      named('minutes')
        ?.replace(/minuten$/u, 'min')
        .replace(/stunden$/u, 'h'),
      named('people'),
    ];
    return {
      asks,
      near: near === true,
      ...(minutes === undefined ? {} : { minutes }),
      ...(people === undefined ? {} : { people: Number(people) }),
      ...(stage === undefined ? {} : { stage }),
    };
  }
  return undefined;
}

const stageOf = (said: string): string | undefined =>
  STAGES.find(([pattern]) => pattern.test(said.trim()))?.[1];
