import type { Noise } from './noise.ts';

/** What the driver's foot and the road ask for at a moment: where throttle and speed of turning are heading. */
export interface Wish {
  readonly throttleRatio: number;
  readonly speedRpm: number;
  /** How quickly the speed follows, s. */
  readonly followS: number;
}

/** A drive as a function of time, called once for each step, in order. */
export type Driver = (stepS: number) => Wish;

export type DriveKind = 'holds' | 'road' | 'wander' | 'pulls' | 'ramps' | 'idle';

export const driveKinds: readonly DriveKind[] = ['holds', 'road', 'wander', 'pulls', 'ramps', 'idle'];

const IDLE: Wish = { throttleRatio: 0.02, speedRpm: 900, followS: 0.6 };

export function driverOf(kind: DriveKind, noise: Noise, topRpm: number): Driver {
  switch (kind) {
    case 'idle':
      return fromPieces(() => ({
        seconds: noise.between(5, 20),
        wish: { ...IDLE, speedRpm: noise.between(850, 1050), throttleRatio: noise.between(0.015, 0.04) },
      }));
    case 'holds':
      return fromPieces(() => ({
        seconds: noise.between(6, 14),
        wish: {
          throttleRatio: noise.between(0.05, 0.9),
          speedRpm: noise.between(1400, topRpm * 0.85),
          followS: noise.between(0.5, 1.5),
        },
      }));
    case 'pulls':
      return fromPieces(pulls(noise, topRpm));
    case 'road':
      return fromPieces(() => {
        const kind = noise.unit();
        if (kind < 0.12) return { seconds: noise.between(6, 18), wish: IDLE };
        if (kind < 0.22) {
          return { seconds: noise.between(1.5, 4), wish: { throttleRatio: 0, speedRpm: 1200, followS: 2.5 } };
        }
        if (kind < 0.35) {
          return {
            seconds: noise.between(2, 5),
            wish: { throttleRatio: noise.between(0.6, 1), speedRpm: topRpm * 0.95, followS: 5 },
          };
        }
        return {
          seconds: noise.between(4, 25),
          wish: {
            throttleRatio: noise.between(0.06, 0.4),
            speedRpm: noise.between(1500, topRpm * 0.6),
            followS: noise.between(1.5, 4),
          },
        };
      });
    case 'wander':
      return wander(noise, topRpm);
    case 'ramps':
      return ramps(noise, topRpm);
  }
}

interface Piece {
  readonly seconds: number;
  readonly wish: Wish;
}

function fromPieces(next: () => Piece): Driver {
  let piece = next();
  let leftS = piece.seconds;
  return (stepS) => {
    leftS -= stepS;
    if (leftS <= 0) {
      piece = next();
      leftS = piece.seconds;
    }
    return piece.wish;
  };
}

function pulls(noise: Noise, topRpm: number): () => Piece {
  let pulling = false;
  return () => {
    pulling = !pulling;
    return pulling
      ? {
          seconds: noise.between(8, 14),
          wish: { throttleRatio: noise.between(0.5, 1), speedRpm: topRpm, followS: 7 },
        }
      : {
          seconds: noise.between(5, 10),
          wish: {
            throttleRatio: noise.between(0.08, 0.25),
            speedRpm: noise.between(1500, 2600),
            followS: 1.5,
          },
        };
  };
}

/** Slow, endless wandering of foot and speed. */
function wander(noise: Noise, topRpm: number): Driver {
  let [throttleRatio, speedRpm] = [0.25, 2500];
  let [towards, rpm] = [0.25, 2500];
  return (stepS) => {
    if (noise.unit() < stepS / 6) towards = noise.between(0.05, 0.8);
    if (noise.unit() < stepS / 8) rpm = noise.between(1200, topRpm * 0.85);
    throttleRatio += ((towards - throttleRatio) * stepS) / 2.5;
    speedRpm += ((rpm - speedRpm) * stepS) / 3;
    return { throttleRatio, speedRpm, followS: 0.4 };
  };
}

/** Slow sweeps of the throttle at speeds that hardly change, as on a hill held with the brake. */
function ramps(noise: Noise, topRpm: number): Driver {
  let throttleRatio = 0.1;
  let speedRpm = 2000;
  let rate = 0.03;
  return (stepS) => {
    throttleRatio += rate * stepS;
    if (throttleRatio > 0.85 || throttleRatio < 0.05) {
      rate = -rate;
      throttleRatio = Math.min(0.85, Math.max(0.05, throttleRatio));
      speedRpm = noise.between(1400, topRpm * 0.8);
    }
    return { throttleRatio, speedRpm, followS: 1.5 };
  };
}
