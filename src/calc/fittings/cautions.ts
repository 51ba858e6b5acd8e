import type { End } from './end.ts';

const LINES =
  'On fuel, oil and coolant lines leak-test before the engine runs. The maker’s figure outranks this; brake and restraint parts are the maker’s own, fitted by somebody qualified.';

const BRAKES =
  'This is the end of a brake pipe: use the maker’s own pipe and fittings, and have the work done by somebody qualified.';

/** What could hurt somebody at these ends; empty for bolts and nuts. */
export function endCaution(ends: readonly End[]): string {
  if (ends.some(({ seat }) => seat === 'double-flare' || seat === 'bubble-flare')) return BRAKES;
  return ends.every(({ seat }) => seat === 'fastener') ? '' : LINES;
}
