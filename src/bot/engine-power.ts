import { z } from 'zod';
import { quantity, readAs, type TypedOption } from './quantity-option.ts';

/** A power, and where it was said to be counted. */
export interface EnginePower {
  readonly powerKw: number;
  readonly at?: 'crank' | 'wheels';
}

const WHEELS = /\b(?:[rfa]?w(?=hp|bhp|kw|ps|ch|cv))|[ ,]*\(?(?:at|on) the wheels?\)?|[ ,]*\bwheel\b[ -]*/giu;
const CRANK = /[ ,]*\(?(?:at|on) the (?:crank|flywheel|engine)\)?|[ ,]*\b(?:crank|flywheel)\b[ -]*/giu;

/**
 * An option for an engine's power that hears where it is counted: `400 whp`, `300 kW at the wheels`, `420 hp crank`.
 *
 * @param name as the option is called, so that a question can be answered by a button.
 */
export function enginePower(name: string, description: string): TypedOption<EnginePower> {
  return z
    .string()
    .min(1)
    .max(60)
    .meta({ description, measures: 'power' })
    .transform((text) => {
      const at = saidAt(text);
      const bare = text
        .replace(/(\d)(?=[a-z])/giu, '$1 ')
        .replace(WHEELS, ' ')
        .replace(CRANK, ' ')
        .trim();
      const { value: powerKw } = readAs(name, 'power', at === undefined ? text : bare);
      return at === undefined ? { powerKw } : { powerKw, at };
    });
}

function saidAt(text: string): EnginePower['at'] {
  const spaced = text.replace(/(\d)(?=[a-z])/giu, '$1 ');
  if (spaced.search(WHEELS) >= 0) return 'wheels';
  return spaced.search(CRANK) >= 0 ? 'crank' : undefined;
}

/** How a power becomes fuel: the options that every sum from power to fuel takes, with the same usual values. */
export const fuelUseOptions = {
  intake: z.enum(['boosted', 'natural']).default('boosted').describe('Boosted, or naturally aspirated'),
  bsfc: z
    .string()
    .min(1)
    .max(200)
    .describe('Fuel per work, instead of the usual: 0.55 lb/hp·h, 335 g/kWh')
    .optional(),
  at: z
    .enum(['crank', 'wheels'])
    .optional()
    .describe('Where the power is counted, unless power says it: crank'),
  loss: quantity('loss', 'percent', 'Lost between crank and wheels').prefault('15 %'),
  density: quantity('density', 'density', 'Of the fuel; the table has it for each').optional(),
};
