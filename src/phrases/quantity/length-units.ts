/** Millimetres in one of each unit, exact (1 in = 25.4 mm by definition, ISO 80000-3). */
const MM_IN: ReadonlyMap<string, number> = new Map(
  (
    [
      [1, 'mm millimetre millimetres millimeter millimeters milimetro milimetros milímetro milímetros'],
      [10, 'cm centimetre centimetres centimeter centimeters zentimeter'],
      [1000, 'm metre metres meter meters metro metros'],
      [1_000_000, 'km'],
      [0.001, 'µm um micron microns micrometre micrometres micrometer micrometers'],
      [25.4, 'in in. inch inches " zoll pulgada pulgadas pouce pouces'],
      [304.8, "ft foot feet '"],
      [0.0254, 'thou thous'],
      [0.01, 'hundertstel centième centièmes centésima centésimas'],
      [0.1, 'zehntel dixième dixièmes décima décimas'],
    ] as const
  ).flatMap(([mm, names]) => names.split(' ').map((name): [string, number] => [name, mm])),
);

/** Abbreviations one slip away from another are asked about; only words are long enough to be recognised. */
const SHORTEST_RECOGNISED = 5;

/** Millimetres in a unit as typed, or undefined when it is no unit of length. One slip in a word is forgiven. */
export function mmIn(unit: string): number | undefined {
  const exact = MM_IN.get(unit);
  if (exact !== undefined || unit.length < SHORTEST_RECOGNISED) return exact;
  const near = new Set(
    [...MM_IN]
      .filter(([name]) => name.length >= SHORTEST_RECOGNISED && oneSlip(name, unit))
      .map(([, mm]) => mm),
  );
  return near.size === 1 ? [...near][0] : undefined;
}

/** The units that a short abbreviation may have been meant for: `im` is one key from both mm and in. */
export function unitsNear(unit: string): readonly number[] {
  if (unit.length > 3) return [];
  return [
    ...new Set([...MM_IN].filter(([name]) => name.length > 1 && oneSlip(name, unit)).map(([, mm]) => mm)),
  ];
}

/** Whether one letter added, dropped, changed, or two swapped, turns one word into the other. */
export function oneSlip(a: string, b: string): boolean {
  if (a === b || Math.abs(a.length - b.length) > 1) return false;
  let start = 0;
  while (start < a.length && a[start] === b[start]) start += 1;
  let end = 0;
  while (end < Math.min(a.length, b.length) - start && a[a.length - 1 - end] === b[b.length - 1 - end])
    end += 1;
  const [midA, midB] = [a.slice(start, a.length - end), b.slice(start, b.length - end)];
  if (midA.length <= 1 && midB.length <= 1) return true;
  return midA.length === 2 && midB.length === 2 && midA[0] === midB[1] && midA[1] === midB[0];
}
