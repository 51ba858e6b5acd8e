import type { ThreadBand, ThreadPictureData } from '../../src/pictures/thread-data.ts';

/** M22 × 1.5: 6g limits of the major diameter (ISO 965-1). */
export const M22: ThreadBand = {
  name: 'M22 × 1.5',
  side: 'male',
  fromMm: 21.732,
  toMm: 21.968,
  pitchMm: 1.5,
  tpi: undefined,
  tapered: false,
  fits: true,
};

/** 7/8-14 UNF: 2A limits of the major diameter (ASME B1.1). */
export const UNF: ThreadBand = {
  ...M22,
  name: '7/8-14 UNF',
  fromMm: 21.923,
  toMm: 22.184,
  pitchMm: 25.4 / 14,
  tpi: 14,
  fits: false,
};

export const READ: ThreadPictureData = {
  title: 'M22 × 1.5, almost certain',
  diameter: { mm: 21.9, plusMinusMm: 0.05 },
  pitch: { mm: 1.5, plusMinusMm: 0.024 },
  bands: [M22, UNF],
};
