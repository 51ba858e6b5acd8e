import type { Json, JsonObject } from '../core/json.ts';
import type { Answer } from '../core/reply.ts';
import type { QuickAnswer, QuickForm } from '../phrases/quick/reading.ts';
import { readThreadSize } from '../phrases/threads/size.ts';

/** What came out, where the command's own data has it under another name. */
const RESULTS: Partial<Readonly<Record<QuickForm, (data: JsonObject) => Json | undefined>>> = {
  stoichiometric: (data) => inUnit(data['stoichiometricAfr'], 'AFR'),
  freezing: (data) => inUnit(data['freezingC'], 'degC'),
  'coolant-fill': (data) => inUnit(data['antifreezeL'], 'L'),
  'coolant-change': (data) => inUnit(data['drainL'], 'L'),
  displacement: (data) => inUnit(scaled(data['displacementL'], 1000), 'cc'),
  'compression-ratio': (data) => inUnit(data['compressionRatio'], '1'),
  'compression-test': (data) => inUnit(data['spreadRatio'], '1'),
  bolt: (data) => inUnit(data['torqueNm'], 'N.m'),
  // a pipe's size is no length: what it measures across is what comes out
  thread: (data) =>
    data['diameterMm'] === undefined ? inUnit(first(data['candidates'])?.['majorMm'], 'mm') : undefined,
  'nearest-dash': (data) => inUnit(first(data['matches'])?.['dash'], 'dash'),
};

/** The command's answer under the name and with the numbers of the quick question. */
export function withQuickData(answer: Answer, reading: QuickAnswer): Answer {
  const { kind, form, numbers } = reading;
  const said = Object.fromEntries(Object.entries(numbers).filter(([, value]) => value !== null));
  const result = RESULTS[form]?.(answer.data) ?? answer.data['result'];
  return {
    ...answer,
    ...pipeWords(form, answer),
    data: {
      ...answer.data,
      ...more(form, answer.data),
      ...said,
      kind,
      ...(result === undefined ? {} : { result }),
    },
  };
}

/** A pipe thread is named by no length of its own, so what it measures is said first. */
function pipeWords(form: QuickForm, { certainty, data }: Answer): { readonly certainty?: string } {
  const best = first(data['candidates']);
  const [majorMm, pitchMm] = [best?.['majorMm'], best?.['pitchMm']];
  if (form !== 'thread' || data['diameterMm'] !== undefined) return {};
  if (typeof majorMm !== 'number' || typeof pitchMm !== 'number') return {};
  const measures = `${majorMm.toFixed(2)} mm over the crests, pitch ${pitchMm.toFixed(3)} mm (${Number((25.4 / pitchMm).toFixed(1))} tpi).`;
  return { certainty: certainty === undefined ? measures : `${measures} ${certainty}` };
}

/** Numbers that only the tables know: a pipe thread's pitch, the thread of a dash size. */
function more(form: QuickForm, data: JsonObject): JsonObject {
  if (form === 'dash') return flareThread(first(data['sizes']));
  const pitchMm = form === 'thread' ? first(data['candidates'])?.['pitchMm'] : undefined;
  return data['pitchMm'] !== undefined || pitchMm === undefined ? {} : { pitchMm };
}

/** The 37° flare is what a dash number alone names on a car. */
function flareThread(size: JsonObject | undefined): JsonObject {
  const fittings = size?.['fittings'];
  const flare = Array.isArray(fittings)
    ? fittings
        .filter(isObject)
        .find(({ fitting }) => typeof fitting === 'string' && /^(?:JIC|AN)/u.test(fitting))
    : undefined;
  const designation = flare?.['designation'];
  if (typeof designation !== 'string') return {};
  const { diameter, pitches } = readThreadSize(designation);
  const [pitch] = pitches;
  return diameter === undefined || pitch === undefined
    ? {}
    : { diameterMm: diameter.mm, pitchMm: pitch.mm, designation };
}

const inUnit = (value: Json | undefined, unit: string): Json | undefined =>
  typeof value === 'number' ? { value, unit } : undefined;

const scaled = (value: Json | undefined, by: number): number | undefined =>
  typeof value === 'number' ? value * by : undefined;

function first(list: Json | undefined): JsonObject | undefined {
  return Array.isArray(list) ? list.find(isObject) : undefined;
}

const isObject = (value: Json | undefined): value is JsonObject =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
