import type { SeededRandom } from './seeded-random.ts';

/** Wavelengths in air, nm. */
export type EmissionInstrument = {
  readonly laserNm: number;
  readonly temperatureK: number;
  /** Full width at half maximum. */
  readonly resolutionNm: number;
  readonly fromNm: number;
  readonly toNm: number;
  readonly points: number;
  /** Counts at the brightest point over the dark level. */
  readonly fullCounts: number;
  readonly darkCounts: number;
  readonly readNoiseCounts: number;
  /** Cosmic spikes to expect in the curve. */
  readonly spikes: number;
  /** Highest value the detector gives. */
  readonly ceiling: number;
};

export const EMISSION_DEFAULTS: EmissionInstrument = {
  laserNm: 532, temperatureK: 295, resolutionNm: 0.5, fromNm: 538, toNm: 950, points: 3648, fullCounts: 40000, darkCounts: 300, readNoiseCounts: 6, spikes: 1, ceiling: 65535,
};

/** An instrument with these settings changed. */
export const emissionInstrument = (change: Partial<EmissionInstrument> = {}): EmissionInstrument => ({ ...EMISSION_DEFAULTS, ...change });

/** Positions of a grating instrument: a little wider apart at the long end, ascending. */
export function axisOf(from: number, to: number, points: number): Float64Array {
  return Float64Array.from({ length: points }, (_, i) => {
    const t = i / (points - 1);
    return from + (to - from) * (t + 0.05 * t * (t - 1));
  });
}

/** Counts from relative light: shot noise, read noise, cosmic spikes, whole numbers, ceiling. */
export function addNoise(clean: Float64Array, instrument: EmissionInstrument, r: SeededRandom): Float64Array {
  let most = 0;
  for (const value of clean) most = Math.max(most, value);
  const scale = instrument.fullCounts / most;
  const y = clean.map((value) => {
    const counts = value * scale;
    return instrument.darkCounts + counts + Math.sqrt(Math.max(0, counts) + instrument.readNoiseCounts ** 2) * r.normal();
  });
  for (let k = 0; k < instrument.spikes; k++) {
    const at = r.below(y.length - 2);
    y[at] = y[at]! + r.logBetween(20, 500) * (instrument.readNoiseCounts + 5);
    if (r.uniform() < 0.3) y[at + 1] = y[at + 1]! + 0.5 * y[at]!;
  }
  return y.map((value) => Math.min(instrument.ceiling, Math.round(value)));
}
