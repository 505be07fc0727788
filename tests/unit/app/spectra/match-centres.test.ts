import { describe, expect, test } from 'vitest';
import { analysed, centres, codes, madeSpectrum, RAMAN_532 } from './made-spectra.ts';

describe('close pairs are told apart only where the data carry them', () => {
  test('the diamond line alone does not yield NV0', () => {
    const result = analysed(madeSpectrum([RAMAN_532]));
    expect(centres(result)).toEqual(['RAMAN']);
    expect(result.diamondRaman?.state).toBe('present');
  });
  test('the diamond line and NV0 side by side', () => {
    expect(centres(analysed(madeSpectrum([RAMAN_532, { nm: 575.1, height: 2000, fwhm: 2.2 }])))).toEqual(['RAMAN', 'NV0']);
  });
  test('a coarse instrument can not part the diamond line from NV0', () => {
    const result = analysed(madeSpectrum([{ nm: 573.5, height: 3000, fwhm: 5 }]), { resolution: 5 });
    expect(result.diamondRaman?.state).not.toBe('present');
    expect(centres(result)).not.toContain('NV0');
    expect(result.findings.every((finding) => finding.supports !== 'diamond')).toBe(true);
  });
  test('silicon at room temperature, resolved', () => {
    const result = analysed(madeSpectrum([RAMAN_532, { nm: 738, height: 2000, fwhm: 5.5 }]));
    expect(centres(result)).toContain('SIV');
    expect(result.findings.find((finding) => finding.code === 'centre:SIV')).toMatchObject({ strength: 'strong', supports: 'grown' });
  });
  test('silicon and vacancy blur into each other on a coarse instrument', () => {
    const result = analysed(madeSpectrum([{ nm: 739.3, height: 2000, fwhm: 7 }]), { resolution: 6 });
    const peak = result.peaks.find((p) => Math.abs(p.position - 739.3) < 1)!;
    expect(peak.centre).toBeNull();
    expect(peak.ambiguousWith).toEqual(expect.arrayContaining(['SIV', 'GR1']));
    expect(result.findings.filter((finding) => finding.supports === 'grown')).toEqual([]);
  });
  test('the vacancy line is not silicon', () => {
    const result = analysed(madeSpectrum([RAMAN_532, { nm: 741.3, height: 2000, fwhm: 4 }]));
    expect(centres(result)).toContain('GR1');
    expect(centres(result)).not.toContain('SIV');
  });
  test('H3 keeps its name and says that 3H is possible', () => {
    const result = analysed(madeSpectrum([{ nm: 503.3, height: 2000, fwhm: 3 }], { from: 480, to: 560 }), { laserNm: 405, resolution: 1 });
    const peak = result.peaks.find((p) => p.centre === 'H3')!;
    expect(peak.ambiguousWith).toContain('3H');
  });
});

describe('the 596/597 pair', () => {
  const pair = (fwhm: number) => [RAMAN_532, { nm: 596.5, height: 1200, fwhm }, { nm: 597.2, height: 1000, fwhm }];
  test('resolved on a cold stone and a fine instrument: both lines', () => {
    const result = analysed(madeSpectrum(pair(0.3), { points: 7200 }), { temperatureK: 77, resolution: 0.2 });
    expect(centres(result)).toEqual(expect.arrayContaining(['CVD596', 'CVD597']));
    expect(result.findings.filter((finding) => finding.supports === 'grown-cvd' && finding.strength === 'strong')).toHaveLength(2);
  });
  test('one maximum is never two lines, and weighs less', () => {
    const result = analysed(madeSpectrum(pair(1.4)), { resolution: 1 });
    expect(centres(result)).toContain('CVD596-597');
    expect(centres(result)).not.toContain('CVD596');
    expect(result.findings.find((finding) => finding.code === 'centre:CVD596-597')).toMatchObject({ strength: 'supporting' });
  });
  test('the radiation line at 594.4 is not the pair', () => {
    expect(centres(analysed(madeSpectrum([RAMAN_532, { nm: 594.4, height: 1500, fwhm: 1.5 }])))).toContain('595');
  });
});

describe('doublets', () => {
  test('the silicon doublet parts on a cold stone and a very fine instrument', () => {
    const spectrum = madeSpectrum([{ nm: 736.6, height: 900, fwhm: 0.12 }, { nm: 736.9, height: 1000, fwhm: 0.12 }], { from: 725, to: 748, points: 1500, noise: 5 });
    const result = analysed(spectrum, { temperatureK: 77, resolution: 0.1, laserNm: 514.5 });
    expect(result.peaks.filter((peak) => peak.centre === 'SIV')).toHaveLength(2);
    expect(result.findings.find((finding) => finding.code === 'centre:SIV')?.statement).toContain('both lines');
  });
  test('the nickel pair parts at 0.5 nm', () => {
    const spectrum = madeSpectrum([{ nm: 883, height: 900, fwhm: 0.6 }, { nm: 884.7, height: 1000, fwhm: 0.6 }]);
    const peaks = analysed(spectrum, { temperatureK: 77 }).peaks.filter((peak) => peak.centre === 'NI883');
    expect(peaks.map((peak) => peak.position)).toEqual([expect.closeTo(883, 1), expect.closeTo(884.7, 1)]);
  });
});

describe('what must not be named', () => {
  test('a line at 738 as narrow as 1 nm at room temperature', () => {
    expect(centres(analysed(madeSpectrum([RAMAN_532, { nm: 738, height: 3000, fwhm: 1 }])))).not.toContain('SIV');
  });
  test.each([546.07, 544.4, 542.4, 611.5])('lamp light at %f nm', (nm) => {
    const result = analysed(madeSpectrum([RAMAN_532, { nm, height: 2000, fwhm: 0.6 }]));
    expect(centres(result)).toEqual(['RAMAN']);
    expect(result.warnings.map((warning) => warning.code)).toContain('artefact-line');
  });
  test('a line below five times the noise', () => {
    expect(codes(analysed(madeSpectrum([RAMAN_532, { nm: 637.4, height: 35, fwhm: 2.7 }])))).not.toContain('centre:NV-');
  });
  test('a broad band where N3 would be', () => {
    const result = analysed(madeSpectrum([{ nm: 418, height: 3000, fwhm: 25 }], { from: 408, to: 560 }), { laserNm: 395, resolution: 1 });
    expect(centres(result)).not.toContain('N3');
  });
  test('a Raman line of another material at the place of N3', () => {
    const result = analysed(madeSpectrum([{ nm: 415.3, height: 3000, fwhm: 2 }], { from: 408, to: 560 }), { laserNm: 405, resolution: 1 });
    expect(result.findings.filter((finding) => finding.supports === 'natural')).toEqual([]);
  });
});

test('lines of a cooled stone in a run said to be warm are named, and the temperature is asked for', () => {
  const result = analysed(madeSpectrum([RAMAN_532, { nm: 575, height: 2000, fwhm: 0.6 }, { nm: 736.75, height: 2000, fwhm: 0.7 }]));
  expect(centres(result)).toEqual(['RAMAN', 'NV0', 'SIV']);
  expect(result.warnings.map((warning) => warning.code)).toContain('narrow-for-temperature');
});

test('a clear centre far from the laser vouches for N3 beside it', () => {
  const lines = [{ nm: 415.3, height: 3000, fwhm: 3 }, { nm: 503.3, height: 1500, fwhm: 3.2 }];
  expect(centres(analysed(madeSpectrum(lines, { from: 408, to: 560 }), { laserNm: 405, resolution: 1 }))).toEqual(['N3', 'H3']);
});

test('a bump on the red side of NV0 belongs to NV0', () => {
  const result = analysed(madeSpectrum([RAMAN_532, { nm: 575.1, height: 4000, fwhm: 2.5 }, { nm: 604, height: 1500, fwhm: 14 }]), {});
  const bump = result.peaks.find((peak) => Math.abs(peak.position - 604) < 3)!;
  expect(bump).toMatchObject({ centre: null, sidebandOf: 'NV0' });
});

test('a bump on the red side of a line that may be SiV or GR1 is a sideband of the one or the other, and neither is preferred', () => {
  const result = analysed(madeSpectrum([RAMAN_532, { nm: 739.6, height: 4000, fwhm: 6.5 }, { nm: 766, height: 1200, fwhm: 14 }]), { resolution: 4 });
  const [line, bump] = [739.6, 766].map((nm) => result.peaks.find((peak) => Math.abs(peak.position - nm) < 3)!);
  expect(line).toMatchObject({ centre: null, sidebandOf: null });
  expect(line!.ambiguousWith).toEqual(expect.arrayContaining(['SIV', 'GR1']));
  expect(bump).toMatchObject({ centre: null, ambiguousWith: line!.ambiguousWith });
  expect(line!.ambiguousWith).toContain(bump!.sidebandOf);
});
