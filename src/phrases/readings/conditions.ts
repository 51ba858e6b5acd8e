import type { FieldName } from '../quantity/fields.ts';
import { readQuantity } from '../quantity/read-quantity.ts';
import { aboveAir } from './above-air.ts';
import type { KindSpec } from './kind-spec.ts';
import type { LineConditions } from './line-reading.ts';
import { doubt, faintDoubt, refusal, withAmount } from './outcome.ts';
import type { Roles } from './roles.ts';
import type { LineAmount, Piece } from './take-apart.ts';

/** What holds for every value of the line; places and states are bound by whoever knows the values. */
export type SharedConditions = Omit<LineConditions, 'place' | 'states'>;

/** @throws NotRead when a condition is said twice, means several things, or nobody said what it is of. */
export function sharedConditions(
  roles: Roles,
  pieces: readonly Piece[],
  kind: KindSpec,
  text: string,
): SharedConditions {
  const [stray] = roles.pressure;
  if (stray !== undefined) {
    const said = `${stray.figures} ${stray.unit}`;
    throw faintDoubt(
      `${said} of what? Is it the boost it was taken at?`,
      withAmount(text, stray, `${said} boost`),
    );
  }
  const [bare] = roles.bare;
  if (bare !== undefined) {
    throw doubt(
      `What is ${bare.figures}?`,
      unitsFor(bare.figures).map((unit) => withAmount(text, bare, `${bare.figures} ${unit}`)),
    );
  }
  const [foreign] = roles.foreign;
  if (foreign !== undefined)
    throw refusal(`${foreign.figures} ${foreign.unit} is no ${kind.name}, and nothing it is taken at.`);
  const speedRpm = one(roles.speed, 'speed', 'engine speed', text);
  const temperatureC = one(roles.temperature, 'temperature', 'temperature', text);
  const boostKPa = one(roles.boost, 'pressure', 'boost', text);
  const fuels = pieces.flatMap((piece) => (piece.type === 'fuel' ? [piece.fuel] : []));
  const [fuel, ...more] = new Set(fuels);
  if (more.length > 0) throw refusal(`Two fuels are named: ${fuels.join(' and ')}. One, please.`);
  return {
    ...(speedRpm === undefined ? {} : { speedRpm }),
    ...(temperatureC === undefined ? {} : { temperatureC }),
    ...(boostKPa === undefined ? {} : { boostKPa }),
    ...(fuel === undefined ? {} : { fuel }),
  };
}

/** A figure alone that can be a speed, a temperature, or either. */
function unitsFor(figures: string): readonly string[] {
  const figure = Number(figures.replace(',', '.'));
  if (figure > HOTTEST) return ['rpm'];
  return figure < SLOWEST ? ['°C', '°F'] : ['rpm', '°C', '°F'];
}

/** No oil is hotter, in either scale, and no engine turns slower. */
const HOTTEST = 400;
const SLOWEST = 150;

function one(
  amounts: readonly LineAmount[],
  field: FieldName,
  called: string,
  text: string,
): number | undefined {
  const [first, second] = amounts;
  if (first === undefined) return undefined;
  if (second !== undefined) {
    throw doubt(
      `Two figures of ${called}: ${first.figures} and ${second.figures}. Which is it?`,
      [second, first].map((away) => withAmount(text, away, '')),
    );
  }
  const unit = first.unit === '' ? 'rpm' : first.unit;
  const read = readQuantity(`${first.figures} ${unit}`, field);
  if (read.verdict === 'read' && read.reference === 'absolute')
    throw aboveAir(read, (figure) => withAmount(text, first, figure));
  if (read.verdict === 'read' && !(field === 'speed' && read.unit !== 'rpm'))
    return Number(read.value.toPrecision(12));
  if (read.verdict === 'ask')
    throw doubt(
      read.question,
      read.options.map(({ typed }) => withAmount(text, first, typed)),
    );
  throw refusal(`"${first.figures} ${first.unit}" is no ${called} of an engine.`);
}
