import { withPieces } from './cylinders.ts';
import { labelled } from './labelled.ts';
import { type AmountPiece, type Line, type Piece, saidOf, withUnit } from './line.ts';
import { answer, ask, type QuickReading } from './reading.ts';
import { covers, has, vocabulary } from './vocabulary.ts';

const BASE = vocabulary('base grunddruck');
const BOOST = vocabulary('boost ladedruck');
const RAIL = vocabulary('rail fuel pressure regulator total with and plus line');
const FUEL = vocabulary('fuel regulator');
const OIL = vocabulary('oil öldruck huile aceite öl');
const ENOUGH = vocabulary('pressure at ok okay good enough fine low hot right idle druck normal rpm is');

/** Rail pressure behind a regulator that follows the boost, or an oil pressure with its speed. */
export function readPressureLine(line: Line): QuickReading | undefined {
  return rail(line) ?? oil(line);
}

function rail(said: Line): QuickReading | undefined {
  const line = withPieces(said, said.pieces.flatMap(unglued));
  if (line.amounts.length !== 2 || !covers(line, BASE, BOOST, RAIL)) return undefined;
  const found = labelled(line, { base: BASE, boost: BOOST });
  const boost = found?.get('boost');
  const base = found?.get('base') ?? added(line, boost);
  if (base === undefined || boost === undefined || base === boost) return undefined;
  const [baseKPa, boostKPa] = [withUnit(base, 'pressure')?.value, withUnit(boost, 'pressure')?.value];
  if (baseKPa === undefined || boostKPa === undefined) return undefined;
  return answer(
    'pressure',
    'rail-pressure',
    { baseKPa, boostKPa },
    { base: saidOf(base), boost: saidOf(boost) },
  );
}

/** `3 bar fuel pressure + 1 bar boost`: what the boost is added to. */
function added(line: Line, boost: AmountPiece | undefined): AmountPiece | undefined {
  const [first, second] = line.amounts;
  if (boost === undefined || has(line, BASE) || !has(line, FUEL)) return undefined;
  const summed = second?.after === '+' || ['plus', 'rail'].some((word) => line.words.includes(word));
  if (!summed) return undefined;
  return first === boost ? second : first;
}

/** `1.1 bar boost` has the word in its unit. */
function unglued(piece: Piece): readonly Piece[] {
  const [, unit, word] =
    piece.is === 'amount' ? (/^(.+?)[ -](boost|ladedruck)$/iu.exec(piece.unit) ?? []) : [];
  if (piece.is !== 'amount' || unit === undefined || word === undefined) return [piece];
  return [
    { ...piece, unit },
    { is: 'word', text: word.toLowerCase() },
  ];
}

function oil(line: Line): QuickReading | undefined {
  if (!has(line, OIL) || !covers(line, OIL, ENOUGH)) return undefined;
  const pressure = line.amounts.find((each) => withUnit(each, 'pressure') !== undefined);
  const warm = line.amounts.find((each) => withUnit(each, 'temperature') !== undefined);
  const [other, ...more] = line.amounts.filter((each) => each !== pressure && each !== warm);
  const pressureKPa = pressure && withUnit(pressure, 'pressure')?.value;
  if (pressure === undefined || pressureKPa === undefined || more.length > 0) return undefined;
  if (other === undefined)
    return line.asks
      ? ask('pressure', 'At which speed was it read?', [
          { label: 'Pressure and speed', text: `oil ${saidOf(pressure)} at … rpm ok?`, open: true },
        ])
      : undefined;
  const rpm = other.unit === '' ? other.value : (withUnit(other, 'speed')?.value ?? Number.NaN);
  if (!(rpm >= 400 && rpm <= 20_000)) return undefined;
  const temperatureC = warm && withUnit(warm, 'temperature')?.value;
  return answer(
    'pressure',
    'oil-pressure',
    { pressureKPa, rpm, ...(temperatureC === undefined ? {} : { temperatureC }) },
    {
      pressure: saidOf(pressure),
      speed: `${rpm} rpm`,
      ...(warm === undefined ? {} : { temp: saidOf(warm) }),
    },
  );
}
