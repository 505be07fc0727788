import type { Component } from '../../infrared/component-shapes.ts';
import { COMPONENT_SHAPES, PPM_PER_CM1 } from '../../infrared/component-shapes.ts';
import { latticeAbsorption } from '../../infrared/two-phonon.ts';
import type { Spectrum } from '../spectrum.ts';
import { gaussian, lorentzian } from './line-shapes.ts';
import { seededRandom } from './seeded-random.ts';
import type { SimulatedStone } from './stone.ts';

export type InfraredInstrument = {
  readonly fromCm1: number;
  readonly toCm1: number;
  readonly stepCm1: number;
  /** Standard deviation of the absorbance. */
  readonly noise: number;
  /** Absorbance at which the detector sees no more light. */
  readonly ceiling: number;
  /** Height of carbon dioxide and water of the air, absorbance. */
  readonly air: number;
};
export const INFRARED_DEFAULTS: InfraredInstrument = { fromCm1: 650, toCm1: 4000, stepCm1: 1, noise: 0.001, ceiling: 3, air: 0.01 };
export const infraredInstrument = (change: Partial<InfraredInstrument> = {}): InfraredInstrument => ({ ...INFRARED_DEFAULTS, ...change });

/** Area of the platelet peak of a "regular" stone per B absorption at 1282 cm-1, cm-1 (Woods 1986, from memory). */
const PLATELET_PER_B = 64;
/** Uncompensated boron, ppm, per cm-2 of the 2802 line (from memory). */
const BORON_PPM_PER_AREA = 0.00105;
const BORON_FWHM = 68;

/** Absorption coefficient of the stone, cm-1 base e. */
export function infraredAbsorptionOf(x: Float64Array, stone: SimulatedStone): Float64Array {
  const amounts: Readonly<Record<Component, number>> = {
    A: stone.nitrogenPpm.A / PPM_PER_CM1.A.factor, B: stone.nitrogenPpm.B / PPM_PER_CM1.B.factor, C: stone.nitrogenPpm.C / PPM_PER_CM1.C.factor, X: stone.nitrogenPpm.Nplus / PPM_PER_CM1.X.factor,
    D: 0.35 * (stone.nitrogenPpm.B / PPM_PER_CM1.B.factor),
  };
  const plateletArea = 0.6 * PLATELET_PER_B * amounts.B;
  const plateletHeight = plateletArea / (12 * 1.3);
  const boronHeight = stone.boronPpm / BORON_PPM_PER_AREA / (BORON_FWHM * 1.0645);
  return x.map((wn) => {
    if (!stone.isDiamond) return 25 / (1 + Math.exp((wn - 1900) / 120)) + 3 * gaussian(wn, 3450, 400);
    let alpha = latticeAbsorption(wn);
    for (const component of ['A', 'B', 'C', 'X', 'D'] as const) if (amounts[component] > 0) alpha += amounts[component] * COMPONENT_SHAPES[component](wn);
    if (plateletHeight > 0) alpha += plateletHeight * lorentzian(wn, 1364, wn < 1364 ? 14 : 10) * Math.exp(-(((wn - 1364) / 40) ** 2));
    if (stone.line3107 > 0) alpha += stone.line3107 * (lorentzian(wn, 3107, 4.5) + 0.4 * lorentzian(wn, 1405, 5));
    if (stone.line3123 > 0) alpha += stone.line3123 * lorentzian(wn, 3123, 5);
    if (boronHeight > 0) alpha += boronHeight * (gaussian(wn, 2802, BORON_FWHM) + 0.3 * gaussian(wn, 2458, 60) + (wn > 2500 ? 0.3 * Math.min(1, (wn - 2500) / 1500) : 0)) + stone.boronPpm / 0.035 * gaussian(wn, 1290, 70) * 0.3;
    return alpha;
  });
}

/** An infrared spectrum, descending as instruments write it, in cm-1 and absorbance (base 10). */
export function simulateInfrared(stone: SimulatedStone, instrument: InfraredInstrument, seed: number): Spectrum {
  const r = seededRandom(seed);
  const points = Math.floor((instrument.toCm1 - instrument.fromCm1) / instrument.stepCm1) + 1;
  const x = Float64Array.from({ length: points }, (_, i) => instrument.toCm1 - i * instrument.stepCm1);
  const alpha = infraredAbsorptionOf(x, stone);
  const pathCm = 0.1 * stone.pathMm;
  const offset = r.between(0.1, 0.4);
  const slope = r.between(-0.04, 0.08);
  const air = instrument.air * r.between(-1, 1);
  const y = x.map((wn, i) => {
    const carbonDioxide = gaussian(wn, 2361, 18) + 0.9 * gaussian(wn, 2339, 20) + 0.4 * gaussian(wn, 668, 3);
    const water = wn > 1350 && wn < 1950 ? 0.25 * Math.sin(wn * 0.61) * Math.sin(wn * 0.231) * gaussian(wn, 1640, 350) : 0;
    const clean = (alpha[i]! * pathCm) / Math.LN10 + offset + (slope * (wn - 2000)) / 1000 + air * (carbonDioxide + water);
    // Stray light and noise grow where little light is left.
    const seen = Math.max(10 ** -clean, 10 ** -instrument.ceiling);
    return -Math.log10(seen) + instrument.noise * r.normal() / Math.sqrt(Math.max(0.02, seen / 10 ** -offset));
  });
  return { x, y, xUnit: 'cm-1', yUnit: 'absorbance' };
}
