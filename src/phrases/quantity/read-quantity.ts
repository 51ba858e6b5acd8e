import { compound } from './compound.ts';
import { type Field, type FieldName, fields } from './fields.ts';
import { type LeadMeaning, readLead } from './lead.ts';
import { readOwnForm, readSpan } from './own-forms.ts';
import { readMeant } from './read-amount.ts';
import { readPair, whichOf } from './read-pair.ts';
import type { QuantityReading } from './reading.ts';
import { resolveUnit } from './resolve-unit.ts';
import { type Amount, type Scan, scan } from './scan.ts';
import { tidyKeepingCase } from './tidy.ts';
import { ask, refuse } from './verdicts.ts';

/** The longest a quantity is, said twice and with a condition. */
const LONGEST = 80;
const ISH = /(?<=[\p{L}\d°"'%]) ?-?ish(?!\p{L})/iu;
const PROGRAM_NUMBER = /^0(?:x[\da-f]|[bo]\d)/iu;

/**
 * A quantity as people type it, in the unit the field works in (docs/decisions/0009-quantities.md says by what rules).
 *
 * One meaning a careful tradesperson would act on is read; several are asked about, with what to type for each; none is
 * refused, with what would be read. It never guesses in silence and throws on nothing. No time, no state.
 */
export function readQuantity(typed: string, name: FieldName): QuantityReading {
  const field = fields[name];
  if (typed.length > LONGEST)
    return refuse(`That is ${typed.length} characters, too long for a quantity.`, field);
  const { text, approx } = withoutExtras(tidyKeepingCase(typed));
  if (text === '') return refuse('Nothing was typed.', field);
  const own = readOwnForm(text, name, field);
  if (own !== undefined) return own;
  const taken = PROGRAM_NUMBER.test(text) ? null : scan(text);
  if (taken === null) return refuse(`"${shortened(text)}" is not read here.`, field);
  if (taken.amounts.length === 0) return refuse(`There is no number in "${shortened(text)}".`, field);
  const read = name === 'temperature' ? { ...taken, amounts: taken.amounts.map(inKelvin) } : taken;
  const lead = readLead(read.lead, name);
  const found = (name === 'pitch' ? readSpan(read, field) : undefined) ?? readAmounts(read, lead, field);
  return afterLead(found, approx ? { ...lead, approx } : lead);
}

/** Without a thumb at the end, an `-ish`, and the way an engine speed is written as a fraction. */
function withoutExtras(text: string): { readonly text: string; readonly approx?: true } {
  const bare = text
    .replace(/(?<=.) ?(?:\p{Extended_Pictographic}\p{Emoji_Modifier}?)+$/u, '')
    .replace(/(?<=\d) 1\/min\b/u, ' rpm')
    .replace(/ ?@ ?/u, ' at ');
  const sure = bare.replace(ISH, '');
  return sure === bare ? { text: bare } : { text: sure, approx: true };
}

/** Behind a temperature a `k` is no thousand. */
const inKelvin = (amount: Amount): Amount =>
  amount.thousand && amount.unit === '' ? { ...amount, thousand: false, unit: 'K' } : amount;

const shortened = (text: string): string => (text.length > 40 ? `${text.slice(0, 40)}…` : text);

function readAmounts({ amounts, joints }: Scan, lead: LeadMeaning, field: Field): QuantityReading {
  const [first, second, ...more] = amounts;
  if (first === undefined) return refuse('There is no number.', field);
  if (second === undefined) {
    const meant = resolveUnit(first.unit, field);
    const named = meant.kind === 'none' && lead.unit !== undefined;
    return readMeant(first, named ? { kind: 'unit', unit: lead.unit } : meant, field, lead.said);
  }
  const joint = joints[0] ?? '';
  if (more.length > 0) {
    const whole = joints.every((each) => each === '') ? compound(amounts, field) : undefined;
    return (
      whole ??
      whichOf(
        amounts,
        amounts.map(({ unit }) => resolveUnit(unit, field)),
        field,
      )
    );
  }
  return readPair(first, lead.between && joint === 'and' ? 'to' : joint, second, field, lead.said);
}

/** What stood before the number is as much a part of it as what stood behind. */
function afterLead(found: QuantityReading, { approx, question }: LeadMeaning): QuantityReading {
  if (found.verdict !== 'read' && found.verdict !== 'range') return found;
  if (question !== undefined) {
    if (found.verdict === 'range') return ask(question, []);
    return ask(question, [{ ...found, possible: true }]);
  }
  return approx ? { ...found, approx: true } : found;
}
