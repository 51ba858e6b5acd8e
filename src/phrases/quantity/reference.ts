import type { PressureReference } from '../../calc/units/pressure-reference.ts';

/** How a pressure was said to be measured; a vacuum is a gauge pressure counted downwards. */
export type Said = PressureReference | 'vacuum';

const SAID: Readonly<Record<Said, string>> = {
  absolute: 'absolute|absolut|absolu|absolue|absoluta|absoluto|assoluta|assoluto|abs|a',
  gauge:
    'gauge|gage|boost|of boost|überdruck|ueberdruck|ladedruck|relative|relativ|relativa|relativo|manometric|manométrica|manométrico|surpression|sobrepresión|above atmospheric|above atmosphere|above ambient|over atmospheric|g',
  vacuum:
    'vacuum|of vacuum|vac|vacuo|vacío|vide|unterdruck|dépression|depression|depresión|below atmospheric|below atmosphere|below ambient|under atmospheric',
};

const BEHIND = (Object.keys(SAID) as readonly Said[]).map((said) => ({
  said,
  // one letter counts only in brackets, or right behind the unit or a space: psig, bar g, bar(a)
  pattern: new RegExp(`^(?<unit>.*?)[ (-]*(?:${SAID[said]})\\)?$`, 'iu'),
}));

/** Words in front of the number: "boost 14 psi". */
const BEFORE: Readonly<Record<string, Said>> = {
  boost: 'gauge',
  ladedruck: 'gauge',
  überdruck: 'gauge',
  gauge: 'gauge',
  vacuum: 'vacuum',
  unterdruck: 'vacuum',
  vac: 'vacuum',
  absolute: 'absolute',
  abs: 'absolute',
};

/** Parts a unit phrase from what it says about the zero: `psig`, `bar absolute`, `inHg vacuum`. */
export function referenceBehind(phrase: string): readonly { readonly unit: string; readonly said: Said }[] {
  return BEHIND.flatMap(({ said, pattern }) => {
    const unit = pattern.exec(phrase)?.groups?.['unit'];
    return unit === undefined ? [] : [{ unit, said }];
  });
}

export function referenceBefore(word: string): Said | undefined {
  return Object.hasOwn(BEFORE, word) ? BEFORE[word] : undefined;
}
