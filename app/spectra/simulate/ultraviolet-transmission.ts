import type { Spectrum } from '../spectrum.ts';
import type { AbsorptionInstrument } from './absorption.ts';
import { absorptionOf } from './absorption.ts';
import { latticeTransmittance } from './lattice-transmittance.ts';
import { seededRandom } from './seeded-random.ts';
import type { SimulatedStone } from './stone.ts';

export const ULTRAVIOLET_DEFAULTS: AbsorptionInstrument = { temperatureK: 295, resolutionNm: 1.5, fromNm: 215, toNm: 520, points: 611, noise: 0.002, strayLight: 0.001 };

/** Light that finds its way through a faceted stone (judgement). */
const FACETED_SHARE = 0.3;

/** Transmittance from the short-wave ultraviolet to the visible, nm. Imitations cut off before 300 nm. */
export function simulateUltravioletTransmission(stone: SimulatedStone, instrument: AbsorptionInstrument, seed: number): Spectrum {
  const r = seededRandom(seed);
  const { fromNm, toNm, points } = instrument;
  const x = Float64Array.from({ length: points }, (_, i) => fromNm + ((toNm - fromNm) * i) / (points - 1));
  const alpha = absorptionOf(x, stone, instrument.temperatureK, instrument.resolutionNm);
  const y = x.map((nm, i) => {
    const cut = stone.isDiamond ? 1 : 1 / (1 + Math.exp((310 - nm) / 6));
    const t = latticeTransmittance(nm) * Math.exp(-alpha[i]! * 0.1 * stone.pathMm) * cut * FACETED_SHARE;
    return t + instrument.strayLight * FACETED_SHARE + instrument.noise * FACETED_SHARE * r.normal();
  });
  return { x, y, xUnit: 'nm', yUnit: 'transmittance' };
}
