import { expect, test } from 'vitest';
import { findLaser } from '../../../../app/calibration/find-laser.ts';
import { airFromRamanShift, convertPosition } from '../../../../app/spectra/convert-axis.ts';
import { emissionInstrument } from '../../../../app/spectra/simulate/instrument.ts';
import { simulatePhotoluminescence } from '../../../../app/spectra/simulate/photoluminescence.ts';
import { seededRandom } from '../../../../app/spectra/simulate/seeded-random.ts';
import { simulatedStone } from '../../../../app/spectra/simulate/stone.ts';
import type { Spectrum } from '../../../../app/spectra/spectrum.ts';

const known = (laserNm: number, seed = 3): Spectrum => simulatePhotoluminescence(simulatedStone('natural-iia', seed), emissionInstrument({ laserNm, fromNm: laserNm + 8, toNm: laserNm + 170, points: 3000, spikes: 0 }), seed);
const search = (nominalNm: number) => ({ nominalNm, scaleErrorNm: 0.01 });

test.each([[532, 532.45], [532, 531.2], [405, 404.93], [785, 784.6], [514.5, 514.53]])('a laser called %f nm is found at %f nm, within its uncertainty', (nominal, truth) => {
  for (const seed of [3, 4, 5]) {
    const found = findLaser(known(truth, seed), search(nominal));
    if (!found.ok) throw new Error(found.error.message);
    expect(Math.abs(found.value.laserNm - truth)).toBeLessThan(3 * found.value.uncertaintyNm);
    expect(found.value.uncertaintyNm).toBeLessThan(0.05);
  }
});
test('the same curve in vacuum, in ångström, in eV gives the same laser', () => {
  const curve = known(532.2);
  const lasers = (['nm', 'nm-vacuum', 'angstrom', 'ev'] as const).map((xUnit) => {
    const found = findLaser({ ...curve, xUnit, x: curve.x.map((at) => convertPosition(at, 'nm', xUnit)) }, search(532));
    return found.ok ? found.value.laserNm : Number.NaN;
  });
  for (const laser of lasers) expect(laser).toBeCloseTo(lasers[0]!, 6);
});

/** Light without lines, and lines where they are wanted, 0.5 nm wide. */
function made(lines: readonly (readonly [number, number])[], ceiling = Infinity): Spectrum {
  const r = seededRandom(6);
  const x = Float64Array.from({ length: 2000 }, (_, i) => 540 + 0.05 * i);
  const y = x.map((at) => Math.min(ceiling, 300 + lines.reduce((sum, [place, height]) => sum + height * Math.exp(-0.5 * ((at - place) / 0.21) ** 2), 0) + 2 * r.normal()));
  return { x, y, xUnit: 'nm', yUnit: 'counts' };
}
const at = airFromRamanShift(532, 1332.4);
test.each<[string, Spectrum, number, string]>([
  ['no line', made([]), 532, 'too-few-lines'],
  ['a line far from any place of the diamond line', made([[600, 2000]]), 532, 'too-few-lines'],
  ['another laser named', made([[at, 2000]]), 514.5, 'too-few-lines'],
  ['two lines that could be it', made([[at, 2000], [at + 3, 1500]]), 532, 'ambiguous'],
  ['the detector’s ceiling', made([[at, 5000]], 2000), 532, 'curve-unusable'],
  ['a shift axis', { ...made([[at, 2000]]), xUnit: 'raman-shift' }, 532, 'unit-differs'],
  ['pixels', { ...made([[at, 2000]]), xUnit: 'pixel' }, 532, 'unit-differs'],
  ['three points', { x: Float64Array.of(570, 571, 572), y: Float64Array.of(1, 2, 1), xUnit: 'nm', yUnit: 'counts' }, 532, 'curve-unusable'],
])('%s: refused in words, never a laser', (_, curve, nominal, code) => {
  const found = findLaser(curve, search(nominal));
  expect(found.ok ? found.value.laserNm : found.error.code).toBe(code);
});
