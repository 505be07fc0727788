import { describe, expect, test } from 'vitest';
import { fitDecay } from '../../../../app/images/decay-fit.ts';
import { seededRandom } from '../../../../app/spectra/simulate/seeded-random.ts';

const times = [0.5, 1, 2, 3, 5, 8, 12, 17, 23, 30, 40, 55];
const points = (light: (t: number) => number) => times.map((seconds) => ({ seconds, brightness: light(seconds) }));

describe('fitDecay', () => {
  test('gives the lifetime of one exponential', () => {
    const fit = fitDecay(points((t) => 0.4 * Math.exp(-t / 7.5)))!;
    expect(fit.terms).toHaveLength(1);
    expect(fit.terms[0]!.lifetime).toBeCloseTo(7.5, 6);
    expect(fit.terms[0]!.amplitude).toBeCloseTo(0.4, 6);
  });

  test('gives both lifetimes where two fade together', () => {
    const fit = fitDecay(points((t) => 0.5 * Math.exp(-t / 2) + 0.2 * Math.exp(-t / 25)))!;
    expect(fit.terms.map((term) => Math.round(term.lifetime * 100) / 100)).toEqual([2, 25]);
  });

  test('its error covers the truth in about two of three seeded tries, and nearly always three times over', () => {
    let [once, thrice] = [0, 0];
    for (let seed = 1; seed <= 60; seed++) {
      const random = seededRandom(seed);
      const term = fitDecay(points((t) => 0.4 * Math.exp(-t / 9) + 0.004 * random.normal()))!.terms.at(-1)!;
      if (Math.abs(term.lifetime - 9) < term.lifetimeError) once++;
      if (Math.abs(term.lifetime - 9) < 3 * term.lifetimeError) thrice++;
    }
    expect(once / 60).toBeGreaterThan(0.5);
    expect(once / 60).toBeLessThan(0.85);
    expect(thrice / 60).toBeGreaterThan(0.95);
  });

  test('a noisy single exponential is not taken for two', () => {
    const counts = Array.from({ length: 30 }, (_, seed) => {
      const random = seededRandom(100 + seed);
      return fitDecay(points((t) => 0.4 * Math.exp(-t / 9) + 0.004 * random.normal()))!.terms.length;
    });
    expect(counts.filter((count) => count === 2).length).toBeLessThan(3);
  });

  test.each([
    ['what does not fade', points(() => 0.2)], ['two points', points((t) => Math.exp(-t)).slice(0, 2)], ['darkness', points(() => 0)],
  ])('has nothing to say of %s', (_name, dark) => {
    expect(fitDecay(dark)).toBeNull();
  });
});
