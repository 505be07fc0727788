import { describe, expect, test } from 'vitest';
import { analyseSpectrum } from '../../../../app/spectra/analyse-spectrum.ts';
import type { AnalysisParameters, AnalysisResult } from '../../../../app/spectra/analysis.ts';
import { infraredInstrument, simulateInfrared } from '../../../../app/spectra/simulate/infrared.ts';
import type { InfraredInstrument } from '../../../../app/spectra/simulate/infrared.ts';
import type { SimulatedStone } from '../../../../app/spectra/simulate/stone.ts';
import { simulatedStone } from '../../../../app/spectra/simulate/stone.ts';
import type { Spectrum } from '../../../../app/spectra/spectrum.ts';

const plain = (change: Partial<SimulatedStone> = {}): SimulatedStone => simulatedStone('natural-iia', 1, { pathMm: 2.5, ...change });
const nitrogen = (A: number, B: number, C = 0, Nplus = 0) => ({ nitrogenPpm: { A, B, C, Nplus } });
const analysed = (spectrum: Spectrum, parameters: Partial<AnalysisParameters> = {}): AnalysisResult => {
  const result = analyseSpectrum(spectrum, { method: 'infrared', temperatureK: 295, calibrationErrorNm: 0.1, ...parameters });
  if (!result.ok) throw new Error(result.error.message);
  return result.value.result;
};
const read = (stone: SimulatedStone, instrument: Partial<InfraredInstrument> = {}, seed = 1): AnalysisResult => analysed(simulateInfrared(stone, infraredInstrument(instrument), seed));
const SEEDS = [1, 2, 3, 4, 5];

describe('type', () => {
  test.each([
    ['IaA', nitrogen(200, 0)], ['IaAB', nitrogen(150, 150)], ['IaB', nitrogen(0, 150)], ['Ib', nitrogen(3, 0, 60, 3)], ['IIa', nitrogen(0, 0)], ['IIb', { ...nitrogen(0, 0), boronPpm: 0.3 }],
  ] as const)('%s', (type, change) => {
    for (const seed of SEEDS) expect(read(plain(change), {}, seed).infrared?.type).toBe(type);
  });
  test('boron never passes for aggregated nitrogen', () => {
    for (const boronPpm of [0.02, 0.05, 0.1, 0.2, 0.4, 0.8]) for (const seed of SEEDS) {
      expect(read(plain({ boronPpm }), {}, seed).findings.filter((f) => f.supports === 'natural')).toEqual([]);
    }
  });
});

describe('amounts', () => {
  test.each([[100, 0], [50, 100], [500, 300], [30, 0]])('A %f ppm, B %f ppm within three standard deviations', (A, B) => {
    for (const seed of SEEDS) {
      const { nitrogenPpm: n, uncertaintyPpm: u } = read(plain({ pathMm: 1, ...nitrogen(A, B) }), {}, seed).infrared!;
      expect(Math.abs(n.A - A)).toBeLessThan(3 * u.A);
      expect(Math.abs(n.B - B)).toBeLessThan(3 * u.B);
      expect(u.A).toBeLessThan(0.15 * A + 5);
    }
  });
  test('the path does not matter', () => {
    const thin = read(plain({ pathMm: 0.8, ...nitrogen(120, 40) })).infrared!;
    const thick = read(plain({ pathMm: 3, ...nitrogen(120, 40) })).infrared!;
    expect(Math.abs(thin.nitrogenPpm.A / thick.nitrogenPpm.A - 1)).toBeLessThan(0.05);
  });
  test('transmittance and percent give what absorbance gives', () => {
    const spectrum = simulateInfrared(plain(nitrogen(80, 30)), infraredInstrument(), 2);
    const expected = analysed(spectrum).infrared!.nitrogenPpm.A;
    const transmittance = spectrum.y.map((a) => 10 ** -a);
    expect(analysed({ ...spectrum, y: transmittance, yUnit: 'transmittance' }).infrared!.nitrogenPpm.A).toBeCloseTo(expected, 6);
    expect(analysed({ ...spectrum, y: transmittance.map((t) => 100 * t), yUnit: 'percent-transmittance' }).infrared!.nitrogenPpm.A).toBeCloseTo(expected, 6);
    const guessed = analysed({ ...spectrum, y: transmittance.map((t) => 100 * t), yUnit: 'unstated' });
    expect(guessed.infrared!.nitrogenPpm.A).toBeCloseTo(expected, 6);
    expect(guessed.warnings.map((w) => w.code)).toContain('ordinate-assumed');
  });
  test('aggregation', () => expect(read(plain(nitrogen(100, 100))).infrared!.aggregationPercent).toBeCloseTo(50, -1));
});

describe('scale and model', () => {
  const spectrum = simulateInfrared(plain(nitrogen(200, 120)), infraredInstrument(), 4);
  test('every amount follows the lattice coefficient that is handed in', () => {
    const [usual, other] = [analysed(spectrum), analysed(spectrum, { twoPhononCoefficient: 12.6 })].map((result) => result.infrared!);
    expect(other!.nitrogenPpm.A / usual!.nitrogenPpm.A).toBeCloseTo(1.05, 6);
    expect(other!.nitrogenPpm.B / usual!.nitrogenPpm.B).toBeCloseTo(1.05, 6);
    expect(other!.aggregationPercent).toBeCloseTo(usual!.aggregationPercent!, 6);
  });
  test('no artefact comes or goes with the coefficient', () => {
    expect(analysed(spectrum, { twoPhononCoefficient: 10 }).warnings).toEqual(analysed(spectrum).warnings);
    expect(analysed(spectrum, { twoPhononCoefficient: 14 }).warnings).toEqual(analysed(spectrum).warnings);
  });
  test('absorption coefficients keep their own scale', () => {
    const alpha: Spectrum = { ...spectrum, y: spectrum.y.map((a) => (a * Math.LN10) / 0.25), yUnit: 'absorption-coefficient' };
    expect(analysed(alpha, { twoPhononCoefficient: 13 }).infrared!.nitrogenPpm.A).toBeCloseTo(analysed(alpha).infrared!.nitrogenPpm.A, 8);
  });
  test('the model temperature states its residence and grows less sure with the amounts', () => {
    const { modelTemperature: three } = analysed(spectrum).infrared!;
    const { modelTemperature: one } = analysed(spectrum, { residenceGa: 1 }).infrared!;
    expect(three!.residenceGa).toBe(3);
    expect(one!.celsius).toBeGreaterThan(three!.celsius + 15);
    expect(three!.celsius).toBeGreaterThan(1050);
    expect(three!.celsius).toBeLessThan(1250);
    expect(three!.uncertainty).toBeGreaterThan(0.5);
    expect(three!.uncertainty).toBeLessThan(20);
  });
  test('no temperature for a stone with A alone, or with none', () => {
    expect(read(plain(nitrogen(200, 0))).infrared!.modelTemperature).toBeNull();
    expect(read(plain(nitrogen(0, 0))).infrared!.modelTemperature).toBeNull();
  });
  test('the covariance carries the uncertainties, and the residual the noise', () => {
    const { covariancePpm: c, uncertaintyPpm: u, residual } = analysed(spectrum).infrared!;
    [u.A, u.B, u.C, u.Nplus].forEach((sigma, k) => expect(Math.sqrt(c![5 * k]!)).toBeCloseTo(sigma, 9));
    expect(c![1]).toBeCloseTo(c![4]!, 9);
    expect(Math.abs(c![1]!)).toBeLessThan(u.A * u.B);
    expect(residual).toBeGreaterThan(0);
  });
});

describe('hydrogen, platelets, the CVD line', () => {
  test('3107 with aggregates supports natural growth', () => {
    const result = read(plain({ ...nitrogen(200, 60), line3107: 1.5 }));
    expect(result.infrared!.line3107).toBeCloseTo(1.5, 1);
    expect(result.findings.find((f) => f.code === 'infrared:3107')).toMatchObject({ supports: 'natural', strength: 'supporting' });
  });
  test('3107 alone does not', () => {
    expect(read(plain({ line3107: 1.5 })).findings.find((f) => f.code === 'infrared:3107')).toMatchObject({ supports: 'none' });
  });
  test('3123 is CVD growth and is not 3107', () => {
    const result = read(plain({ line3123: 0.5 }));
    expect(result.infrared).toMatchObject({ line3107: null, line3123: expect.closeTo(0.5, 1) });
    expect(result.findings.find((f) => f.code === 'infrared:3123')).toMatchObject({ supports: 'grown-cvd', strength: 'strong' });
  });
  test('an instrument too coarse to part them claims no CVD line', () => {
    const spectrum = simulateInfrared(plain({ line3123: 0.5 }), infraredInstrument(), 1);
    expect(analysed(spectrum, { resolution: 8 }).infrared!.line3123).not.toBeNull();
    expect(analysed(spectrum, { resolution: 12 }).infrared!.line3123).toBeNull();
  });
  test('a stone without them shows none of them, over seeds', () => {
    for (const seed of SEEDS) expect(read(plain(), { noise: 0.003 }, seed).infrared).toMatchObject({ line3107: null, line3123: null, platelet: null, boronPpm: null });
  });
  test('platelets come with B aggregates', () => expect(read(plain(nitrogen(50, 200))).infrared!.platelet).toBeGreaterThan(1));
});

describe('what can not be read says so', () => {
  test.each(['glass', 'cubic-zirconia', 'corundum', 'moissanite'] as const)('%s has no type', (kind) => {
    const result = read(simulatedStone(kind, 1));
    expect(result.infrared?.type).toBe('not-determined');
    expect(result.findings.filter((f) => f.supports !== 'none')).toEqual([]);
  });
  test('noise has no type', () => {
    const spectrum = simulateInfrared(plain(), infraredInstrument({ noise: 1 }), 3);
    expect(analysed(spectrum).infrared?.type).toBe('not-determined');
  });
  test('a saturated lattice is told', () => {
    const result = read(plain({ pathMm: 6, ...nitrogen(20, 0) }), { ceiling: 2.6 });
    expect(result.warnings.map((w) => w.code)).toContain('two-phonon-saturated');
  });
  test('a saturated nitrogen region is told', () => {
    expect(read(plain({ pathMm: 3, ...nitrogen(1500, 500) })).warnings.map((w) => w.code)).toContain('one-phonon-saturated');
  });
  test('without 1000–1400 cm-1 there is no type', () => {
    expect(read(plain(nitrogen(200, 0)), { fromCm1: 1500 }).infrared?.type).toBe('not-determined');
  });
  test('without the two-phonon region there is no type', () => {
    expect(read(plain(nitrogen(200, 0)), { toCm1: 1800 }).infrared?.type).toBe('not-determined');
  });
  test('carbon dioxide of the air is told', () => {
    const spectrum = simulateInfrared(plain(), infraredInstrument({ air: 0 }), 1);
    const y = spectrum.y.map((a, i) => a + 0.2 * Math.exp(-(((spectrum.x[i]! - 2361) / 11) ** 2)) + 0.2 * Math.exp(-(((spectrum.x[i]! - 2339) / 11) ** 2)));
    expect(analysed({ ...spectrum, y }).warnings.map((w) => w.code)).toContain('carbon-dioxide');
    expect(analysed(spectrum).warnings.map((w) => w.code)).not.toContain('carbon-dioxide');
  });
});

describe('lines by name', () => {
  /** A weak line without a name, of the noise, may stand among them. */
  const names = (result: AnalysisResult): string[] => result.peaks.flatMap((peak) => (peak.snr > 15 ? [peak.centre ?? `unknown at ${peak.position.toFixed(0)}`] : []));
  test('the lattice’s own maxima are no unknown lines', () => {
    for (const seed of SEEDS) expect(names(read(plain(), { air: 0 }, seed))).toEqual(['IR-2P1976', 'IR-2P2030', 'IR-2P2160']);
  });
  test('1290 is boron only beside 2802', () => {
    for (const seed of SEEDS) {
      expect(names(read(plain({ boronPpm: 0.4 }), { air: 0 }, seed))).toEqual(['IR-B1290', 'IR-2P1976', 'IR-2P2030', 'IR-2P2160', 'IR-B2802']);
      expect(names(read(plain(nitrogen(40, 0)), {}, seed))).not.toContain('IR-B1290');
    }
  });
});
