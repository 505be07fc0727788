import { latticeTransmittance } from './lattice-transmittance.ts';
import { opticalCentre } from '../../reference/optical-centres.ts';
import type { Spectrum } from '../spectrum.ts';
import { gaussian } from './line-shapes.ts';
import { addCentre } from './photoluminescence.ts';
import { seededRandom } from './seeded-random.ts';
import type { SimulatedStone } from './stone.ts';

export type AbsorptionInstrument = {
  readonly temperatureK: number;
  readonly resolutionNm: number;
  readonly fromNm: number;
  readonly toNm: number;
  readonly points: number;
  /** Standard deviation of the absorbance's noise at 500 nm. */
  readonly noise: number;
  /** Share of stray light. */
  readonly strayLight: number;
};
export const ABSORPTION_DEFAULTS: AbsorptionInstrument = { temperatureK: 295, resolutionNm: 1, fromNm: 220, toNm: 1000, points: 1561, noise: 0.0006, strayLight: 0.002 };
export const absorptionInstrument = (change: Partial<AbsorptionInstrument> = {}): AbsorptionInstrument => ({ ...ABSORPTION_DEFAULTS, ...change });

/** Companions of N3 and N2 in absorption: position, width in nm, height against the parent. Room temperature, from memory. */
const N3_COMPANIONS: readonly (readonly [number, number, number])[] = [[403, 7, 0.8], [394, 8, 1], [384, 8, 0.7], [376, 9, 0.4]];
const N2_COMPANIONS: readonly (readonly [number, number, number])[] = [[465, 9, 0.3], [452, 12, 0.75], [435, 8, 0.2], [423, 5, 0.35]];
/** Edge of type I absorption: energy, eV, and steepness, eV, of alpha = exp((E - edge)/steepness) per 100 ppm (from memory). */
const TYPE_I_EDGE = { ev: 4.05, steepness: 0.12, perPpm: 0.04 } as const;
/** Absorption of isolated nitrogen at 270 nm, cm-1 base e per ppm: Luo et al., Appl. Phys. Lett. (2022), arXiv 2207.14278. */
const C_PER_PPM = 4.51;

/** Absorption coefficient of the stone, cm-1 base e, on positions in nm. */
export function absorptionOf(x: Float64Array, stone: SimulatedStone, temperatureK: number, resolutionNm: number): Float64Array {
  const alpha = new Float64Array(x.length);
  for (const [id, height] of Object.entries(stone.absorption)) {
    const centre = opticalCentre(id);
    if (!centre || height <= 0 || !centre.modes.includes('absorption')) continue;
    if (id === 'N3' || id === 'N2') {
      for (let i = 0; i < x.length; i++) {
        let sum = gaussian(x[i]!, centre.roomNm, Math.hypot(centre.roomFwhmNm ?? 3, resolutionNm));
        for (const [nm, width, share] of id === 'N3' ? N3_COMPANIONS : N2_COMPANIONS) sum += share * gaussian(x[i]!, nm, width);
        alpha[i] = alpha[i]! + height * sum;
      }
      continue;
    }
    addCentre(x, alpha, centre, height, temperatureK, resolutionNm, 'absorption');
  }
  const { A, B, C } = stone.nitrogenPpm;
  for (let i = 0; i < x.length; i++) {
    const ev = 1239.84 / x[i]!;
    const aggregated = TYPE_I_EDGE.perPpm * (A + 0.5 * B) * Math.min(60, Math.exp((ev - TYPE_I_EDGE.ev) / TYPE_I_EDGE.steepness));
    const single = C_PER_PPM * C * (gaussian(ev, 4.59, 0.8) + 0.12 * Math.exp((ev - 3) / 0.6) * (ev < 4.4 ? 1 : 0.2));
    const fundamental = 40 * Math.exp((ev - 5.47) / 0.03);
    const red = stone.boronPpm > 0 ? 1.2 * stone.boronPpm * (x[i]! / 700) ** 2.5 : 0;
    alpha[i] = alpha[i]! + aggregated + single + Math.min(500, fundamental) + red;
  }
  return alpha;
}

/** An absorption spectrum in nm and absorbance (base 10), with reflection, stray light and noise. Imitations cut off before 300 nm. */
export function simulateAbsorption(stone: SimulatedStone, instrument: AbsorptionInstrument, seed: number): Spectrum {
  const r = seededRandom(seed);
  const { fromNm, toNm, points, strayLight, noise } = instrument;
  const x = Float64Array.from({ length: points }, (_, i) => fromNm + ((toNm - fromNm) * i) / (points - 1));
  const alpha = absorptionOf(x, stone, instrument.temperatureK, instrument.resolutionNm);
  const offset = r.between(0.01, 0.06);
  const slope = r.between(-0.05, 0.05);
  const y = x.map((nm, i) => {
    const cut = stone.isDiamond ? 1 : 1 / (1 + Math.exp((310 - nm) / 6));
    const t = cut * latticeTransmittance(nm) * Math.exp(-alpha[i]! * 0.1 * stone.pathMm);
    const seen = (t + strayLight) / (1 + strayLight);
    const edge = nm < 300 ? 1 + (300 - nm) / 8 : nm > 900 ? 1 + (nm - 900) / 8 : 1;
    return -Math.log10(seen) + offset + (slope * (nm - 500)) / 500 + 0.004 * (500 / nm) ** 2 + noise * edge * r.normal() / Math.sqrt(Math.max(0.05, seen));
  });
  return { x, y, xUnit: 'nm', yUnit: 'absorbance' };
}
