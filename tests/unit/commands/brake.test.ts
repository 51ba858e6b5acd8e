import { describe, it } from 'vitest';
import { expectSum } from '../../support/sum.ts';

describe('/brake', () => {
  it.each([
    { line: '/brake grade:"DOT 3"', result: 'DOT 3 boils from 205 °C (401 °F) new, 140 °C (284 °F) wet' },
    { line: '/brake grade:"DOT 4" boiling:"235 °C"', result: 'DOT 4 boiling at 235 °C (455 °F): as new' },
    { line: '/brake grade:"DOT 4" boiling:"170 °C"', result: 'DOT 4 boiling at 170 °C (338 °F): ageing' },
    {
      line: '/brake grade:"DOT 4" boiling:"300 °F"',
      result: 'DOT 4 boiling at 300 °F (149 °C): change it now',
    },
  ])('answers $line', expectSum);
});
