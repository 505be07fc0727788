import { expect, test } from 'vitest';
import { nonNegativeLeastSquares, nonNegativeSolver } from '../../../../app/infrared/non-negative-least-squares.ts';
import { pchip } from '../../../../app/spectra/pchip.ts';
import { seededRandom } from '../../../../app/spectra/simulate/seeded-random.ts';

/** The optimum has zero gradient where a coefficient is positive, and a non-negative one where it is held at zero. */
function expectOptimal(columns: Float64Array[], y: Float64Array, coefficients: Float64Array): void {
  const residual = y.map((value, i) => value - columns.reduce((sum, column, c) => sum + coefficients[c]! * column[i]!, 0));
  columns.forEach((column, c) => {
    const downhill = column.reduce((sum, value, i) => sum + value * residual[i]!, 0);
    if (coefficients[c]! > 0) expect(Math.abs(downhill)).toBeLessThan(1e-8);
    else expect(downhill).toBeLessThan(1e-8);
  });
}

test('optimal on 200 random problems with five columns', () => {
  const r = seededRandom(4);
  for (let k = 0; k < 200; k++) {
    const columns = Array.from({ length: 5 }, () => Float64Array.from({ length: 40 }, () => r.uniform()));
    const y = Float64Array.from({ length: 40 }, () => r.normal());
    const { coefficients } = nonNegativeLeastSquares(columns, y, [false, false, false, false, false]);
    expect(coefficients.every((c) => c >= 0)).toBe(true);
    expectOptimal(columns, y, coefficients);
  }
});

test('one solver for many curves gives each what it gives alone', () => {
  const r = seededRandom(9);
  const columns = Array.from({ length: 7 }, () => Float64Array.from({ length: 60 }, () => r.uniform()));
  const free = columns.map((_, c) => c > 4);
  const solver = nonNegativeSolver(columns, free);
  for (let k = 0; k < 100; k++) {
    const y = Float64Array.from({ length: 60 }, () => r.normal());
    const alone = nonNegativeLeastSquares(columns, y, free);
    expect(solver.coefficients(y)).toEqual(alone.coefficients);
    expect(solver.fit(y)).toEqual(alone);
    expect(alone.coefficients.every((c, j) => free[j] === true || c >= 0)).toBe(true);
  }
});

test('columns that depend on each other are no fault', () => {
  const t = Float64Array.from({ length: 12 }, (_, i) => 1 + i);
  const { coefficients } = nonNegativeLeastSquares([t, t.slice(), t.map((v) => v * v)], t.map((v) => 3 * v), [false, false, false]);
  const fitted = t.map((v) => (coefficients[0]! + coefficients[1]!) * v + coefficients[2]! * v * v);
  fitted.forEach((value, i) => expect(value).toBeCloseTo(3 * t[i]!, 6));
  expect(coefficients.every((c) => c >= 0)).toBe(true);
});

test('a free column may go below zero', () => {
  const t = Float64Array.from({ length: 10 }, (_, i) => i);
  const { coefficients } = nonNegativeLeastSquares([t], t.map((v) => -2 * v), [true]);
  expect(coefficients[0]).toBeCloseTo(-2, 10);
});

test('the monotone interpolation passes its points and never overshoots', () => {
  const x = [0, 1, 2, 4, 7];
  const y = [0, 0, 5, 5, 1];
  const f = pchip(x, y);
  x.forEach((at, i) => expect(f(at)).toBeCloseTo(y[i]!, 12));
  for (let at = 0; at <= 7; at += 0.05) {
    expect(f(at)).toBeGreaterThanOrEqual(-1e-12);
    expect(f(at)).toBeLessThanOrEqual(5 + 1e-12);
  }
  expect(f(3)).toBeCloseTo(5, 12);
  expect(f(8)).toBe(0);
});
