import { readMixtureLine } from './afr-lambda.ts';
import { readBareLine } from './bare.ts';
import { readCompressionLine } from './compression.ts';
import { readConversionLine } from './convert.ts';
import { readCoolantLine } from './coolant.ts';
import { readDateLine } from './date.ts';
import { readDisplacementLine } from './displacement.ts';
import { readHoseLine } from './hose.ts';
import { readInjectorLine } from './injector.ts';
import { type Line, lineOf } from './line.ts';
import { readPressureLine } from './pressure.ts';
import { readQuantityLine } from './quantity.ts';
import type { QuickContext, QuickReading } from './reading.ts';
import { readThreadLine } from './thread.ts';
import { readTorqueLine } from './torque.ts';

type Rule = (line: Line, context: QuickContext) => QuickReading | undefined;

/**
 * The kinds in order of rank: the first that accounts for the whole line has it. Those that need a word of their own stand
 * before those that figures alone are enough for, and a number by itself comes last, where it is only asked about.
 */
const RANKED: readonly Rule[] = [
  readDateLine,
  readMixtureLine,
  readCoolantLine,
  readCompressionLine,
  readDisplacementLine,
  readHoseLine,
  readPressureLine,
  readInjectorLine,
  readConversionLine,
  readTorqueLine,
  readThreadLine,
  readQuantityLine,
  readBareLine,
];

/**
 * What a line of free text asks, if it asks anything: one meaning a careful tradesperson would act on is answered, several or
 * an incomplete one asked back with readings as buttons, and talk is left alone. Every word of a line must be accounted for:
 * one that is not makes it people talking (docs/decisions/0010-quick-text.md).
 *
 * Pure: fuels, classes of bolts and the calendar come in with the context. Never throws.
 */
export function readQuick(text: string, context: QuickContext): QuickReading {
  const line = lineOf(text);
  if (line === undefined) return { verdict: 'none' };
  for (const rule of RANKED) {
    const found = rule(line, context);
    if (found !== undefined) return found;
  }
  return { verdict: 'none' };
}
