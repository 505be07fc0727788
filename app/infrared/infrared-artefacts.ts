import type { AnalysisWarning } from '../spectra/analysis.ts';
import type { Normalisation } from './normalise.ts';
import { latticeAbsorption } from './two-phonon.ts';

const meanBetween = (x: Float64Array, y: Float64Array, from: number, to: number): number => {
  let sum = 0;
  let count = 0;
  for (let i = 0; i < x.length; i++) if (x[i]! >= from && x[i]! <= to) { sum += y[i]!; count++; }
  return count > 0 ? sum / count : Number.NaN;
};

/** Root mean square of second differences: what sharp lines leave, and a smooth band does not. */
function roughness(x: Float64Array, y: Float64Array, from: number, to: number): number {
  let sum = 0;
  let count = 0;
  for (let i = 1; i < x.length - 1; i++) {
    if (x[i]! < from || x[i]! > to) continue;
    sum += (y[i - 1]! - 2 * y[i]! + y[i + 1]!) ** 2;
    count++;
  }
  return count > 0 ? Math.sqrt(sum / count) : Number.NaN;
}

/** Air and grease in the beam: carbon dioxide at 2349, water lines at 1500–1900, C–H at 2850 and 2920 cm-1 (line tables, from memory). */
export function artefactsOf(x: Float64Array, y: Float64Array, scale: Normalisation): AnalysisWarning[] {
  const warnings: AnalysisWarning[] = [];
  const { alpha, latticeScale } = scale;
  const lattice = (at: number): number => latticeScale * latticeAbsorption(at);
  const excess = (at: number, half: number, side: number): number =>
    meanBetween(x, alpha, at - half, at + half) - 0.5 * (meanBetween(x, alpha, at - side - half, at - side + half) + meanBetween(x, alpha, at + side - half, at + side + half));
  const latticeExcess = (at: number, side: number): number => lattice(at) - 0.5 * (lattice(at - side) + lattice(at + side));
  // The P and R branches stand at 2340 and 2360, with the gap at 2349 between them.
  const branches = 0.5 * (meanBetween(x, alpha, 2357, 2364) + meanBetween(x, alpha, 2336, 2343));
  const feet = 0.5 * (meanBetween(x, alpha, 2388, 2394) + meanBetween(x, alpha, 2304, 2310));
  const expected = 0.5 * (lattice(2360) + lattice(2340)) - 0.5 * (lattice(2391) + lattice(2307));
  if (Math.abs(branches - feet - expected) > 0.6) warnings.push({ code: 'carbon-dioxide', message: 'Carbon dioxide shows near 2350 cm⁻¹, of the air or enclosed in the stone: purge the instrument or take a fresh background, and compare.' });
  const calm = roughness(x, y, 2450, 2600);
  if (roughness(x, y, 1640, 1760) > 5 * calm && roughness(x, y, 1500, 1580) > 5 * calm) {
    warnings.push({ code: 'water-vapour', message: 'Sharp lines of water vapour show between 1500 and 1900 cm⁻¹: purge the instrument or take a fresh background.' });
  }
  if (excess(2920, 3, 28) - latticeExcess(2920, 28) > 0.25 && excess(2851, 3, 22) - latticeExcess(2851, 22) > 0.12) {
    warnings.push({ code: 'grease', message: 'Grease or glue shows at 2850 and 2920 cm⁻¹: clean the stone; it can imitate boron and hydrogen lines.' });
  }
  return warnings;
}
