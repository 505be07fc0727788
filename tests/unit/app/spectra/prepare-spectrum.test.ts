import { describe, expect, test } from 'vitest';
import type { AnalysisParameters } from '../../../../app/spectra/analysis.ts';
import { analyseSpectrum } from '../../../../app/spectra/analyse-spectrum.ts';
import type { Spectrum } from '../../../../app/spectra/spectrum.ts';
import { analysed, centres, madeSpectrum, PL, RAMAN_532 } from './made-spectra.ts';

const good = madeSpectrum([RAMAN_532, { nm: 637.4, height: 2000, fwhm: 2.7 }]);
const failure = (spectrum: Spectrum, parameters: Partial<AnalysisParameters> = {}): string => {
  const result = analyseSpectrum(spectrum, { ...PL, ...parameters });
  return result.ok ? 'ok' : result.error.code;
};
const replaced = (values: (i: number, value: number) => number): Spectrum => ({ ...good, y: good.y.map((value, i) => values(i, value)) });

describe('bad input is refused in words', () => {
  test.each<[string, Spectrum]>([
    ['too-few-points', { ...good, x: new Float64Array(0), y: new Float64Array(0) }],
    ['too-few-points', { ...good, x: Float64Array.of(600, 601), y: Float64Array.of(1, 2) }],
    ['length-mismatch', { ...good, y: good.y.slice(1) }],
    ['constant', replaced(() => 7)],
    ['not-finite', replaced((i, value) => (i % 10 === 0 ? Number.NaN : value))],
    ['not-finite', replaced((i, value) => (i % 10 === 0 ? Infinity : value))],
    ['axis-unit-missing', { ...good, xUnit: 'pixel' }],
    ['axis-unit-missing', { ...good, xUnit: 'unstated' }],
    ['axis-not-monotonic', { ...good, x: good.x.map((_, i) => 600 + (i % 50)) }],
    ['axis-not-monotonic', { ...good, x: good.x.map(() => 600) }],
    ['axis-implausible', { ...good, x: good.x.map((nm) => nm * 10) }],
    ['axis-implausible', { ...good, x: good.x.map((nm) => nm - 800) }],
    ['ordinate-wrong-for-method', { ...good, yUnit: 'transmittance' }],
  ])('%s', (code, spectrum) => expect(failure(spectrum)).toBe(code));
  test('a Raman-shift axis without a laser', () => expect(failure({ ...good, x: good.x.map((nm) => nm - 500), xUnit: 'raman-shift' }, { laserNm: undefined })).toBe('laser-missing'));
  test.each(['infrared', 'absorption', 'ultraviolet-transmission'] as const)('a Raman-shift axis for %s', (method) =>
    expect(failure({ ...good, xUnit: 'raman-shift', yUnit: 'absorbance' }, { method })).toBe('axis-wrong-for-method'));
  test('its sentence names the unit and the spectrum as people do', () => {
    const out = analyseSpectrum({ ...good, yUnit: 'absorbance' }, { ...PL, method: 'infrared' });
    expect(out.ok ? '' : out.error.message).toMatch(/^Read as nm, the axis runs from .* cm⁻¹, where an infrared spectrum can’t lie/);
  });
  test('a visible spectrum for infrared', () => expect(failure({ ...good, yUnit: 'absorbance' }, { method: 'infrared' })).toBe('axis-implausible'));
  test('ångström taken for nm: the sentence says so', () => {
    const result = analyseSpectrum({ ...good, x: good.x.map((nm) => nm * 10) }, PL);
    expect(!result.ok && result.error.message).toContain('ångström');
  });
});

describe('harmless faults are mended and told', () => {
  test('a few missing values', () => expect(analysed(replaced((i, value) => (i === 5 || i === 900 ? Number.NaN : value))).warnings.map((w) => w.code)).toContain('points-not-finite'));
  test('descending order gives the same peaks', () => {
    const turned = { ...good, x: good.x.slice().reverse(), y: good.y.slice().reverse() };
    expect(analysed(turned).peaks).toEqual(analysed(good).peaks);
  });
  test('repeated positions are averaged', () => {
    const x = good.x.slice();
    x[101] = x[100]!;
    const result = analysed({ ...good, x });
    expect(result.warnings.map((w) => w.code)).toContain('axis-duplicates');
    expect(centres(result)).toContain('NV-');
  });
});

test.each(['angstrom', 'cm-1', 'ev', 'raman-shift'] as const)('the same light on an axis in %s gives the same peaks in nm', async (unit) => {
  const { convertPositions } = await import('../../../../app/spectra/convert-axis.ts');
  const x = convertPositions(good.x, 'nm', unit, { laserNm: 532 });
  const result = analysed({ ...good, x: x.ok ? x.value : good.x, xUnit: unit }, { resolution: undefined });
  const plain = analysed(good, { resolution: undefined });
  expect(centres(result)).toEqual(centres(plain));
  result.peaks.forEach((peak, k) => expect(Math.abs(peak.position - plain.peaks[k]!.position)).toBeLessThan(1e-4));
  expect(result.peaks[0]!.unit).toBe('nm');
});

test('the input arrays are not touched', () => {
  const x = good.x.slice();
  const y = good.y.slice();
  analysed(good);
  expect(good.x).toEqual(x);
  expect(good.y).toEqual(y);
});
