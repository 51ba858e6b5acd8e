/** What stands behind an expected value, as it is shown beside it; the keys are those of docs/sources.md. */
const WORDS: Readonly<Record<string, string>> = {
  COMMON: 'common practice, no source',
  BATTABLE: 'published battery tables',
  DEFINITION: 'by definition',
  ISO2533: 'ISO 2533',
  TMF303: 'TM 10-3930-671-24, F-303',
  TM5VOLT: 'TM 5-3820-256-24-4',
  OD1001: 'Army Ordnance course OD1001',
  WMCOMP75: 'a maker’s workshop information',
  WMCOMP70: 'another maker’s workshop information',
  WMVAC: 'a maker’s workshop information',
  WMINJ: 'a maker’s workshop information',
  INJOHM: 'injector suppliers’ notes',
  WMCRANK: 'a maker’s workshop information',
  WMFUEL5: 'a maker’s workshop information',
  WMPUMPV: 'a maker’s workshop information',
  WMCOOL: 'a maker’s workshop information',
  COMBLEAK: 'automotive course text',
  RIPPLE: 'test-gear makers’ notes',
};

/** Sources in words, each once: "common practice, no source". */
export function saySources(keys: readonly string[]): string {
  return [...new Set(keys.map((key) => WORDS[key] ?? key))].join('; ');
}

/** Keys that have words; a test holds the guide to them. */
export const sourcesWithWords: ReadonlySet<string> = new Set(Object.keys(WORDS));
