// Real curves of a natural diamond (open geoscience data, CC BY 4.0), from the folder that CULET_SAMPLES names; not kept in the project.
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { analyseSpectrum } from '../../../app/spectra/analyse-spectrum.ts';
import type { AnalysisParameters, AnalysisResult } from '../../../app/spectra/analysis.ts';
import type { XUnit } from '../../../app/spectra/spectrum.ts';

const folder = process.env['CULET_SAMPLES'];
const file = (name: string): string => join(folder ?? '', name);
const available = folder !== undefined && existsSync(file('diamond-natural-infrared.dpt'));
if (!available) console.log('CULET_SAMPLES names no folder with the diamond curves: they are not tried.');

function analysed(name: string, xUnit: XUnit, parameters: Partial<AnalysisParameters> & Pick<AnalysisParameters, 'method'>): AnalysisResult {
  const rows = readFileSync(file(name), 'utf8').split(/\r?\n/).filter((line) => line !== '' && !line.startsWith('#')).map((line) => line.trim().split(/\s+/).map(Number));
  const spectrum = { x: Float64Array.from(rows, (row) => row[0]!), y: Float64Array.from(rows, (row) => row[1]!), xUnit, yUnit: 'unstated' as const };
  const result = analyseSpectrum(spectrum, { temperatureK: 295, calibrationErrorNm: 0.1, ...parameters });
  if (!result.ok) throw new Error(result.error.message);
  return result.value.result;
}

describe.runIf(available)('a natural diamond', () => {
  const luminescence = (): AnalysisResult => analysed('diamond-natural-photoluminescence-77K.esp', 'angstrom', { method: 'photoluminescence', laserNm: 532, temperatureK: 77 });
  test('its photoluminescence at 77 K shows the diamond line near 572.4 nm', () => {
    expect(luminescence().diamondRaman).toMatchObject({ state: 'present' });
    expect(luminescence().diamondRaman!.foundNm).toBeCloseTo(572.41, 1);
  });
  test('and nothing of growth in a laboratory', () => {
    expect(luminescence().findings.filter((finding) => finding.supports.startsWith('grown'))).toEqual([]);
  });
  test('its infrared curve is diamond’s, with hydrogen and carbon dioxide, and claims no type that it can not carry', () => {
    const result = analysed('diamond-natural-infrared.dpt', 'cm-1', { method: 'infrared' });
    expect(result.findings.map((finding) => finding.code)).toEqual(expect.arrayContaining(['infrared:lattice', 'infrared:3107']));
    expect(result.warnings.map((warning) => warning.code)).toContain('carbon-dioxide');
    expect(result.infrared!.type).not.toBe('IIa');
    expect(result.infrared!.line3123).toBeNull();
  });
});
