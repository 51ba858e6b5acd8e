import { readMixture } from '../mixture.ts';
import { takeFuel } from './fuel-word.ts';
import { type AmountPiece, type Line, lineOf } from './line.ts';
import { answer, ask, offer, type QuickContext, type QuickReading } from './reading.ts';
import { covers, has, vocabulary } from './vocabulary.ts';

const LAMBDA = vocabulary('lambda lamda lamba λ lambdas');
const AFR = vocabulary('afr afrs a/f air-fuel');
const OTHERS = vocabulary(
  'want wanted wants target targets need needed should be reading reads read measured at now have got from to in as ratio air/fuel gauge wideband change correction correct cell tank running petrol and but fuel mixture',
);
const WANTED = vocabulary('want wanted wants target need needed');
const STOICHIOMETRIC = vocabulary('stoich stoichiometric stoichiometry');
const OF_BOTH = new Set([...LAMBDA, ...AFR]);
const UNITS = new Set([...OF_BOTH, 'λ']);

/** λ and air–fuel ratio: one from the other, or the change from the one read to the one wanted. */
export function readMixtureLine(line: Line, context: QuickContext): QuickReading | undefined {
  const { fuel, rest } = takeFuel(abbreviated(line), context);
  const inFuel = fuel === undefined ? {} : { fuel };
  if (has(rest, STOICHIOMETRIC) && fuel !== undefined && rest.amounts.length === 0) {
    return covers(rest, STOICHIOMETRIC, OF_BOTH, OTHERS)
      ? answer('afr-lambda', 'stoichiometric', { lambda: 1, ...inFuel }, inFuel)
      : undefined;
  }
  if (!labelsOf(rest).some((word) => UNITS.has(word)) || !covers(rest, OF_BOTH, OTHERS)) return undefined;
  const amounts = rest.amounts.filter(isRatioFigure).map(withoutIn);
  const label = labelOf(rest);
  const [first, second, third] = amounts;
  if (first === undefined) return undefined;
  if (third !== undefined || amounts.some(({ unit }) => unit !== '' && !isLabel(unit))) return undefined;
  if (second === undefined) return one(first, label, fuel, has(rest, WANTED));
  return two(rest, [first, second], label, fuel);
}

const IN_WORDS = /\bair[ /-]?(?:and |to )?fuel(?: ratio)?\b|\bluft-?kraftstoff-?verhältnis\b/giu;

/** The air–fuel ratio said in words. */
function abbreviated(line: Line): Line {
  const typed = line.typed.replace(IN_WORDS, 'afr');
  return typed === line.typed ? line : { ...(lineOf(typed) ?? line), asks: line.asks };
}

type Label = 'lambda' | 'afr' | 'both';

const isLabel = (unit: string): boolean => UNITS.has(unit.toLowerCase());

/** The `1` of `12.4:1` is no reading. */
const isRatioFigure = ({ figures, after }: AmountPiece): boolean => !(figures === '1' && after === ':');

/** The `in` of `0.82 in afr` is no inch. */
const withoutIn = (amount: AmountPiece): AmountPiece =>
  amount.unit.toLowerCase() === 'in' ? { ...amount, unit: '' } : amount;

/** The word may stand behind its figure, as a unit does. */
const labelsOf = ({ words, amounts }: Line): readonly string[] => [
  ...words,
  ...amounts.map(({ unit }) => unit.toLowerCase()),
];

function labelOf(line: Line): Label {
  const labels = labelsOf(line);
  const lambda = labels.some((word) => LAMBDA.has(word));
  const afr = labels.some((word) => AFR.has(word));
  return lambda && afr ? 'both' : lambda ? 'lambda' : 'afr';
}

/** By the label, or where both are said by the size: a reading of 3 and more is no λ. */
function mixtureOf({ figures, value }: AmountPiece, label: Label) {
  const as = label === 'both' ? (value < 3 ? 'lambda' : 'afr') : label;
  return readMixture(`${as} ${figures}`);
}

function one(amount: AmountPiece, label: Label, fuel: string | undefined, wanted: boolean): QuickReading {
  const read = mixtureOf(amount, label);
  const behind = fuel === undefined ? '' : ` ${fuel}`;
  switch (read.verdict) {
    case 'read':
      if (wanted)
        return ask('afr-lambda', 'What is read now?', [
          { label: 'Read and wanted', text: `${read.as} … want ${read.value}`, open: true },
        ]);
      return answer(
        'afr-lambda',
        'mixture',
        { [read.as]: read.value, ...(fuel === undefined ? {} : { fuel }) },
        { reading: `${read.as} ${amount.figures}`, ...(fuel === undefined ? {} : { fuel }) },
      );
    case 'ask':
      return ask(
        'afr-lambda',
        read.why,
        read.options.map((option) => offer(`${option}${behind}`)),
      );
    case 'refuse':
      return ask('afr-lambda', read.why, [{ label: 'λ or AFR', text: 'afr …', open: true }]);
  }
}

function two(
  line: Line,
  amounts: readonly [AmountPiece, AmountPiece],
  label: Label,
  fuel: string | undefined,
): QuickReading | undefined {
  if (!has(line, WANTED) && !line.words.includes('to')) return undefined;
  const [read, wanted] = [mixtureOf(amounts[0], label), mixtureOf(amounts[1], label)];
  if (read.verdict !== 'read' || wanted.verdict !== 'read')
    return ask('afr-lambda', 'Both have to be λ, or both air–fuel ratios.', [
      { label: 'Read and wanted', text: 'lambda … want …', open: true },
    ]);
  const target = wanted.as === 'lambda' ? 'targetLambda' : 'targetAfr';
  return answer(
    'afr-lambda',
    'mixture-change',
    { [read.as]: read.value, [target]: wanted.value, ...(fuel === undefined ? {} : { fuel }) },
    {
      measured: `${read.as} ${amounts[0].figures}`,
      wanted: `${wanted.as} ${amounts[1].figures}`,
      ...(fuel === undefined ? {} : { fuel }),
    },
  );
}
