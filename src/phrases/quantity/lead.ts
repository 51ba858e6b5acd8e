import type { UnitId } from '../../calc/units/table.ts';
import type { FieldName } from './fields.ts';
import { referenceBefore, type Said } from './reference.ts';

/** What the words in front of the first number say of it. */
export interface LeadMeaning {
  readonly approx?: true;
  /** "between", "from": two numbers and a range follow. */
  readonly between?: true;
  readonly said?: Said;
  /** A unit that is written in front: `AFR 12.4`. */
  readonly unit?: UnitId;
  /** Something that has to be settled before the number can be used. */
  readonly question?: string;
}

const APPROX =
  /^(?:just (?:under|over|below|above)|about|approx(?:imately)?\.?|c(?:a|irca)?\.?|roughly|around|nearly|almost|some|say|~|≈|ungefähr|ungef\.?|etwa|rund|knapp|gut|fast|zirka|environ|env\.?|à peu près|presque|unos|unas|aprox(?:imadamente)?\.?|alrededor de|casi|más o menos|quasi|all'incirca|more or less)$/iu;
const BETWEEN = /^(?:between|from|zwischen|von|entre|de|da|tra|fra|range)$/iu;
const LIMIT =
  /^(?:max(?:imum|imal|imo)?\.?|min(?:imum|destens|imal|imo)?\.?|at (?:least|most)|up to|no (?:more|less) than|not (?:more|less) than|(?:more|less|higher|lower) than|over|under|above|below|höchstens|bis(?: zu)?|über|unter|mehr als|weniger als|plus de|moins de|jusqu'à|hasta|más de|menos de|[<>≤≥]=?)$/iu;
/** Names of what is measured say nothing new where it is asked for. */
const NAMED: Partial<Record<FieldName, RegExp>> = {
  ratio: /^(?:cr|ratio|compression(?: ratio)?) ?[=:]?$/iu,
  pressure: /^(?:p ?=|pressure(?: ?[=:])?|druck ?[=:]?)$/iu,
  torque: /^(?:torque ?[=:]?)$/iu,
  temperature: /^(?:t ?=|temp(?:erature)?\.? ?[=:]?)$/iu,
  length: /^(?:Ø|ø|dia(?:meter)?\.?|d ?=|⌀)$/iu,
  voltage: /^(?:u ?=|v ?=)$/iu,
  current: /^(?:i ?=)$/iu,
  resistance: /^(?:r ?=)$/iu,
};

export function readLead(lead: string, field: FieldName): LeadMeaning {
  const text = lead.trim();
  if (text === '') return {};
  if (APPROX.test(text)) return { approx: true };
  if (BETWEEN.test(text)) return { between: true };
  if (field === 'ratio' && /^afr ?[=:]?$/iu.test(text)) return { unit: 'AFR' };
  if (field === 'ratio' && /^(?:λ|lambda) ?[=:]?$/iu.test(text)) return { unit: 'lambda' };
  if (NAMED[field]?.test(text)) return {};
  if (LIMIT.test(text))
    return { question: `"${text}" is a limit, not a figure: is it the figure itself that is meant?` };
  const said = field === 'pressure' ? referenceBefore(text.toLowerCase().replace(/ ?[=:]$/u, '')) : undefined;
  if (said !== undefined) return { said };
  return {
    question: `What is "${text.length > 30 ? `${text.slice(0, 30)}…` : text}" to say? Only the figure is read here.`,
  };
}
