import { describe, expect, test } from 'vitest';
import type { AnalysisParameters, PeakResult } from '../../../../app/spectra/analysis.ts';
import { findShoulders } from '../../../../app/spectra/find-shoulders.ts';
import { gaussian, lorentzian } from '../../../../app/spectra/simulate/line-shapes.ts';
import { seededRandom } from '../../../../app/spectra/simulate/seeded-random.ts';
import { analysed, madeSpectrum, type MadeLine, type MadeOptions } from './made-spectra.ts';

const SEEDS = [1, 2, 3, 4, 5, 6];
const peaks = (lines: readonly MadeLine[], options: MadeOptions, parameters: Partial<AnalysisParameters>): PeakResult[] => analysed(madeSpectrum(lines, options), parameters).peaks;

describe('doublets, where the data carry them', () => {
  // Silicon-vacancy pair: J. P. Goss et al., Phys. Rev. Lett. (1996); nickel pair: Nazaré, Neves, Davies, Phys. Rev. B 43 (1991); 596.5/597.2 from memory.
  test.each([
    ['SIV', [736.6, 736.9], 0.12, { from: 730, to: 745, points: 600 }, { temperatureK: 77, resolution: 0.1 }],
    ['NI883', [883.0, 884.7], 0.9, { from: 860, to: 910, points: 1000 }, { temperatureK: 77, resolution: 0.8, laserNm: 785 }],
  ] as const)('%s', (id, places, fwhm, options, parameters) => {
    for (const seed of SEEDS) {
      const pair = peaks(places.map((nm, k) => ({ nm, height: 1500 - 400 * k, fwhm })), { ...options, seed }, parameters).filter((peak) => peak.centre === id);
      expect(pair).toHaveLength(2);
      pair.forEach((peak, k) => expect(Math.abs(peak.position - places[k]!)).toBeLessThan(Math.max(0.005, 5 * peak.standardError!)));
    }
  });
  test('596/597 by name on a fine instrument, as one unresolved pair on a coarse one', () => {
    const pair = [{ nm: 596.5, height: 1500, fwhm: 0.4 }, { nm: 597.2, height: 900, fwhm: 0.4 }];
    const coarse = pair.map((line) => ({ ...line, fwhm: 0.7 }));
    for (const seed of SEEDS) {
      const options = { from: 560, to: 630, points: 2000, seed };
      expect(peaks(pair, options, { temperatureK: 77, resolution: 0.3 }).map((peak) => peak.centre)).toEqual(['CVD596', 'CVD597']);
      const named = peaks(coarse, options, { temperatureK: 77, resolution: 0.5 }).flatMap((peak) => peak.centre ?? []);
      expect(named).toEqual(['CVD596-597']);
    }
  });
  test('two tops with a high valley between them are fitted together', () => {
    for (const seed of SEEDS) {
      const both = peaks([{ nm: 572.6, height: 4000, fwhm: 1.5 }, { nm: 575, height: 1500, fwhm: 2 }], { from: 540, to: 700, points: 1600, seed }, { resolution: 1.5 });
      expect(both).toHaveLength(2);
      expect(Math.abs(both[1]!.position - 575)).toBeLessThan(5 * both[1]!.standardError!);
      expect(both[1]!.height).toBeGreaterThan(1350);
      expect(both[1]!.height).toBeLessThan(1650);
    }
  });
});

describe('lines on the flank of others', () => {
  const diamondBesideNv: readonly MadeLine[] = [{ nm: 572.6, height: 1500, fwhm: 1.6 }, { nm: 574.9, height: 6000, fwhm: 2.6 }];
  test('the diamond line on the flank of NV⁰, without a maximum of its own, at 1.5 nm resolution', () => {
    for (const seed of SEEDS) {
      const found = peaks(diamondBesideNv, { from: 540, to: 700, points: 1600, seed }, { resolution: 1.5 });
      expect(found.map((peak) => peak.centre)).toEqual(['RAMAN', 'NV0']);
      found.forEach((peak, k) => {
        expect(Math.abs(peak.position - diamondBesideNv[k]!.nm)).toBeLessThan(Math.max(0.01, 5 * peak.standardError!));
        expect(Math.abs(peak.height / diamondBesideNv[k]!.height - 1)).toBeLessThan(0.1);
      });
    }
  });
  test('a single line, however strong, has no shoulder', () => {
    for (const fwhm of [0.6, 1.2, 1.8, 3, 6]) for (const height of [500, 5000, 50_000]) for (const seed of SEEDS) {
      const found = peaks([{ nm: 650, height, fwhm }], { from: 600, to: 700, points: 1600, seed }, { resolution: 0.5 });
      expect(found.filter((peak) => Math.abs(peak.position - 650) < 4 * fwhm)).toHaveLength(1);
    }
  });
  test('the bend of one Gaussian or Lorentzian is parted from its top by no dip', () => {
    for (const shape of [gaussian, lorentzian]) for (const fwhmPoints of [6, 12, 30, 60]) {
      const r = seededRandom(fwhmPoints);
      const y = Float64Array.from({ length: 400 }, (_, i) => 1000 * shape(i, 200.3, fwhmPoints) + r.normal());
      expect(findShoulders({ y, noise: 1, from: 60, to: 340, tops: [200], fwhmPoints })).toEqual([]);
    }
  });
});
