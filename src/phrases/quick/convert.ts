import { units } from '../../calc/units/table.ts';
import { UserError } from '../../core/user-error.ts';
import { type Conversion, readConversion } from '../quantity/read-conversion.ts';
import { isUnit, type Line } from './line.ts';
import { answer, ask, offer, type QuickReading } from './reading.ts';

const LEAD =
  /^(?:(?:please|can you|could you|convert|conversion|umrechnen|what(?:'s| is|s)?|was (?:ist|sind)|wie ?viel|wieviele?|how (?:much|many)(?: is| are)?|combien(?: de| d')?|cu[aá]nt[oa]s?|cu[aá]nto es|quanti?|about|approx\.?|ca\.?|circa|around|roughly|~|etwa|ungefähr|environ) ?(?<=[ ~]))+/iu;
const JOINT = /(?=(?<joint> ?(?:->|→|=) ?| (?:to|in|into|as|en|zu|nach|à|a|equals) ))/giu;
const UNIT_FIRST =
  /^(?<to>\D*?\S)(?<joint> (?:for|from|is|are|in|of|sind|ist|hat|pour|dans|font|son|en|hay en|para|makes?) | ?= ?| )(?<value>[-+]?[.,]?\d.*)$/iu;
/** `58 psi is how many bar` */
const ASKED_LAST =
  /(?<=\d.*) (?:(?:is|are|sind|ist|equals|to|in|es|son|c'est) )?(?:how (?:many|much)|what in|wie ?viele?|combien (?:de |d')?(?!$)|cu[aá]nt[oa]s?) (?:in )?/iu;
/** What may stand beside an injector's flow. */
const INJECTORS = / ?\b(?:injectors?|inj|düsen|injecteurs?|inyectores)\b/giu;
/** An absolute pressure by another name. */
const MANIFOLD = / ?\b(?:map|manifold(?: pressure)?)\b/giu;
/** Languages in which these join are asked in with a unit alone. */
const SHY_JOINT = /^(?:a|à|as|en|zu|nach)$/iu;

/** A quantity and the unit it is wanted in, either first. */
export function readConversionLine(line: Line): QuickReading | undefined {
  const text = line.typed.replace(/[ ?.!]+$/u, '');
  const bare = text.replace(LEAD, '').replace(ASKED_LAST, ' in ');
  if (/^(?:convert|umrechnen) /iu.test(text) && /^[\d.,/ ]+$/u.test(bare))
    return ask('convert', 'From which unit to which?', [
      { label: 'Value, unit and unit wanted', text: `${bare} … in …`, open: true },
    ]);
  const plain = bare.replace(INJECTORS, '');
  if (namesUnit(plain)) return undefined;
  const flowing = plain !== bare;
  for (const split of [...valueFirst(plain), ...unitFirst(plain)]) {
    const found = converted(split, flowing);
    if (found !== undefined) return found;
  }
  return undefined;
}

interface Split {
  readonly value: string;
  readonly to: string;
  /** The word between; empty where there is only a space. */
  readonly joint: string;
}

/** Every way to part a value from the unit behind it: the `in` of "12 in in mm" can be either. */
function valueFirst(text: string): readonly Split[] {
  if (!/^(?:boost |vac(?:uum)? )?[-+]?[.,]?\d/iu.test(text)) return [];
  const joined = [...text.matchAll(JOINT)].map(({ index, groups = {} }) => ({
    value: text.slice(0, index).trim(),
    to: text.slice(index + (groups['joint'] ?? '').length).trim(),
    joint: (groups['joint'] ?? '').trim(),
  }));
  const apart = [...text.matchAll(/ /gu)].map(({ index }) => ({
    value: text.slice(0, index),
    to: text.slice(index + 1),
    joint: '',
  }));
  return [...joined, ...apart];
}

function unitFirst(text: string): readonly Split[] {
  const { value, to, joint } = UNIT_FIRST.exec(text)?.groups ?? {};
  if (value === undefined || to === undefined || joint === undefined) return [];
  return [{ value: value.trim(), to: to.trim(), joint: joint.trim() }];
}

function converted(
  { value: valueTyped, to: toTyped, joint }: Split,
  flowing: boolean,
): QuickReading | undefined {
  const value = valueTyped.replace(MANIFOLD, ' absolute').trim();
  const to = toTyped.replace(MANIFOLD, ' absolute').trim();
  if (!isUnit(to) || NO_TARGET.test(to)) return undefined;
  const figures = /^[-+]?(?:[\d.,]+|\d+\/\d+)$/u.test(value);
  if (figures ? joint === '' || SHY_JOINT.test(joint) : !namesUnit(value)) return undefined;
  try {
    const conversion = readConversion(
      flowing && /(?:lbs?|#|pounds?)$/iu.test(value) ? `${value}/hr` : value,
      to,
    );
    return answerOf(conversion, value, to);
  } catch (error) {
    if (!(error instanceof UserError)) throw error;
    // without a joining word it is a question only when it comes out
    return joint === '' ? undefined : askOf(error, value, to);
  }
}

/** Nobody wants a figure in these, and words of talk look like them. */
const NO_TARGET =
  /^(?:threads?|in to|in|[µu]?s|ms|secs?|seconds?|h|hrs?|hours?|m|mins?|minutes?|d|days?|weeks?|wks?|months?|years?|v|us)$/iu;

/** Figures with one known unit behind them and nothing else. */
function namesUnit(value: string): boolean {
  const behind = /^[-+]?(?:[\d.,/']+| (?=\d)|(?<=\d)-(?=\d+\/\d))+ ?-?(?<unit>.*)$/u.exec(
    value.replace(/^(?:boost|vac(?:uum)?) /iu, ''),
  )?.groups?.['unit'];
  return behind !== undefined && behind !== '' && isUnit(behind);
}

/** Talk is full of times and shares; a mixture is turned by its fuel. */
const NEVER: ReadonlySet<string> = new Set(['time', 'ratio', 'air-fuel-ratio', 'lambda']);

function answerOf({ value, target }: Conversion, said: string, to: string): QuickReading | undefined {
  if (target === undefined) return undefined;
  if (value.verdict === 'range') return undefined;
  const [from, into] = [units[value.typedUnit].dimension, units[target.unit].dimension];
  const flows = ['volume-flow', 'mass-flow'];
  if (flows.includes(from) && flows.includes(into) && (from !== into || value.here === true)) {
    const typed = from === 'mass-flow' ? { flowGs: value.value } : { flowCcMin: value.value };
    return answer('injector', 'flow-units', typed, { flow: said, to: target.unit });
  }
  if (NEVER.has(from) || NEVER.has(into)) return undefined;
  const reference = value.reference ?? target.said;
  if (from === 'pressure' && reference !== undefined)
    return answer('pressure', 'convert', { pressureKPa: value.value }, { value: said, to });
  return answer(
    'convert',
    'convert',
    { value: value.value, unit: value.unit, to: target.unit },
    { value: said, to },
  );
}

function askOf(error: UserError, value: string, to: string): QuickReading {
  const { question } = error;
  const choices = question?.choices ?? [];
  if (choices.length === 0)
    return ask('convert', error.message, [
      { label: 'Convert', text: `${/[\d.,/]+/u.exec(value)?.[0] ?? ''} … in …`, open: true },
    ]);
  return ask(
    'convert',
    error.message,
    choices.map((choice) =>
      offer(question?.field === 'to' ? `${value} in ${choice.value}` : `${choice.value} in ${to}`),
    ),
  );
}
