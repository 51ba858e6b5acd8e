import type { KindSpec } from './kind-spec.ts';
import { doubt, refusal, withAmount } from './outcome.ts';
import type { LineAmount, Piece } from './take-apart.ts';
import { placeName } from './words.ts';

/** What a value has to itself: its cylinder, its state. */
export interface Bound {
  readonly place?: string;
  readonly states: readonly string[];
}

const MOST_CYLINDERS = 16;
/** A battery's voltage says nothing unless one of these is said too. */
const BATTERY_STATES: readonly string[] = ['at rest', 'cranking', 'charging'];

/** Gives each value its place and states. @throws NotRead where that can be done in several ways, or not at all. */
export function bind(
  values: readonly LineAmount[],
  pieces: readonly Piece[],
  kind: KindSpec,
  text: string,
  anyState?: true,
): readonly Bound[] {
  return kind.name === 'battery voltage' && anyState !== true
    ? bindBattery(values, pieces, text)
    : bindPlaces(values, pieces, kind, text);
}

function bindPlaces(
  values: readonly LineAmount[],
  pieces: readonly Piece[],
  kind: KindSpec,
  text: string,
): readonly Bound[] {
  const states = [
    ...new Set(pieces.flatMap((piece) => (piece.type === 'state' ? [piece.state] : []))),
  ].toSorted();
  const places = pieces.flatMap((piece) => (piece.type === 'place' ? [piece.place] : []));
  const numbered = places.filter(({ number }) => number !== null);
  const [value, second] = values;
  if (second === undefined) {
    const names = [...new Set(places.map(placeName))];
    if (names.length > 1) throw refusal(`One value and several places: ${names.join(', ')}.`);
    if (names.length === 0 && kind.place === 'cylinder') throw whichCylinder(kind, text);
    return [{ ...(names[0] === undefined ? {} : { place: names[0] }), states }];
  }
  if (kind.place === undefined) {
    throw doubt(
      `Two values of ${kind.name}: which is it?`,
      values.map((keep) =>
        values
          .filter((each) => each !== keep)
          .toReversed()
          .reduce((line, away) => withAmount(line, away, ''), text),
      ),
    );
  }
  if (numbered.length === values.length) {
    const names = numbered.map(placeName);
    if (new Set(names).size < names.length) throw refusal(`A place is named twice: ${names.join(', ')}.`);
    return values.map((_each, index) => ({ place: names[index] ?? '', states }));
  }
  const [plural] = places;
  if (numbered.length > 0 || values.length > MOST_CYLINDERS) {
    throw refusal(
      `${values.length} values and ${numbered.length} places: name the place in front of each value.`,
    );
  }
  const name = plural?.name ?? (kind.place === 'cylinder' ? 'cylinder' : undefined);
  if (name === undefined || value === undefined) {
    throw refusal(
      `${values.length} values: name the place in front of each, as in "main bearing 1 0.05 mm main bearing 2 0.05 mm".`,
    );
  }
  return values.map((_each, index) => ({ place: `${name} ${index + 1}`, states }));
}

/**
 * "1 12.1 2 12.0 3 11.8": numbers in front that count up are cylinders, and no values.
 *
 * @throws NotRead with the line in which they are named as such.
 */
export function refuseCounted(values: readonly LineAmount[], kind: KindSpec, text: string): void {
  const counted = values.filter((_each, index) => index % 2 === 0);
  const inOrder = counted.every(({ figures, unit }, index) => figures === `${index + 1}` && unit === '');
  if (kind.place === undefined || values.length < 4 || values.length % 2 === 1 || !inOrder) return;
  const named = counted
    .toReversed()
    .reduce(
      (line, amount) =>
        withAmount(line, amount, `${kind.place === 'cylinder' ? 'cyl' : '#'} ${amount.figures}`),
      text,
    );
  throw doubt(`Are ${counted.map(({ figures }) => figures).join(', ')} the places?`, [named]);
}

function whichCylinder({ name }: KindSpec, text: string): Error {
  return doubt(
    `Which cylinder is this ${name} of?`,
    [1, 2, 3, 4, 5, 6, 7, 8].map((number) => `${text} cylinder ${number}`),
  );
}

/** "12.4 cranking 10.1": a state stands before its value, or behind each; the first one alone is at rest. */
function bindBattery(
  values: readonly LineAmount[],
  pieces: readonly Piece[],
  text: string,
): readonly Bound[] {
  const said = pieces.flatMap((piece) => (piece.type === 'state' ? [piece.state] : []));
  const which = said.filter((state) => BATTERY_STATES.includes(state));
  const others = said.filter((state) => !BATTERY_STATES.includes(state));
  const [only, second] = values;
  if (second === undefined) {
    if (which.length === 1) return [{ states: said.toSorted() }];
    if (which.length > 1) throw refusal(`One voltage and several states: ${which.join(', ')}.`);
    throw doubt(
      'At rest, cranking or charging?',
      BATTERY_STATES.map((state) => `${text} ${state}`),
    );
  }
  const order = pieces.filter(
    (piece) =>
      values.some((value) => value === piece) ||
      (piece.type === 'state' && BATTERY_STATES.includes(piece.state)),
  );
  const behind = order.at(-1)?.type === 'state';
  const states = values.map((value) => {
    const beside = order[order.indexOf(value) + (behind ? 1 : -1)];
    return beside?.type === 'state' ? beside.state : undefined;
  });
  const named = states.map((state, index) =>
    index === 0 && !behind && !which.includes('at rest')
      ? (state ?? (which.length > 0 ? 'at rest' : undefined))
      : state,
  );
  const distinct = new Set(named);
  if (named.every((state) => state !== undefined) && distinct.size === values.length && only !== undefined) {
    return named.map((state) => ({ states: [...others, state ?? ''].toSorted() }));
  }
  if (which.length > 0 || values.length > BATTERY_STATES.length) {
    throw refusal(
      `${values.length} voltages and ${which.length} states: name one in front of each, as in "rest 12.6 cranking 10.1 charging 14.2".`,
    );
  }
  throw doubt('Which is which?', [
    `battery ${values.map(({ figures, unit }, index) => `${BATTERY_STATES[index]} ${figures} ${unit === '' ? 'V' : unit}`).join(' ')}`,
  ]);
}
