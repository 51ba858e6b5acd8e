import { type UnitId, units } from '../../calc/units/table.ts';
import type { FieldName } from '../quantity/fields.ts';
import type { Read } from '../quantity/reading.ts';
import { type AmountPiece, type Line, readAs, saidOf } from './line.ts';
import { answer, ask, offer, type QuickCandidate, type QuickReading } from './reading.ts';
import { covers, has, vocabulary } from './vocabulary.ts';

const TORQUE = vocabulary('torque drehmoment moment anzugsmoment couple par');
const PRESSURE = vocabulary(
  'pressure boost vacuum vac oil fuel gauge absolute abs druck öldruck ladedruck überdruck unterdruck presión presion pression suralimentation map rail',
);
const SAYS_PRESSURE = vocabulary(
  'pressure boost vacuum vac druck öldruck ladedruck überdruck unterdruck presión presion pression suralimentation',
);
/** Where and why something is: a remark, or a question about the car. */
const PLACED = vocabulary('at bei on mit with by for für con avec pour');
const COMPRESSION = vocabulary('compression comp');

/** Quantities that stand by themselves, by the field they are read in; the first that is certain wins. */
const ALONE: readonly (readonly [FieldName, ReadonlySet<string>])[] = [
  ['torque', TORQUE],
  ['pressure', PRESSURE],
  ['power', vocabulary('power leistung puissance potencia')],
  ['temperature', vocabulary('temp temperature')],
  ['mass', vocabulary('weight mass gewicht poids peso')],
  ['volume', vocabulary('volume volumen capacity')],
  ['speed', vocabulary('speed')],
  ['area', vocabulary('cable wire')],
];

/** Pounds over feet are no unit, and written by many for a torque. */
const TORQUE_OVER = /^(?:lbs?\/ft|ft\/lbs?)$/iu;

/** A quantity alone: shown in the units that others use. Pounds that can be several things are asked about. */
export function readQuantityLine(line: Line): QuickReading | undefined {
  const [amount, second] = line.amounts;
  if (amount === undefined || second !== undefined) return undefined;
  if (has(line, PLACED) || amount.unit.toLowerCase() === 't') return undefined;
  if (amount.unit === '') return bareLabelled(line, amount);
  const doubted = doubtful(line, amount);
  if (doubted !== undefined) return doubted;
  for (const [field, labels] of ALONE) {
    const read = readLabelled(line, amount, field, labels);
    if (read !== undefined && covers(line, labels) && !isSensor(line, amount))
      return alone(line, read, amount);
  }
  return undefined;
}

/** A word in front may say where a pressure is measured from. */
function readLabelled(
  line: Line,
  amount: AmountPiece,
  field: FieldName,
  labels: ReadonlySet<string>,
): Read | undefined {
  const read = readAs(amount, field);
  if (read === undefined || (read.here === true && !TORQUE_OVER.test(amount.unit))) return undefined;
  if (field !== 'pressure' || read.reference !== undefined || !has(line, labels)) return read;
  const said = line.words.find((word) =>
    ['boost', 'vacuum', 'vac', 'ladedruck', 'überdruck', 'unterdruck', 'abs', 'absolute'].includes(word),
  );
  return said === undefined ? read : (readAs({ ...amount, unit: `${amount.unit} ${said}` }, field) ?? read);
}

/** `150 kpa map` is a reading; `3 bar map` is what a sensor is called. */
const isSensor = ({ words }: Line, { unit }: AmountPiece): boolean =>
  words.includes('map') && !/^(?:k|h)pa$|^mbar$/iu.test(unit);

function alone(line: Line, read: Read, amount: AmountPiece): QuickReading {
  const { dimension } = units[read.typedUnit];
  const typed = TORQUE_OVER.test(amount.unit) ? { ...amount, unit: 'lbf ft' } : amount;
  const said = { value: sayReferred(saidOf(typed), read), ...otherZero(line, read) };
  if (dimension === 'torque') return answer('torque', 'convert', { torqueNm: read.value }, said);
  if (dimension === 'pressure') return answer('pressure', 'convert', { pressureKPa: read.value }, said);
  return answer('convert', 'convert', { value: read.value, unit: read.unit }, said);
}

/** "1 bar boost absolute": measured from the air, and wanted from nothing. */
function otherZero({ words }: Line, { reference }: Read): { readonly to?: string } {
  if (reference === 'gauge' && words.some((word) => /^abs(?:olut[e]?)?$/u.test(word)))
    return { to: 'kPa absolute' };
  if (reference === 'absolute' && words.some((word) => /^(?:boost|gauge|ladedruck)$/u.test(word)))
    return { to: 'kPa gauge' };
  return {};
}

const sayReferred = (typed: string, { reference, value }: Read): string =>
  reference === undefined || /boost|vac|abs|gauge|druck|psi[ag]|bar[ag]/iu.test(typed)
    ? typed
    : `${typed} ${reference === 'absolute' ? 'absolute' : value < 0 ? 'vacuum' : 'gauge'}`;

/** Pounds, and the cc and length that could be of several things. */
function doubtful(line: Line, { figures, unit }: AmountPiece): QuickReading | undefined {
  const key = unit.toLowerCase();
  if (/^(?:lbs?|pounds?|#)$/u.test(key)) {
    if (!covers(line, TORQUE, PRESSURE, COMPRESSION)) return undefined;
    const all: readonly QuickCandidate[] = [
      { kind: 'torque', label: `${figures} lb ft, a torque`, text: `${figures} lbf ft` },
      { kind: 'pressure', label: `${figures} psi, a pressure`, text: `${figures} psi` },
      { kind: 'convert', label: `${figures} lb, a weight`, text: `${figures} lb in kg` },
    ];
    const ranked = has(line, PRESSURE) || has(line, COMPRESSION) ? [all[1], all[0], all[2]] : all;
    return {
      ...ask('torque', 'Pounds of torque, of pressure, or a weight?', []),
      candidates: ranked.flatMap((each) => each ?? []),
    };
  }
  if (/^(?:ccs?|ccm|cm3)$/u.test(key) && covers(line)) {
    return {
      ...ask('injector', 'The flow of an injector, or a volume?', []),
      candidates: [
        { kind: 'injector', label: `${figures} cc/min, an injector`, text: `${figures} cc/min in lb/h` },
        { kind: 'convert', label: `${figures} cm³, a volume`, text: `${figures} mL in in3` },
      ],
    };
  }
  if (/^(?:mm|in|inch|inches|"|thou)$/u.test(key) && covers(line)) {
    const into = key === 'mm' ? 'inches' : 'mm';
    if (key === 'thou') return answerLength(figures, key);
    return {
      ...ask('convert', 'In another unit, or a thread of that size?', []),
      candidates: [
        { kind: 'convert', label: `${figures} ${key} in ${into}`, text: `${figures} ${key} in ${into}` },
        {
          kind: 'thread',
          label: `A thread ${figures} ${key} across`,
          text: `${figures} ${key} x …`,
          open: true,
        },
      ],
    };
  }
  return undefined;
}

function answerLength(figures: string, unit: string): QuickReading | undefined {
  const read = readAs({ is: 'amount', figures, value: 0, unit, after: '' }, 'length');
  return (
    read &&
    answer('convert', 'convert', { value: read.value, unit: read.unit }, { value: `${figures} ${unit}` })
  );
}

/** `boost 14`: the word says what it is, and the unit is open. */
function bareLabelled(line: Line, { figures }: AmountPiece): QuickReading | undefined {
  const among = (kind: 'pressure' | 'torque', into: readonly UnitId[], behind = ''): QuickReading =>
    ask(
      kind,
      `${figures} of which unit?`,
      into.map((unit) => offer(`${figures} ${units[unit].sign}${behind}`)),
    );
  if (line.words.length === 0) return undefined;
  if (has(line, SAYS_PRESSURE) && covers(line, PRESSURE))
    return among('pressure', ['psi', 'kPa', 'bar'], line.words.includes('boost') ? ' boost' : '');
  if (has(line, TORQUE) && covers(line, TORQUE)) return among('torque', ['N.m', 'lbf.ft']);
  return undefined;
}
