import { describe, expect, test } from 'vitest';
import { ANALYSABLE, type AnalysisParameters } from '../../../../app/spectra/analysis.ts';
import { analyseSpectrum } from '../../../../app/spectra/analyse-spectrum.ts';
import { absorptionInstrument, simulateAbsorption } from '../../../../app/spectra/simulate/absorption.ts';
import { infraredInstrument, simulateInfrared } from '../../../../app/spectra/simulate/infrared.ts';
import { emissionInstrument } from '../../../../app/spectra/simulate/instrument.ts';
import { simulatePhotoluminescence } from '../../../../app/spectra/simulate/photoluminescence.ts';
import { seededRandom } from '../../../../app/spectra/simulate/seeded-random.ts';
import { simulatedStone } from '../../../../app/spectra/simulate/stone.ts';
import { simulateUltravioletTransmission, ULTRAVIOLET_DEFAULTS } from '../../../../app/spectra/simulate/ultraviolet-transmission.ts';
import type { Spectrum } from '../../../../app/spectra/spectrum.ts';

/** Curves of one grown stone: whatever is done to them, none may speak for natural growth. */
const stone = simulatedStone('cvd-as-grown', 3);
const CURVES: Readonly<Record<AnalysisParameters['method'], Spectrum>> = {
  photoluminescence: simulatePhotoluminescence(stone, emissionInstrument(), 3),
  raman: simulatePhotoluminescence(stone, emissionInstrument(), 4),
  absorption: simulateAbsorption(stone, absorptionInstrument(), 3),
  infrared: simulateInfrared(stone, infraredInstrument(), 3),
  'ultraviolet-transmission': simulateUltravioletTransmission(stone, ULTRAVIOLET_DEFAULTS, 3),
};

type Outcome = { readonly code: string; readonly warnings: readonly string[] };

/** The error's code or the warnings; the sentences are checked on the way, and that nothing calls the stone natural. */
function outcome(spectrum: Spectrum, parameters: Partial<AnalysisParameters>): Outcome {
  const result = analyseSpectrum(spectrum, { method: 'photoluminescence', laserNm: 532, temperatureK: 295, calibrationErrorNm: 0.1, ...parameters });
  const sentences = result.ok ? result.value.result.warnings.map((warning) => warning.message) : [result.error.message];
  for (const sentence of sentences) expect(sentence).toMatch(/^[“A-Z\d][^]*[.!?)]$/u);
  for (const sentence of sentences) expect(sentence).not.toMatch(/undefined|NaN|Infinity|\[object/);
  if (!result.ok) return { code: result.error.code, warnings: [] };
  expect(result.value.result.findings.filter((finding) => finding.supports === 'natural')).toEqual([]);
  for (const peak of result.value.result.peaks) expect(Number.isFinite(peak.position) && Number.isFinite(peak.height)).toBe(true);
  return { code: 'ok', warnings: result.value.result.warnings.map((warning) => warning.code) };
}

const everyTenth = (values: Float64Array, put: number): Float64Array => values.map((value, i) => (i % 10 === 0 ? put : value));
const shuffled = (x: Float64Array): Float64Array => {
  const r = seededRandom(5);
  return x.map((_, i) => x[(i * 7919 + r.below(3)) % x.length]!);
};

/** What is done to a curve, and the code it must meet. */
const DAMAGE: readonly (readonly [string, string, (spectrum: Spectrum) => Spectrum])[] = [
  ['not a number', 'not-finite', (s) => ({ ...s, y: everyTenth(s.y, Number.NaN) })],
  ['infinities', 'not-finite', (s) => ({ ...s, y: everyTenth(s.y, Infinity) })],
  ['negative infinities', 'not-finite', (s) => ({ ...s, y: everyTenth(s.y, -Infinity) })],
  ['an axis that is not numbers', 'not-finite', (s) => ({ ...s, x: everyTenth(s.x, Number.NaN) })],
  ['constant', 'constant', (s) => ({ ...s, y: s.y.map(() => 0.4) })],
  ['empty', 'too-few-points', (s) => ({ ...s, x: new Float64Array(0), y: new Float64Array(0) })],
  ['two points', 'too-few-points', (s) => ({ ...s, x: s.x.slice(0, 2), y: s.y.slice(0, 2) })],
  ['not in order', 'axis-not-monotonic', (s) => ({ ...s, x: shuffled(s.x) })],
  ['one position for all', 'axis-not-monotonic', (s) => ({ ...s, x: s.x.map(() => s.x[0]!) })],
  ['values missing', 'length-mismatch', (s) => ({ ...s, y: s.y.slice(0, -3) })],
];

describe.each(ANALYSABLE)('%s', (method) => {
  test.each(DAMAGE)('%s', (_, code, damage) => {
    const x = method === 'raman' ? { ...CURVES.raman, x: CURVES.raman.x.map((nm) => 1e7 / 532 - 1e7 / nm), xUnit: 'raman-shift' as const } : CURVES[method];
    expect(outcome(damage(x), { method }).code).toBe(code);
  });
  test('each position twice is averaged and told', () => {
    const s = CURVES[method];
    const twice = { ...s, x: Float64Array.from(s.x, (_, i) => s.x[i - (i % 2)]!) };
    const { code, warnings } = outcome(twice, { method });
    expect(code === 'ok' ? warnings.includes('axis-duplicates') : ['axis-not-monotonic', 'axis-implausible'].includes(code)).toBe(true);
  });
  test.each(ANALYSABLE.filter((other) => other !== method))('the curve of %s', (other) => {
    const { code } = outcome(CURVES[other], { method });
    // A visible curve may be read as absorption though it is ultraviolet's: what it shows is then still no sign of natural growth.
    expect(code).toMatch(/^(ok|axis-implausible|ordinate-wrong-for-method|axis-wrong-for-method)$/);
  });
});

describe('a wrong laser wavelength', () => {
  test.each([325, 405, 488, 514.5, 632.8, 785, 830, 1064])('%f nm instead of 532 is doubted, or finds nothing; never natural, never another material', (laserNm) => {
    const result = analyseSpectrum(CURVES.photoluminescence, { method: 'photoluminescence', laserNm, temperatureK: 295, calibrationErrorNm: 0.1 });
    if (!result.ok) throw new Error(result.error.message);
    const { findings, diamondRaman } = result.value.result;
    expect(findings.filter((finding) => finding.supports === 'natural' || finding.supports === 'not-diamond')).toEqual([]);
    expect(diamondRaman?.state ?? 'masked').not.toBe('present');
  });
});
