import { describe, expect, test } from 'vitest';
import { analysisResult } from '../../../../app/spectra/analysis.ts';
import { simulatedStone, STONE_KINDS } from '../../../../app/spectra/simulate/stone.ts';
import type { StoneKind } from '../../../../app/spectra/simulate/stone.ts';
import { emissionInstrument } from '../../../../app/spectra/simulate/instrument.ts';
import { simulatePhotoluminescence } from '../../../../app/spectra/simulate/photoluminescence.ts';
import { simulateRaman } from '../../../../app/spectra/simulate/raman.ts';
import { seededRandom } from '../../../../app/spectra/simulate/seeded-random.ts';
import { analysed, centres, madeSpectrum, PL } from './made-spectra.ts';
import { analyseSpectrum } from '../../../../app/spectra/analyse-spectrum.ts';

const SEEDS = [1, 2, 3, 4, 5, 6, 7, 8];

describe('simulated stones come out as what they are', () => {
  const read = (kind: StoneKind, seed: number, laserNm: number, temperatureK: number, resolutionNm: number) => {
    const instrument = emissionInstrument({ laserNm, temperatureK, resolutionNm, fromNm: laserNm + 6, toNm: laserNm === 405 ? 760 : 950 });
    return analysed(simulatePhotoluminescence(simulatedStone(kind, seed), instrument, seed), { laserNm, temperatureK, resolution: resolutionNm });
  };
  test.each(SEEDS)('natural type Ia under 405 nm shows N3 (seed %i)', (seed) => {
    const result = read('natural-ia', seed, 405, 295, 1);
    expect(centres(result)).toContain('N3');
    expect(result.findings.filter((f) => f.supports.startsWith('grown'))).toEqual([]);
  });
  test.each(SEEDS)('CVD as grown under 532 nm shows silicon and NV, and nothing natural (seed %i)', (seed) => {
    const result = read('cvd-as-grown', seed, 532, 77, 0.15);
    expect(centres(result)).toEqual(expect.arrayContaining(['SIV', 'NV0', 'NV-', 'CVD596', 'CVD597']));
    expect(result.findings.filter((f) => f.supports === 'natural')).toEqual([]);
  });
  test.each(SEEDS)('HPHT grown shows the nickel pair, and nothing natural (seed %i)', (seed) => {
    const result = read('hpht', seed, 532, 295, 0.5);
    expect(centres(result)).toContain('NI883');
    expect(result.findings.filter((f) => f.supports === 'natural')).toEqual([]);
  });
  test.each(SEEDS)('natural type IIa shows the vacancy line, and nothing of growth in a laboratory (seed %i)', (seed) => {
    const result = read('natural-iia', seed, 532, 295, 0.5);
    expect(centres(result)).toEqual(expect.arrayContaining(['RAMAN', 'NV0', 'GR1']));
    expect(result.findings.filter((f) => f.supports.startsWith('grown'))).toEqual([]);
  });
  test.each(SEEDS)('natural type IIa with silicon shows both sides (seed %i)', (seed) => {
    const codes = read('natural-iia-silicon', seed, 532, 77, 0.15).findings.map((f) => f.code);
    expect(codes).toEqual(expect.arrayContaining(['centre:SIV', 'family:natural-companions']));
  });
  test.each(['moissanite', 'cubic-zirconia', 'glass', 'corundum'] as const)('%s is neither diamond nor natural', (kind) => {
    for (const seed of SEEDS) for (const laser of [405, 532]) {
      const result = read(kind, seed, laser, 295, laser === 405 ? 1 : 0.5);
      expect(result.diamondRaman?.present).toBe(false);
      expect(result.findings.filter((f) => ['natural', 'grown', 'grown-cvd', 'grown-hpht', 'diamond'].includes(f.supports))).toEqual([]);
    }
  });
  test.each(['moissanite', 'corundum'] as const)('%s is named on the Raman axis', (kind) => {
    const instrument = { ...emissionInstrument({ resolutionNm: 0.1, points: 2048 }), fromCm1: 150, toCm1: 3000 };
    const codes = analysed(simulateRaman(simulatedStone(kind, 1), instrument, 1), { method: 'raman', resolution: undefined }).findings.map((f) => f.code);
    expect(codes).toEqual(expect.arrayContaining([`simulant:${kind.toUpperCase()}`, 'diamond-line:absent']));
  });
  test.each(STONE_KINDS)('%s: the result fits its schema', (kind) => {
    expect(analysisResult.safeParse(read(kind, 3, 532, 295, 0.5)).success).toBe(true);
  });
});

describe('planted lines by signal over noise', () => {
  // SiV-, NV0, NV-, GR1 planted one at a time among 40 seeds; positions scatter by 0.05 nm.
  const planted = [['SIV', 738, 5.5], ['NV0', 575.1, 2.7], ['NV-', 637.4, 2.7], ['GR1', 741.4, 4]] as const;
  const found = (snr: number): number => {
    let hits = 0;
    for (const [id, nm, fwhm] of planted) for (let seed = 1; seed <= 40; seed++) {
      const spectrum = madeSpectrum([{ nm: nm + 0.05 * seededRandom(seed + 900).normal(), height: snr * 10, fwhm }], { seed, noise: 10 });
      if (centres(analysed(spectrum, { laserNm: undefined })).includes(id)) hits++;
    }
    return hits / (40 * planted.length);
  };
  test('200 and 30: all', () => {
    expect(found(200)).toBe(1);
    expect(found(30)).toBe(1);
  });
  test('8: nearly all', () => expect(found(8)).toBeGreaterThan(0.9));
  test('3: next to none', () => expect(found(3)).toBeLessThan(0.05));
});

test('false alarms on pure noise: fewer than one line in 100 curves of 3,600 points, and no name in 300', () => {
  let lines = 0;
  let named = 0;
  for (let seed = 1; seed <= 300; seed++) {
    const result = analysed(madeSpectrum([], { seed: seed + 5000 }));
    lines += result.peaks.length;
    named += centres(result).length;
  }
  expect(lines).toBeLessThan(3);
  expect(named).toBe(0);
});

test('positions are as sure as they claim', () => {
  let sum = 0;
  const n = 100;
  for (let seed = 1; seed <= n; seed++) {
    const peak = analysed(madeSpectrum([{ nm: 700.123, height: 300, fwhm: 3 }], { seed })).peaks[0]!;
    sum += ((peak.position - 700.123) / peak.standardError!) ** 2;
  }
  // Mean squared pull of an honest standard error is 1.
  expect(sum / n).toBeGreaterThan(0.6);
  expect(sum / n).toBeLessThan(1.6);
});

test('the same input gives the same numbers', () => {
  const spectrum = madeSpectrum([{ nm: 738, height: 800, fwhm: 5 }]);
  expect(analysed(spectrum)).toEqual(analysed(spectrum));
});

test('curves have the length of the analysed axis', () => {
  const result = analyseSpectrum(madeSpectrum([]), PL);
  if (!result.ok) throw new Error(result.error.message);
  const { x, raw, smoothed, baseline } = result.value.curves;
  expect([raw.length, smoothed.length, baseline.length]).toEqual([x.length, x.length, x.length]);
});

test('cosmic spikes are taken out and told', () => {
  const spectrum = madeSpectrum([{ nm: 637.4, height: 1000, fwhm: 2.7 }], { noise: 8 });
  spectrum.y[1500] = spectrum.y[1500]! + 5000;
  const result = analysed(spectrum);
  expect(result.warnings.map((w) => w.code)).toContain('spikes-removed');
  expect(result.peaks.every((peak) => Math.abs(peak.position - spectrum.x[1500]!) > 0.5)).toBe(true);
});
