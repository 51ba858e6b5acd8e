import type { Rows } from './drive.ts';
import { type Place, Sustained } from './sustained.ts';
import type { TargetAt } from './target.ts';

export type DangerKind = 'knock' | 'lean' | 'oil-pressure' | 'fuel-pressure' | 'duty';

/** Something in a drive that can cost the engine, and so comes before any correction. */
export interface Danger {
  readonly kind: DangerKind;
  /** What it was at its worst: λ, kPa, a share, or how often. */
  readonly value: number;
  /** What it ought to have been, in the same. */
  readonly expected: number;
  readonly times: number;
  readonly seconds: number;
  readonly place: Place;
}

/* All common practice, no source; the maker's figures go first. */
const BOOST_KPA = 108;
const LEAN = {
  over: 0.05,
  withoutTarget: 0.95,
  lastsS: 0.5,
  sensorMost: 1.5,
  forgivesPerS: 0.15,
  film: { share: 0.25, lastsS: 0.6 },
} as const;
const MOST_DUTY = { ratio: 0.85, lastsS: 0.3 } as const;
const PRESSURE_FALLS = { fuelRatio: 0.1, oilRatio: 0.35, lastsS: 0.3 } as const;
/** Oil pressure a warm engine should have at least: 10 psi for every 1000 rpm. */
const OIL_KPA_PER_RPM = 0.069;
const OIL_FROM_RPM = 1500;
const WARM_C = 60;

/** One band of load or speed: how much there usually is, and the least that lasted. */
interface Band {
  sum: number;
  count: number;
  /** The first readings. */
  earlySum: number;
  earlyCount: number;
  /** Mean of the last moments. */
  running: number;
  least: number;
  leastAt: Place;
}

/** Watches the rows of a log as they come; what it keeps does not grow with them. */
export class DangerWatch {
  readonly #targetAt: TargetAt;
  readonly #lean = new Sustained(LEAN.lastsS);
  readonly #duty = new Sustained(MOST_DUTY.lastsS);
  readonly #oil = new Map<number, Band>();
  readonly #fuel = new Map<number, Band>();
  #knock = 0;
  #knockFell = 0;
  #knockRose = 0;
  #knockRows = 0;
  #knockOn = 0;
  #knockAt: Place | undefined;
  #knockMost = 0;
  #lastS = Number.NaN;
  #cutUntilS = Number.NEGATIVE_INFINITY;
  /** λ wanted, but following a richer one slowly: the gas is still on its way, and the walls take their share. */
  #wanted = Number.NaN;
  /** How the load has risen of late, and what it was. */
  #risen = 0;
  #loadKPa = Number.NaN;

  constructor(targetAt: TargetAt) {
    this.#targetAt = targetAt;
  }

  add({ count, columns }: Rows): void {
    const { timeS, speedRpm, loadKPa } = columns;
    if (timeS === undefined || speedRpm === undefined) return;
    for (let row = 0; row < count; row++) {
      const at = (values: Float64Array | undefined): number => values?.[row] ?? Number.NaN;
      const place = { timeS: at(timeS), speedRpm: at(speedRpm), loadKPa: at(loadKPa) };
      const stepS = Math.min(1, Math.max(0, place.timeS - this.#lastS || 0));
      if (at(columns.fuelCut) > 0.5) this.#cutUntilS = place.timeS + 1;
      this.#seeKnock(at(columns.knock), place);
      this.#seeLean(at(columns.lambda), at(columns.targetLambda), at(columns.sensorFault), place, stepS);
      const duty = Number.isNaN(at(columns.dutyRatio))
        ? (at(columns.pulseMs) * place.speedRpm) / 120_000
        : at(columns.dutyRatio);
      this.#duty.see(duty > MOST_DUTY.ratio ? duty : undefined, place);
      const warm = !((columns.coolantC === undefined ? WARM_C : at(columns.coolantC)) < WARM_C);
      const oil = at(columns.oilKPa);
      if (warm && place.speedRpm > 600 && !Number.isNaN(oil)) {
        seeBand(this.#oil, Math.round(place.speedRpm / 500), oil, stepS, place);
      }
      const fuel = at(columns.fuelKPa);
      if (place.speedRpm > 400 && !Number.isNaN(fuel) && !Number.isNaN(place.loadKPa)) {
        seeBand(this.#fuel, Math.round(place.loadKPa / 10), fuel, stepS, place);
      }
      this.#lastS = place.timeS;
    }
  }

  /** What was seen, the worst kind first. */
  finish(): readonly Danger[] {
    return [
      this.#knocking(),
      this.#leaning(),
      this.#oilFalling(),
      this.#fuelFalling(),
      this.#overDuty(),
    ].flat();
  }

  #seeKnock(value: number, place: Place): void {
    if (Number.isNaN(value)) return;
    this.#knockRows++;
    if (value > 0) this.#knockOn++;
    if (this.#knockRows > 1 && place.timeS - this.#lastS < 30) {
      if (value > this.#knock + 1e-9) {
        this.#knockRose++;
        if (value - this.#knock >= this.#knockMost || this.#knockAt === undefined) {
          this.#knockMost = value - this.#knock;
          this.#knockAt = place;
        }
      } else if (value < this.#knock - 1e-9) this.#knockFell++;
    } else if (value > 0 && this.#knockRows === 1) this.#knockAt = place;
    this.#knock = value;
  }

  #seeLean(lambda: number, logged: number, fault: number, place: Place, stepS: number): void {
    const trusted = lambda < LEAN.sensorMost && !(fault > 0.5) && place.timeS > this.#cutUntilS;
    const target = this.#targetAt(place.loadKPa, place.speedRpm, logged);
    const followed = this.#wanted - LEAN.forgivesPerS * stepS;
    this.#wanted = Number.isNaN(target) || !(followed > target) ? target : followed;
    // a throttle thrown open reads lean for a moment on any engine
    const rise = Math.log(place.loadKPa / this.#loadKPa);
    this.#risen = this.#risen * Math.exp(-stepS / LEAN.film.lastsS) + (Number.isFinite(rise) ? rise : 0);
    this.#loadKPa = place.loadKPa;
    const forgiven = LEAN.over + LEAN.film.share * Math.max(0, this.#risen);
    const wanted = Number.isNaN(target) ? LEAN.withoutTarget - LEAN.over : this.#wanted;
    const lean = trusted && place.loadKPa > BOOST_KPA && lambda > wanted + forgiven;
    this.#lean.see(lean ? lambda : undefined, { ...place, wanted: Number.isNaN(target) ? wanted : target });
  }

  /** A counter that only rises, or a signal that is nothing nearly always; a level that is always there is not judged. */
  #knocking(): Danger[] {
    const seldom = this.#knockOn < 0.25 * this.#knockRows;
    const counts = this.#knockFell <= 0.1 * this.#knockRose;
    if (this.#knockRose === 0 || this.#knockAt === undefined || !(seldom || counts)) return [];
    const place = this.#knockAt;
    return [
      { kind: 'knock', value: this.#knockRose, expected: 0, times: this.#knockRose, seconds: 0, place },
    ];
  }

  #leaning(): Danger[] {
    const { worst, times, seconds } = this.#lean;
    if (worst === undefined) return [];
    const { place, value } = worst;
    return [{ kind: 'lean', value, expected: place.wanted ?? Number.NaN, times, seconds, place }];
  }

  #overDuty(): Danger[] {
    const { worst, times, seconds } = this.#duty;
    if (worst === undefined) return [];
    return [
      { kind: 'duty', value: worst.value, expected: MOST_DUTY.ratio, times, seconds, place: worst.place },
    ];
  }

  #oilFalling(): Danger[] {
    const found = [...this.#oil].flatMap(([band, seen]): Danger[] => {
      const rpm = band * 500;
      const usual = Math.max(
        seen.sum / seen.count,
        seen.earlyCount > 20 ? seen.earlySum / seen.earlyCount : 0,
      );
      if (seen.count < 20 || rpm < OIL_FROM_RPM) return [];
      const expected = Math.max(OIL_KPA_PER_RPM * Math.min(rpm, 6000), (1 - PRESSURE_FALLS.oilRatio) * usual);
      if (seen.least >= expected) return [];
      return [
        {
          kind: 'oil-pressure',
          value: seen.least,
          expected: usual,
          times: 1,
          seconds: 0,
          place: seen.leastAt,
        },
      ];
    });
    return worstOf(found);
  }

  /** A regulator that follows the manifold holds the difference, another the pressure itself: light load tells which. */
  #fuelFalling(): Danger[] {
    const light = [...this.#fuel].filter(([band, { count }]) => band <= 9 && count > 20);
    const points = light.map(([band, { sum, count }]) => ({ load: band * 10, mean: sum / count }));
    if (points.length === 0) return [];
    const load = points.reduce((all, point) => all + point.load, 0) / points.length;
    const mean = points.reduce((all, point) => all + point.mean, 0) / points.length;
    const spread = points.reduce((all, point) => all + (point.load - load) ** 2, 0);
    const slope =
      spread === 0
        ? 0
        : points.reduce((all, point) => all + (point.load - load) * (point.mean - mean), 0) / spread;
    const follows = slope > 0.5 ? 1 : 0;
    const found = [...this.#fuel].flatMap(([band, seen]): Danger[] => {
      const expected = mean + follows * (band * 10 - load);
      if (
        band * 10 < BOOST_KPA - 10 ||
        seen.count < 5 ||
        seen.least >= expected * (1 - PRESSURE_FALLS.fuelRatio)
      )
        return [];
      return [
        { kind: 'fuel-pressure', value: seen.least, expected, times: 1, seconds: 0, place: seen.leastAt },
      ];
    });
    return worstOf(found);
  }
}

function worstOf(found: readonly Danger[]): Danger[] {
  const [worst] = [...found].sort((a, b) => a.value / a.expected - b.value / b.expected);
  return worst === undefined ? [] : [{ ...worst, times: found.length }];
}

function seeBand(bands: Map<number, Band>, at: number, value: number, stepS: number, place: Place): void {
  const band = bands.get(at);
  if (band === undefined) {
    bands.set(at, {
      sum: value,
      count: 1,
      earlySum: value,
      earlyCount: 1,
      running: value,
      least: Number.POSITIVE_INFINITY,
      leastAt: place,
    });
    return;
  }
  band.sum += value;
  band.count++;
  if (band.earlyCount < 400) {
    band.earlySum += value;
    band.earlyCount++;
  }
  const share = 1 - Math.exp(-Math.max(stepS, 0.01) / PRESSURE_FALLS.lastsS);
  band.running += (value - band.running) * share;
  if (band.count > 5 && band.running < band.least) {
    band.least = band.running;
    band.leastAt = place;
  }
}
