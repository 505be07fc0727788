import { expect, test } from 'vitest';
import { applyCalibration } from '../../../../app/calibration/apply-calibration.ts';
import { readSpectrumFile } from '../../../../app/files/read-spectrum-file.ts';
import { writeDelimited } from '../../../../app/files/write-delimited.ts';
import { writeJcampDx } from '../../../../app/files/write-jcamp-dx.ts';
import { vacuumFromAir } from '../../../../app/spectra/convert-axis.ts';
import type { Spectrum } from '../../../../app/spectra/spectrum.ts';
import { analysed, madeSpectrum, RAMAN_532 } from './made-spectra.ts';

// 0.2 nm lie between air and vacuum at 737 nm, as much as between neighbouring centres.
const inAir = madeSpectrum([RAMAN_532, { nm: 737.5, height: 2500, fwhm: 5 }]);
const inVacuum: Spectrum = { ...inAir, x: inAir.x.map(vacuumFromAir), xUnit: 'nm-vacuum' };

test('a curve in vacuum says what the same curve in air says', () => {
  const [air, vacuum] = [analysed(inAir), analysed(inVacuum)];
  expect(air.peaks.length).toBeGreaterThan(1);
  expect(vacuum.peaks.map((peak) => peak.centre)).toEqual(air.peaks.map((peak) => peak.centre));
  vacuum.peaks.forEach((peak, i) => { expect(peak.position).toBeCloseTo(air.peaks[i]!.position, 6); });
});
test.each<[string, (block: Parameters<typeof writeDelimited>[0][number]) => string]>([
  ['text', (block) => writeDelimited([block])],
  ['JCAMP-DX', (block) => writeJcampDx(block, { dataType: 'PHOTOLUMINESCENCE SPECTRUM', origin: 'made', owner: 'made' })],
])('%s written in vacuum reads back in vacuum', (_, write) => {
  const read = readSpectrumFile('made', new TextEncoder().encode(write({ ...inVacuum, title: 'made', xUnitText: '', yUnitText: '' })));
  expect(read.ok && [read.value.blocks[0]!.xUnit, read.value.blocks[0]!.x.length]).toEqual(['nm-vacuum', inVacuum.x.length]);
  if (read.ok) expect(Math.abs(read.value.blocks[0]!.x[7]! - inVacuum.x[7]!)).toBeLessThan(1e-9);
});
test.each(['Wavelength (nm, vacuum)', 'Vacuum wavelength [nm]'])('a column “%s” is in vacuum', (name) => {
  const read = readSpectrumFile('made.csv', new TextEncoder().encode(`${name};Counts\n${Array.from({ length: 30 }, (_, i) => `${400 + i};${i % 7}`).join('\n')}`));
  expect(read.ok && read.value.blocks[0]!.xUnit).toBe('nm-vacuum');
});
test('a calibration in air corrects the same light in vacuum', () => {
  const fit = { standard: 'made', unit: 'nm', degree: 1, middle: 650, half: 150, coefficients: [0.4, 0.1], covariance: [0, 0, 0, 0], range: [500, 800], residualRms: 0, leaveOneOutRms: 0, misfit: 0, deviationRms: 0, largestDeviation: 0, fwhm: 0.5 } as const;
  const plain = { ...fit, coefficients: [...fit.coefficients], covariance: [...fit.covariance], range: [...fit.range] as [number, number] };
  const [air, vacuum] = [applyCalibration(plain, inAir), applyCalibration(plain, inVacuum)];
  if (!air.ok || !vacuum.ok) throw new Error('refused');
  expect(vacuum.value.x[100]!).toBeCloseTo(vacuumFromAir(air.value.x[100]!), 9);
  expect(air.value.x[100]! - inAir.x[100]!).toBeGreaterThan(0.25);
});
