import { expect, test } from 'vitest';
import { baselineUnderLines, BASELINE_DEFAULTS, lambdaForPeriod } from '../../../../app/spectra/baseline.ts';
import { gaussian } from '../../../../app/spectra/simulate/line-shapes.ts';
import { seededRandom } from '../../../../app/spectra/simulate/seeded-random.ts';
import { whittaker, whittakerWork } from '../../../../app/spectra/whittaker.ts';

/** The definition: one unknown for each point, rounds until no weight moves. */
function byDefinition(y: Float64Array, noise: Float64Array, lambda: number): Float64Array {
  const z = new Float64Array(y.length);
  const work = whittakerWork(y.length);
  let w = new Float64Array(y.length).fill(1);
  for (let round = 0; round < 300; round++) {
    whittaker(y, w, lambda, z, work);
    w = y.map((value, i) => Math.max(1e-8, 1 / (1 + Math.exp(Math.min(700, 2 * ((value - z[i]!) / noise[i]! - BASELINE_DEFAULTS.cutSigmas))))));
  }
  return z;
}

const made = (n: number, seed: number, light: (i: number) => number): Float64Array => {
  const r = seededRandom(seed);
  return Float64Array.from({ length: n }, (_, i) => light(i) + 5 * r.normal());
};

test('knots give what one unknown for each point gives, to a tenth of the noise', () => {
  for (const seed of [1, 2, 3]) for (const period of [20, 60, 150, 400]) {
    const n = 2500;
    const y = made(n, seed, (i) => 300 + 200 * gaussian(i, 1400, 8 * period) + 800 * gaussian(i, 600, period / 10) + 400 * gaussian(i, 1900, period / 8));
    const noise = new Float64Array(n).fill(5);
    const lambda = lambdaForPeriod(period);
    const z = baselineUnderLines(y, noise, { ...BASELINE_DEFAULTS, lambda });
    const expected = byDefinition(y, noise, lambda);
    const rms = Math.sqrt(z.reduce((sum, value, i) => sum + (value - expected[i]!) ** 2, 0) / n);
    expect(rms).toBeLessThan(0.1 * 5);
  }
});

test('more rounds change nothing: on an edge too steep to follow it stays with the curve', () => {
  const n = 1600;
  const y = made(n, 4, (i) => 40_000 / (1 + Math.exp(i / 12)) + 3000 * Math.exp(-i / 60) + 100 + 60 * gaussian(i, 700, 16));
  const noise = new Float64Array(n).fill(5);
  const lambda = lambdaForPeriod(160);
  const [few, many] = [15, 60].map((iterations) => baselineUnderLines(y, noise, { ...BASELINE_DEFAULTS, iterations, lambda }));
  for (let i = 300; i < n; i++) expect(Math.abs(few![i]! - many![i]!)).toBeLessThan(2);
  // The small line on the foot of the edge keeps its height.
  expect(y[700]! - many![700]!).toBeGreaterThan(35);
  expect(y[700]! - many![700]!).toBeLessThan(80);
});

test('short curves have one too', () => {
  for (const n of [5, 8, 20]) expect(baselineUnderLines(made(n, 1, () => 50), new Float64Array(n).fill(5), { ...BASELINE_DEFAULTS, lambda: lambdaForPeriod(300) }).every(Number.isFinite)).toBe(true);
});
