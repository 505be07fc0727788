import { describe, expect, test } from 'vitest';
import { airFromRamanShift } from '../../../../app/spectra/convert-axis.ts';
import { analyseSpectrum } from '../../../../app/spectra/analyse-spectrum.ts';
import { analysed, madeSpectrum, PL, RAMAN_532 } from './made-spectra.ts';

const raman = { method: 'raman', resolution: undefined } as const;
const shiftAxis = (lines: Parameters<typeof madeSpectrum>[0], options: Parameters<typeof madeSpectrum>[1] = {}) =>
  ({ ...madeSpectrum(lines, { from: 150, to: 3000, points: 2000, ...options }), xUnit: 'raman-shift' as const });

describe('on the wavelength axis', () => {
  test.each([405, 488, 514.5, 632.8, 785])('where a %f nm laser puts it', (laserNm) => {
    const nm = airFromRamanShift(laserNm, 1332.4);
    const result = analysed(madeSpectrum([{ nm, height: 2000, fwhm: 0.6 }], { from: laserNm + 5, to: laserNm + 140 }), { laserNm });
    expect(result.diamondRaman).toMatchObject({ state: 'present', present: true });
    expect(result.diamondRaman!.shiftCm1).toBeCloseTo(1332.4, 0);
  });
  test('a line 0.6 nm off is not it, and the laser is doubted', () => {
    const result = analysed(madeSpectrum([{ ...RAMAN_532, nm: 573.3 }]));
    expect(result.diamondRaman?.present).toBe(false);
    expect(result.diamondRaman?.state).toBe('masked');
    expect(result.warnings.map((warning) => warning.code)).toContain('laser-doubtful');
  });
  test('a wrong laser never makes a diamond "not diamond"', () => {
    const spectrum = madeSpectrum([RAMAN_532, { nm: 637.4, height: 2500, fwhm: 2.7 }]);
    for (const laserNm of [520, 528, 535, 540]) {
      expect(analysed(spectrum, { laserNm }).findings.filter((finding) => finding.supports === 'not-diamond')).toEqual([]);
    }
  });
  test('drowned by luminescence: masked, with the limit', () => {
    const result = analysed(madeSpectrum([{ nm: 700, height: 3000, fwhm: 3 }], { noise: 150, level: () => 20000 }));
    expect(result.diamondRaman).toMatchObject({ state: 'masked', present: false });
    expect(result.diamondRaman!.detectionLimit).toBeGreaterThan(100);
  });
  test('a wide line without a stated resolution: taken for it up to 60 cm⁻¹, with the request to state it; beyond, masked with its width', () => {
    const wide = (fwhm: number, told = {}) => analysed(madeSpectrum([{ nm: airFromRamanShift(532, 1332.4), height: 3000, fwhm }]), { laserNm: 532, resolution: undefined, ...told });
    const taken = wide(1.4);
    expect(taken.diamondRaman!.state).toBe('present');
    expect(taken.warnings.find((warning) => warning.code === 'diamond-line-wide')?.message).toMatch(/4\d cm⁻¹ wide.*state the instrument’s resolution/);
    expect(wide(0.6).warnings.map((warning) => warning.code)).not.toContain('diamond-line-wide');
    const doubted = wide(2.6);
    expect(doubted.diamondRaman!.state).toBe('masked');
    expect(doubted.findings.find((finding) => finding.code === 'diamond-line:masked')!.statement).toMatch(/a line stands there, but 8\d cm⁻¹ wide, and without a stated resolution none above 60 cm⁻¹/);
  });
  test('saturated there: masked, no limit', () => {
    const spectrum = madeSpectrum([{ nm: 572.6, height: 90000, fwhm: 0.8 }]);
    const result = analysed({ ...spectrum, y: spectrum.y.map((value) => Math.min(65535, value)) });
    expect(result.diamondRaman).toMatchObject({ state: 'masked', detectionLimit: null });
    expect(result.warnings.map((warning) => warning.code)).toContain('saturated');
  });
  test('not covered: nothing is said', () => {
    expect(analysed(madeSpectrum([{ nm: 738, height: 1000, fwhm: 5 }], { from: 600, to: 900 })).diamondRaman).toBeNull();
  });
  test('laser not stated: nothing is said, with a warning', () => {
    const result = analysed(madeSpectrum([RAMAN_532]), { laserNm: undefined });
    expect(result.diamondRaman).toBeNull();
    expect(result.warnings.map((warning) => warning.code)).toContain('laser-missing');
  });
});

describe('on the shift axis', () => {
  test('present', () => {
    expect(analysed(shiftAxis([{ nm: 1332.4, height: 2000, fwhm: 5 }]), raman).diamondRaman).toMatchObject({ state: 'present' });
  });
  test('moissanite is named, diamond is absent', () => {
    const result = analysed(shiftAxis([{ nm: 767, height: 900, fwhm: 5 }, { nm: 789, height: 2000, fwhm: 5 }, { nm: 965, height: 600, fwhm: 6 }]), raman);
    expect(result.diamondRaman?.state).toBe('absent');
    expect(result.findings.map((finding) => finding.code)).toEqual(expect.arrayContaining(['simulant:MOISSANITE', 'diamond-line:absent']));
    expect(result.peaks.map((peak) => peak.centre)).toEqual(['MOISSANITE', 'MOISSANITE', 'MOISSANITE']);
  });
  test('noise alone is no information', () => {
    expect(analysed(shiftAxis([]), raman).diamondRaman).toMatchObject({ state: 'masked' });
  });
  test('one of many lines of another material is not it', () => {
    const lines = [620.9, 795.8, 1001.4, 1155.3, 1331, 1450.5, 1602.3, 2904.5].map((nm) => ({ nm, height: 800, fwhm: 9 }));
    const result = analysed(shiftAxis(lines), raman);
    expect(result.diamondRaman).toMatchObject({ state: 'masked', present: false });
    expect(result.findings.filter((finding) => finding.supports === 'diamond')).toEqual([]);
  });
  test('beside the lines of a luminescent diamond it is', () => {
    const result = analysed(shiftAxis([{ nm: 1332.4, height: 900, fwhm: 5 }, { nm: 1408, height: 4000, fwhm: 75 }]), { ...raman, laserNm: 532 });
    expect(result.diamondRaman).toMatchObject({ state: 'present' });
    expect(result.peaks.map((peak) => peak.centre)).toEqual(['RAMAN', 'NV0']);
  });
  test('absorbance is no Raman curve', () => {
    const result = analyseSpectrum({ ...shiftAxis([{ nm: 1332.4, height: 900, fwhm: 5 }]), yUnit: 'absorbance' }, { ...PL, ...raman });
    expect(!result.ok && result.error.code).toBe('ordinate-wrong-for-method');
  });
  test('a line at 1345 is not it', () => {
    expect(analysed(shiftAxis([{ nm: 1345, height: 2000, fwhm: 5 }]), raman).diamondRaman?.present).toBe(false);
  });
});
