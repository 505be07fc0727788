import { airFromRamanShift } from '../convert-axis.ts';
import type { Spectrum } from '../spectrum.ts';
import type { EmissionInstrument } from './instrument.ts';
import { addNoise } from './instrument.ts';
import { emissionOf } from './photoluminescence.ts';
import { seededRandom } from './seeded-random.ts';
import type { SimulatedStone } from './stone.ts';

export type RamanInstrument = EmissionInstrument & { readonly fromCm1: number; readonly toCm1: number };

/** A Raman spectrum on the shift axis, cm-1, in counts. Luminescence comes with it, as it does on the bench. */
export function simulateRaman(stone: SimulatedStone, instrument: RamanInstrument, seed: number): Spectrum {
  const r = seededRandom(seed);
  const { fromCm1, toCm1, points, laserNm } = instrument;
  const x = Float64Array.from({ length: points }, (_, i) => fromCm1 + ((toCm1 - fromCm1) * i) / (points - 1));
  const nm = x.map((shift) => airFromRamanShift(laserNm, shift));
  return { x, y: addNoise(emissionOf(nm, stone, instrument, r), instrument, r), xUnit: 'raman-shift', yUnit: 'counts' };
}
