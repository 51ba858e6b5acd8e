import { type UnitId, units } from '../../calc/units/table.ts';
import type { Dimension } from '../../calc/units/unit.ts';
import { askedSomewhere, type Doubt, type Field } from './fields.ts';
import { referenceBehind, type Said } from './reference.ts';
import { unitSlip } from './slip.ts';
import { casedUnit, otherUnits, unitKey, unitWords } from './unit-words.ts';

/** What the words behind a number mean in a field. */
export type Meant =
  | {
      readonly kind: 'unit';
      readonly unit: UnitId;
      readonly said?: Said;
      readonly approx?: true;
      /** The word means this only in this field: `lb` of an injector. */
      readonly here?: true;
      /** One letter off. */
      readonly slip?: true;
    }
  | { readonly kind: 'doubt'; readonly units: readonly UnitId[]; readonly why: string }
  /** A unit, and words behind it that were not understood. */
  | { readonly kind: 'more'; readonly unit: UnitId; readonly rest: string }
  | { readonly kind: 'none'; readonly said?: Said; readonly approx?: true }
  | { readonly kind: 'foreign'; readonly dimensions: readonly Dimension[] }
  | { readonly kind: 'unknown'; readonly word: string };

const APPROX_BEHIND =
  /(?:^|[ -]+|(?<=\d))(?:ish|or so|or thereabouts|approx\.?|approximately|roughly|about|more or less|ungefähr|circa|ca\.?|environ|aprox\.?|aproximadamente|circa|give or take)$/iu;

/** Words this short are too near to each other for a slip to be seen through. */
const SHORTEST_FORGIVEN = 3;

/** @param phrase what stands behind the number, as typed; empty when nothing does. */
export function resolveUnit(phrase: string, field: Field): Meant {
  const plain = phrase.replace(APPROX_BEHIND, '').trim();
  const approx = plain === phrase ? {} : { approx: true as const };
  if (plain === '') return { kind: 'none', ...approx };
  const exactly = lookUp(plain, field);
  if (exactly !== undefined) return exactly.kind === 'unit' ? { ...exactly, ...approx } : exactly;
  const referred = pressureSaid(plain, field);
  if (referred !== undefined) return { ...referred, ...approx };
  const foreign = foreignTo(unitKey(plain), field);
  if (foreign !== undefined) return foreign;
  return withRest(plain, field) ?? forgiven(unitKey(plain), field) ?? { kind: 'unknown', word: plain };
}

function lookUp(phrase: string, field: Field): Extract<Meant, { kind: 'unit' | 'doubt' }> | undefined {
  const cased = casedUnit(phrase.replaceAll(' ', ''));
  if (cased !== undefined && admitted(cased, field)) return { kind: 'unit', unit: cased };
  const key = unitKey(phrase);
  const here = own(field.here, key);
  if (here !== undefined) return { kind: 'unit', unit: here, here: true };
  const doubt: Doubt | undefined = own(field.doubts, key);
  if (doubt !== undefined) return { kind: 'doubt', ...doubt };
  const unit = unitWords.get(key)?.find((id) => admitted(id, field));
  return unit === undefined ? undefined : { kind: 'unit', unit };
}

function pressureSaid(
  phrase: string,
  field: Field,
): Extract<Meant, { kind: 'unit' | 'none' | 'doubt' }> | undefined {
  if (!field.admits.some(({ dimension }) => dimension === 'pressure')) return undefined;
  if (/^at[üu]$/iu.test(phrase)) return { kind: 'unit', unit: 'at', said: 'gauge' };
  if (/^ata$/iu.test(phrase)) return { kind: 'unit', unit: 'at', said: 'absolute' };
  for (const { unit, said } of referenceBehind(phrase)) {
    if (unit === '') return { kind: 'none', said };
    if (referenceBehind(unit).some((twice) => lookUp(twice.unit, field)?.kind === 'unit')) {
      const inner = referenceBehind(unit).flatMap((twice) => lookUp(twice.unit, field) ?? []);
      const found = inner.find((each) => each.kind === 'unit');
      return {
        kind: 'doubt',
        units: found?.kind === 'unit' ? [found.unit] : [],
        why: 'its zero is said twice: above the air around, or above nothing?',
      };
    }
    const found = lookUp(unit, field);
    if (found?.kind === 'unit') return { ...found, said };
    if (found?.kind === 'doubt') return found;
    const slip =
      unit.length >= SHORTEST_FORGIVEN && said.length > 1 ? forgiven(unitKey(unit), field) : undefined;
    if (slip?.kind === 'unit' && phrase.includes(' ')) return { ...slip, said };
  }
  return undefined;
}

/** A unit of something else is never a slip of the pen for one of these. */
function foreignTo(key: string, field: Field): Meant | undefined {
  const known = unitWords.get(key);
  if (known === undefined) return undefined;
  const others = known.filter((id) => !admitted(id, field)).map((id) => units[id].dimension);
  return { kind: 'foreign', dimensions: [...new Set(others)] };
}

/** The longest beginning that is a unit by itself, with what is left over. */
function withRest(phrase: string, field: Field): Meant | undefined {
  const words = phrase.split(' ');
  for (let kept = words.length - 1; kept > 0; kept -= 1) {
    const beginning = words.slice(0, kept).join(' ');
    const found = lookUp(beginning, field);
    const rest = words.slice(kept).join(' ');
    if (found?.kind === 'unit') return { kind: 'more', unit: found.unit, rest };
    if (found?.kind === 'doubt') return found;
    const foreign = foreignTo(unitKey(beginning), field);
    if (foreign !== undefined) return foreign;
  }
  return undefined;
}

/** Words one slip away: read when they all mean one unit and the word is long enough, asked about otherwise. */
function forgiven(key: string, field: Field): Meant | undefined {
  if (askedSomewhere.has(key) || otherUnits.has(key)) return undefined;
  const near = new Set<UnitId>();
  const whys = new Set<string>();
  let short = key.length < SHORTEST_FORGIVEN;
  for (const [word, ids] of unitWords) {
    const unit = word.length > 1 && unitSlip(word, key) ? ids.find((id) => admitted(id, field)) : undefined;
    if (unit === undefined || own(field.doubts, word) !== undefined) continue;
    near.add(own(field.here, word) ?? unit);
    short ||= word.length < SHORTEST_FORGIVEN && !stuttered(word, key);
  }
  for (const [word, unit] of Object.entries(field.here ?? {})) {
    if (word.length > 2 && unitSlip(word, key)) near.add(unit);
  }
  for (const [word, doubt] of Object.entries(field.doubts ?? {})) {
    if (word.length < SHORTEST_FORGIVEN || !unitSlip(word, key)) continue;
    for (const unit of doubt.units) near.add(unit);
    whys.add(doubt.why);
  }
  const [only, ...others] = near;
  if (only === undefined) return undefined;
  if (others.length === 0 && whys.size === 0 && !short) return { kind: 'unit', unit: only, slip: true };
  return { kind: 'doubt', units: [...near], why: [...whys][0] ?? `"${key}" is no unit; which was meant?` };
}

/** `mmm`, `kww`: a key that was struck twice. */
function stuttered(word: string, typed: string): boolean {
  return typed.replace(/(.)\1+/gu, '$1') === word.replace(/(.)\1+/gu, '$1');
}

function admitted(id: UnitId, field: Field): boolean {
  const { dimension } = units[id];
  if (field.without?.includes(id)) return false;
  return field.admits.some((each) => each.dimension === dimension);
}

function own<Value>(words: Readonly<Record<string, Value>> | undefined, key: string): Value | undefined {
  return words !== undefined && Object.hasOwn(words, key) ? words[key] : undefined;
}
