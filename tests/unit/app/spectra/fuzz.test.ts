import { expect, test } from 'vitest';
import { ANALYSABLE, analysisResult } from '../../../../app/spectra/analysis.ts';
import { analyseSpectrum } from '../../../../app/spectra/analyse-spectrum.ts';
import { seededRandom } from '../../../../app/spectra/simulate/seeded-random.ts';
import { X_UNITS, Y_UNITS } from '../../../../app/spectra/spectrum.ts';

/** Curves that no instrument wrote: steps, ramps, single points, huge and tiny values, holes, folded axes. */
function strange(seed: number) {
  const r = seededRandom(seed);
  const n = [0, 1, 2, 5, 19, 20, 21, 40, 300, 1200][r.below(10)]!;
  const start = [0, 1, 200, 400, 1000, 4000][r.below(6)]!;
  const step = [0, 0.01, 0.3, 1, -1, 50][r.below(6)]!;
  const scale = [1e-300, 1e-6, 1, 1e6, 1e300][r.below(5)]!;
  const kind = r.below(7);
  const x = Float64Array.from({ length: n }, (_, i) => (r.uniform() < 0.002 ? Number.NaN : start + step * i + (kind === 6 ? r.normal() : 0)));
  const y = Float64Array.from({ length: n }, (_, i) => {
    if (r.uniform() < 0.003) return [Number.NaN, Infinity, -Infinity, 0][r.below(4)]!;
    const value = kind === 0 ? 0 : kind === 1 ? i : kind === 2 ? (i > n / 2 ? 1 : 0) : kind === 3 ? (i === n >> 1 ? 1 : 0) : kind === 4 ? Math.exp(i / 100) : r.normal();
    return scale * value;
  });
  return { x, y, xUnit: X_UNITS[r.below(X_UNITS.length)]!, yUnit: Y_UNITS[r.below(Y_UNITS.length)]!, method: ANALYSABLE[r.below(ANALYSABLE.length)]!, laserNm: [undefined, 405, 532, 785][r.below(4)] };
}

test('two thousand strange curves: a typed error or a sound result, never a fault, never an origin', () => {
  let analysed = 0;
  for (let seed = 1; seed <= 2000; seed++) {
    const { method, laserNm, ...spectrum } = strange(seed);
    const result = analyseSpectrum(spectrum, { method, laserNm, temperatureK: 295, calibrationErrorNm: 0.1 });
    if (!result.ok) {
      expect(result.error.message.length).toBeGreaterThan(20);
      continue;
    }
    analysed++;
    const checked = analysisResult.safeParse(result.value.result);
    expect(checked.success, `seed ${seed}: ${JSON.stringify(checked.error?.issues[0])}`).toBe(true);
    const claims = result.value.result.findings.filter((finding) => finding.strength === 'strong' || finding.strength === 'diagnostic');
    expect(claims.filter((finding) => finding.supports === 'natural' || finding.supports === 'diamond'), `seed ${seed}`).toEqual([]);
  }
  // The rest was refused: both ways must really have been walked.
  expect(analysed).toBeGreaterThan(40);
  expect(analysed).toBeLessThan(1500);
});
