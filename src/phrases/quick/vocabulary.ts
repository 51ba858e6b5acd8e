import type { Line } from './line.ts';

const words = (text: string): ReadonlySet<string> => new Set(text.split(/\s+/u));

/** Words that change nothing in whatever question. */
export const PADDING = words(
  `what whats what's which wich how much many for of the a an at with on my please give me tell show question quick work out
  calculate calc convert get whats welche welcher welches wie wieviel viel viele für bei mit der die das ein eine quel quelle
  quels combien de du la le les pour avec un une cuantos cuántos cuanto cuánto cual cuál que qué es el los para con y und et`,
);

/** Words that make a statement unless the line asks. */
const OF_STATEMENTS = words(
  "is are it its it's i im i'm do does has have got ist sind son est sont be should if in to on into",
);

/** Whether every word of a line is accounted for: one that is not makes it talk. */
export function covers(line: Line, ...known: readonly ReadonlySet<string>[]): boolean {
  return line.words.every(
    (word) =>
      known.some((set) => set.has(word)) || PADDING.has(word) || (line.asks && OF_STATEMENTS.has(word)),
  );
}

export const has = ({ words: all }: Line, set: ReadonlySet<string>): boolean =>
  all.some((word) => set.has(word));

export const vocabulary = words;

/** Parts of a car that are named beside a thread, a bolt or a hose. */
export const PARTS = words(
  `oil coolant water fuel air temp temperature pressure sender sensor switch sensors plug plugs drain sump bolt bolts stud
  studs screw nut nuts head heads main mains rod rods cam crank flywheel clutch turbo manifold exhaust inlet intake banjo
  union fitting fittings adapter adaptor port ports pump filter cooler rail regulator injector block pan gearbox diff axle
  wheel wheels hub caliper brake brakes bleed bleeder nipple line lines pipe hose thermostat housing cover pulley damper
  feed return supply boss outlet inlet breather catch header radiator heater throttle body carb master slave cylinder
  tensioner idler bearing carrier engine charge intercooler wastegate actuator knock lambda o2 spark glow oxygen wideband egt map tank cap valve rocker mount bracket starter alternator hole thread
  threads size gewinde filetage rosca measured measures caliper callipers steel stainless alloy female male fine coarse
  schraube schrauben vis tornillo tornillos bolzen mutter écrou tuerca bouchon tapón schraub stopfen ölablass`,
);
