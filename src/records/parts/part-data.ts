import type { JsonObject } from '../../core/json.ts';
import type { Coming } from './part.ts';
import type { KnownStanding } from './standings.ts';

/** A part and where it is, as scripts get it. */
export function partData(standing: KnownStanding): JsonObject {
  const { part, whereabouts, inHand, fitted, toSortOut, sentBack, missing, coming, out } = standing;
  return {
    part: part.id,
    name: part.name,
    alsoCalled: part.alsoCalled,
    whereabouts,
    needed: part.needed,
    inHand,
    fitted,
    toSortOut,
    sentBack,
    missing,
    coming: coming.map(comingData),
    out: out.map(comingData),
    origin: part.origin,
    system: part.system,
    singleUse: part.singleUse,
    note: part.note,
    link: part.link,
    guessMinor: part.guess?.minor ?? null,
    guessCurrency: part.guess?.currency ?? null,
  };
}

const comingData = ({ orderId, ...coming }: Coming): JsonObject => ({ order: orderId, ...coming });
