import type { Calculation, SumSheet } from '../../core/calculation.ts';
import { UserError } from '../../core/user-error.ts';
import { requireRange } from '../require-range.ts';

/** What a battery usually reads; the table is handed in. */
export interface BatteryTable {
  /** Rest voltages by charge, rising. */
  readonly rest: readonly { readonly chargeRatio: number; readonly voltageV: number }[];
  readonly limits: {
    readonly restMostV: number;
    readonly crankingLeastV: number;
    readonly crankingGoodV: number;
    readonly chargingDeadV: number;
    readonly chargingLeastV: number;
    readonly chargingMostV: number;
    readonly chargingStopV: number;
  };
}

/** Readings at the battery's posts, any of them. */
export interface BatteryReadings {
  /** Everything off for some hours. */
  readonly restV?: number;
  /** While the starter turns the engine. */
  readonly crankingV?: number;
  /** Engine at a fast idle, some load on. */
  readonly chargingV?: number;
}

export type Standing = 'good' | 'doubtful' | 'bad';

export interface Finding {
  readonly reading: 'rest' | 'cranking' | 'charging';
  readonly voltageV: number;
  readonly standing: Standing;
  readonly words: string;
}

export interface BatteryVerdict {
  readonly standing: Standing;
  readonly findings: readonly Finding[];
  /** Charge by the rest voltage, 0 to 1. */
  readonly chargeRatio: number | undefined;
  /** What the readings together point to. */
  readonly pointsTo: string;
}

/**
 * What rest, cranking and charging voltage of a 12 V lead-acid battery say.
 *
 * Charge is read off the rest table by straight lines between its rows; limits are handed in with it.
 * Source: rest table in common use (key BATTABLE); limits common practice, no source (key COMMON). Valid: 12 V, liquid
 * electrolyte, about 25 °C. Not for: lithium; AGM rests 0.1 to 0.2 V higher; a controlled alternator goes its own ways.
 * @throws UserError 'bad-input' without any reading, 'out-of-range' for one no 12 V battery shows.
 */
export function judgeBattery(readings: BatteryReadings, table: BatteryTable): Calculation<BatteryVerdict> {
  const { restV, crankingV, chargingV } = readings;
  const findings = [
    ...(restV === undefined ? [] : [restFinding(restV, table)]),
    ...(crankingV === undefined ? [] : [crankingFinding(crankingV, table)]),
    ...(chargingV === undefined ? [] : [chargingFinding(chargingV, table)]),
  ];
  if (findings.length === 0) {
    throw new UserError(
      'bad-input',
      'Give at least one of rest, cranking and charging voltage, e.g. rest:12.4',
    );
  }
  return {
    value: {
      standing: worst(findings),
      findings,
      chargeRatio: restV === undefined ? undefined : chargeOf(restV, table),
      pointsTo: pointsTo(findings),
    },
    assumptions: [
      '12 V lead-acid with liquid electrolyte at about 25 °C, measured at its posts; AGM rests 0.1 to 0.2 V higher',
      'limits for cranking and charging are common practice, no source; the maker’s figures outrank them',
    ],
    sources: ['BATTABLE', 'COMMON'],
    caveats: [
      'Batteries give off gas that explodes and can drive hundreds of amperes: no flame, no rings, eyes covered.',
    ],
  };
}

export const judgeBatterySheet: SumSheet = {
  title: 'Battery and alternator readings',
  formula: 'charge by straight lines between the rows of the rest table; limits for cranking and charging',
  symbols: {
    rest: 'voltage at the posts, everything off for hours',
    cranking: 'voltage while the starter turns the engine',
    charging: 'voltage with the engine at a fast idle',
  },
  sources: ['BATTABLE', 'COMMON'],
  range: '12 V lead-acid, liquid electrolyte, about 25 °C',
};

function chargeOf(restV: number, { rest }: BatteryTable): number {
  const above = rest.findIndex((row) => row.voltageV >= restV);
  if (above === -1) return 1;
  const [low, high] = [rest[above - 1], rest[above]];
  if (low === undefined || high === undefined) return 0;
  const share = (restV - low.voltageV) / (high.voltageV - low.voltageV);
  return low.chargeRatio + share * (high.chargeRatio - low.chargeRatio);
}

function restFinding(voltageV: number, table: BatteryTable): Finding {
  requireRange({ what: 'The rest voltage', value: voltageV, min: 0, max: 15, unit: 'V' });
  const of = (standing: Standing, words: string): Finding => ({ reading: 'rest', voltageV, standing, words });
  const charge = chargeOf(voltageV, table);
  const percent = `${Math.round(charge * 100)} %`;
  if (voltageV > table.limits.restMostV) {
    return of('doubtful', 'not at rest yet: read again after some hours');
  }
  if (charge >= 0.75) return of('good', `about ${percent} charged`);
  if (charge >= 0.5) return of('doubtful', `about ${percent} charged: charge it before it is judged`);
  if (charge > 0) return of('bad', `about ${percent} charged: charge it at once, it sulphates as it stands`);
  return of('bad', voltageV < 10.5 ? 'flat, a cell may be shorted' : 'flat: charge it, then load-test it');
}

function crankingFinding(voltageV: number, { limits }: BatteryTable): Finding {
  requireRange({ what: 'The cranking voltage', value: voltageV, min: 0, max: 14, unit: 'V' });
  const of = (standing: Standing, words: string): Finding => ({
    reading: 'cranking',
    voltageV,
    standing,
    words,
  });
  if (voltageV >= limits.crankingGoodV) return of('good', 'holds up under the starter');
  if (voltageV >= limits.crankingLeastV) {
    return of('doubtful', `above the usual least of ${limits.crankingLeastV} V, little to spare in the cold`);
  }
  return of('bad', `below the usual least of ${limits.crankingLeastV} V`);
}

function chargingFinding(voltageV: number, { limits }: BatteryTable): Finding {
  requireRange({ what: 'The charging voltage', value: voltageV, min: 8, max: 20, unit: 'V' });
  const of = (standing: Standing, words: string): Finding => ({
    reading: 'charging',
    voltageV,
    standing,
    words,
  });
  const usual = `${limits.chargingLeastV} to ${limits.chargingMostV} V`;
  if (voltageV > limits.chargingStopV) {
    return of('bad', 'overcharging: stop the engine before the battery boils dry');
  }
  if (voltageV > limits.chargingMostV)
    return of('doubtful', `above the usual ${usual}; normal only in the cold`);
  if (voltageV >= limits.chargingLeastV) return of('good', `within the usual ${usual}`);
  if (voltageV >= limits.chargingDeadV)
    return of('doubtful', `below the usual ${usual}: belt, load, or a control of its own`);
  return of('bad', 'not charging');
}

function worst(findings: readonly Finding[]): Standing {
  if (findings.some(({ standing }) => standing === 'bad')) return 'bad';
  return findings.some(({ standing }) => standing === 'doubtful') ? 'doubtful' : 'good';
}

/** The likeliest cause, cheapest decisive test first. */
function pointsTo(findings: readonly Finding[]): string {
  const at = (name: Finding['reading']) => findings.find(({ reading }) => reading === name)?.standing;
  const [rest, cranking, charging] = [at('rest'), at('cranking'), at('charging')];
  const chargingV = findings.find(({ reading }) => reading === 'charging')?.voltageV ?? 0;
  if (charging === 'bad' && chargingV > 14)
    return 'Regulator or its sensing wire. Do not run the engine until it is found.';
  if (charging === 'bad') {
    return 'Belt, warning lamp and excitation wire, then the alternator: measure at its own stud, engine running.';
  }
  if (cranking === 'bad' && rest === 'good') {
    return 'A worn battery or a starter drawing too much: load-test the battery, then measure the current.';
  }
  if (cranking === 'bad') return 'Charge the battery fully first, then crank and read again.';
  if (rest === 'bad' && charging === 'good') {
    return 'Something drains it at rest, or it stood too long: charge it and measure the current with everything off.';
  }
  if (rest === 'bad') return 'Charge it fully, let it rest, and read again before anything is replaced.';
  if (worst(findings) === 'doubtful') return 'Read again after a full charge and some hours of rest.';
  return findings.length === 3 ? 'Nothing to do.' : 'Nothing wrong in what was measured.';
}
