import { describe, expect, test } from 'vitest';
import { convertOrdinates } from '../../../app/spectra/convert-ordinate.ts';
import { seededRandom } from '../../../app/spectra/simulate/seeded-random.ts';
import type { YUnit } from '../../../app/spectra/spectrum.ts';

const one = (value: number, from: YUnit, to: YUnit, path?: number): number => {
  const out = convertOrdinates(Float64Array.of(value), from, to, path);
  if (!out.ok) throw new Error(out.error.message);
  return out.value[0]!;
};

describe('ordinates', () => {
  // By definition A = -log10 T.
  test.each([[0.5, 0.301029995663981], [0.1, 1], [0.01, 2], [1, 0]])('transmittance %d is absorbance %d', (t, a) => {
    expect(one(t, 'transmittance', 'absorbance')).toBeCloseTo(a, 14);
    expect(one(100 * t, 'percent-transmittance', 'absorbance')).toBeCloseTo(a, 14);
  });
  test('absorbance 1 over 2 mm is 11.51 per centimetre, base e', () => {
    expect(one(1, 'absorbance', 'absorption-coefficient', 0.2)).toBeCloseTo(11.512925464970229, 12);
    // Lambert–Beer: T = exp(-α d).
    expect(one(11.512925464970229, 'absorption-coefficient', 'transmittance', 0.2)).toBeCloseTo(Math.exp(-11.512925464970229 * 0.2), 14);
  });
  test('each way and back changes nothing beyond double precision', () => {
    const r = seededRandom(4);
    const units: YUnit[] = ['transmittance', 'percent-transmittance', 'absorbance', 'absorption-coefficient'];
    for (let k = 0; k < 500; k++) {
      const absorbance = r.between(0.001, 4);
      const path = r.between(0.02, 1);
      for (const from of units) {
        for (const to of units) {
          const value = one(absorbance, 'absorbance', from, path);
          expect(Math.abs(one(one(value, from, to, path), to, from, path) - value)).toBeLessThan(4e-14 * Math.max(1, Math.abs(value)));
        }
      }
    }
    expect(one(one(0.37, 'reflectance', 'percent-reflectance'), 'percent-reflectance', 'reflectance')).toBeCloseTo(0.37, 15);
  });
  test('what cannot be turned is refused in words', () => {
    const refusal = (from: YUnit, to: YUnit, path?: number) => { const out = convertOrdinates(Float64Array.of(1), from, to, path); return out.ok ? null : out.error; };
    expect(refusal('counts', 'absorbance')?.code).toBe('no-conversion');
    expect(refusal('reflectance', 'transmittance')?.code).toBe('no-conversion');
    expect(refusal('absorbance', 'absorption-coefficient')?.code).toBe('path-missing');
    expect(refusal('absorption-coefficient', 'transmittance', 0)?.message).toMatch(/path/);
  });
});
