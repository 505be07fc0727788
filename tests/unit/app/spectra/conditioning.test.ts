import { describe, expect, test } from 'vitest';
import { baselineUnderLines, BASELINE_DEFAULTS, lambdaForPeriod } from '../../../../app/spectra/baseline.ts';
import { findPeaks } from '../../../../app/spectra/find-peaks.ts';
import { fitPeaks } from '../../../../app/spectra/fit-peak.ts';
import { localNoise } from '../../../../app/spectra/noise.ts';
import { removeSpikes } from '../../../../app/spectra/remove-spikes.ts';
import { findSaturation } from '../../../../app/spectra/saturation.ts';
import { gaussian, lorentzian } from '../../../../app/spectra/simulate/line-shapes.ts';
import { seededRandom } from '../../../../app/spectra/simulate/seeded-random.ts';
import { median } from '../../../../app/spectra/statistics.ts';

const noisy = (n: number, sigma: number, seed = 1): Float64Array => {
  const r = seededRandom(seed);
  return Float64Array.from({ length: n }, () => sigma * r.normal());
};

test('median of odd and even counts', () => {
  expect(median([5, 1, 3])).toBe(3);
  expect(median([4, 1, 3, 2])).toBe(2.5);
});

describe('noise', () => {
  test('within 8 % of the truth, on a slope and beside strong lines', () => {
    const y = noisy(2000, 3).map((value, i) => value + 0.2 * i + 5000 * gaussian(i, 700, 20));
    const noise = localNoise(y);
    for (const i of [100, 1000, 1900]) expect(Math.abs(noise[i]! / 3 - 1)).toBeLessThan(0.08 * 2);
    expect(Math.abs(median(noise) / 3 - 1)).toBeLessThan(0.08);
  });
  test('follows a change along the curve', () => {
    const y = noisy(2000, 1).map((value, i) => (i < 1000 ? value : 10 * value));
    const noise = localNoise(y);
    expect(noise[1700]! / noise[300]!).toBeGreaterThan(7);
  });
});

describe('spikes', () => {
  const y = noisy(500, 1).map((value, i) => value + 100 + 300 * gaussian(i, 250, 6));
  const noise = new Float64Array(500).fill(1);
  test('one and two points wide are taken out, the line stays', () => {
    const hit = y.slice();
    hit[100] = 900;
    hit[400] = 800;
    hit[401] = 700;
    const { y: clean, spikes } = removeSpikes(hit, noise, { resolutionPoints: 6, sigmas: 8 });
    expect(spikes).toEqual([100, 400]);
    expect(clean[100]).toBeLessThan(110);
    expect(clean[250]).toBe(hit[250]);
  });
  test('a line as narrow as the instrument stays', () => {
    const narrow = y.map((value, i) => value + 500 * gaussian(i, 120, 3));
    expect(removeSpikes(narrow, noise, { resolutionPoints: 3, sigmas: 8 }).spikes).toEqual([]);
  });
});

test('a ceiling is a run of equal greatest values', () => {
  const y = noisy(300, 1).map((value, i) => Math.min(1000, 100 + value + 2000 * gaussian(i, 150, 30)));
  const noise = new Float64Array(300).fill(1);
  const saturation = findSaturation(y, noise)!;
  expect(saturation.runs).toHaveLength(1);
  expect(saturation.runs[0]![0]).toBeGreaterThan(130);
  expect(findSaturation(y.map((value, i) => value + 0.001 * i), noise)).toBeNull();
});

test('the baseline runs through the middle of the noise, follows bands and not lines', () => {
  const n = 2000;
  const truth = Float64Array.from({ length: n }, (_, i) => 200 + 300 * gaussian(i, 1200, 900));
  const y = noisy(n, 5).map((value, i) => value + truth[i]! + 1000 * gaussian(i, 500, 30));
  const z = baselineUnderLines(y, new Float64Array(n).fill(5), { ...BASELINE_DEFAULTS, lambda: lambdaForPeriod(300) });
  let bias = 0;
  for (let i = 800; i < 1800; i++) bias += (z[i]! - truth[i]!) / 1000;
  expect(Math.abs(bias)).toBeLessThan(1);
  expect(Math.abs(z[500]! - truth[500]!)).toBeLessThan(10);
});

describe('peaks', () => {
  const ones = (n: number, value: number): Float64Array => new Float64Array(n).fill(value);
  test('prominence against the higher valley', () => {
    const y = Float64Array.of(0, 1, 5, 2, 8, 3, 4, 0);
    const peaks = findPeaks(y, ones(8, 0.5), { prominence: 1, height: 0 });
    expect(peaks.map((p) => [p.index, p.prominence])).toEqual([[2, 3], [4, 8], [6, 1]]);
  });
  test('the same as by the definition, on 300 curves with steps and flat stretches', () => {
    const r = seededRandom(11);
    for (let k = 0; k < 300; k++) {
      const y = Float64Array.from({ length: 60 }, () => Math.round(k % 2 === 0 ? 5 * r.normal() : 100 * r.normal()));
      const prominenceOf = (from: number, to: number): number => {
        const top = y[from]!;
        let left = top;
        for (let i = from; i >= 0 && y[i]! <= top; i--) left = Math.min(left, y[i]!);
        let right = top;
        for (let i = to; i < 60 && y[i]! <= top; i++) right = Math.min(right, y[i]!);
        return top - Math.max(left, right);
      };
      const expected: [number, number][] = [];
      for (let i = 1; i < 59; i++) {
        let end = i;
        while (end < 59 && y[end + 1] === y[i]) end++;
        if (y[i]! > y[i - 1]! && end < 59 && y[end + 1]! < y[i]! && y[i]! >= 0) expected.push([(i + end) >> 1, prominenceOf(i, end)]);
      }
      expect(findPeaks(y, ones(60, 1e-9), { prominence: 1, height: 0 }).map((p) => [p.index, p.prominence])).toEqual(expected);
    }
  });
  test('a flat top counts once, the ends never', () => {
    expect(findPeaks(Float64Array.of(9, 1, 4, 4, 4, 1, 9), ones(7, 0.5), { prominence: 1, height: 0 }).map((p) => p.index)).toEqual([3]);
  });
});

describe('peak fits', () => {
  const x = Float64Array.from({ length: 81 }, (_, i) => 600 + 0.1 * i);
  test.each([['gaussian', gaussian], ['lorentzian', lorentzian]] as const)('%s on a slope, exact data', (shape, f) => {
    const y = x.map((nm) => 50 * f(nm, 604.037, 1.3) + 10 + 0.5 * (nm - 604));
    const peak = fitPeaks(x, y, [{ position: 604.3, height: 40, fwhm: 1 }], shape)!.peaks[0]!;
    expect(peak.position).toBeCloseTo(604.037, 6);
    expect(peak.fwhm).toBeCloseTo(1.3, 5);
    expect(peak.height).toBeCloseTo(50, 4);
  });
  test('two overlapping lines of a pseudo-Voigt', () => {
    const y = x.map((nm) => 50 * gaussian(nm, 603.6, 0.6) + 80 * gaussian(nm, 604.3, 0.6));
    const peaks = fitPeaks(x, y, [{ position: 603.5, height: 40, fwhm: 0.5 }, { position: 604.4, height: 60, fwhm: 0.5 }], 'pseudo-voigt')!.peaks;
    expect(peaks[0]!.position).toBeCloseTo(603.6, 3);
    expect(peaks[1]!.position).toBeCloseTo(604.3, 3);
  });
  test('too few points: none', () => expect(fitPeaks(x.slice(0, 6), x.slice(0, 6), [{ position: 600, height: 1, fwhm: 1 }], 'gaussian')).toBeNull());
});
