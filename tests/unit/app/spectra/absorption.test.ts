import { describe, expect, test } from 'vitest';
import { absorptionInstrument, simulateAbsorption } from '../../../../app/spectra/simulate/absorption.ts';
import { simulateUltravioletTransmission, ULTRAVIOLET_DEFAULTS } from '../../../../app/spectra/simulate/ultraviolet-transmission.ts';
import type { StoneKind } from '../../../../app/spectra/simulate/stone.ts';
import { simulatedStone } from '../../../../app/spectra/simulate/stone.ts';
import { gaussian } from '../../../../app/spectra/simulate/line-shapes.ts';
import { analysed, centres, codes } from './made-spectra.ts';

const absorption = { method: 'absorption', resolution: undefined, laserNm: undefined } as const;
const ultraviolet = { method: 'ultraviolet-transmission', resolution: undefined, laserNm: undefined } as const;
const read = (kind: StoneKind, seed: number) => analysed(simulateAbsorption(simulatedStone(kind, seed), absorptionInstrument(), seed), absorption);
const SEEDS = [1, 2, 3, 4, 5];

describe('absorption', () => {
  test.each(SEEDS)('natural type Ia shows the cape series (seed %i)', (seed) => {
    const result = read('natural-ia', seed);
    expect(centres(result)).toEqual(expect.arrayContaining(['N3', 'N2']));
    expect(result.peaks.find((peak) => peak.centre === 'N3')!.position).toBeCloseTo(415.3, 0);
  });
  test.each(SEEDS)('an irradiated stone shows the vacancy line (seed %i)', (seed) => expect(centres(read('natural-irradiated', seed))).toContain('GR1'));
  test.each(['natural-iia', 'hpht', 'glass', 'cubic-zirconia'] as const)('%s shows nothing natural', (kind) => {
    for (const seed of SEEDS) expect(read(kind, seed).findings.filter((f) => f.supports === 'natural')).toEqual([]);
  });
  test('transmittance is turned into absorbance first', () => {
    const spectrum = simulateAbsorption(simulatedStone('natural-ia', 1), absorptionInstrument(), 1);
    const turned = analysed({ ...spectrum, y: spectrum.y.map((a) => 100 * 10 ** -a), yUnit: 'percent-transmittance' }, absorption);
    expect(centres(turned)).toEqual(centres(analysed(spectrum, absorption)));
  });
  test('a broad band at 480 nm is told', () => {
    const spectrum = simulateAbsorption(simulatedStone('natural-iia', 1), absorptionInstrument(), 1);
    const y = spectrum.y.map((a, i) => a + 0.4 * gaussian(spectrum.x[i]!, 480, 90));
    expect(codes(analysed({ ...spectrum, y }, absorption))).toContain('band:BAND480');
    expect(codes(analysed(spectrum, absorption)).filter((code) => code.startsWith('band:'))).toEqual([]);
  });
});

describe('ultraviolet transmission', () => {
  const uv = (kind: StoneKind, seed: number) => analysed(simulateUltravioletTransmission(simulatedStone(kind, seed), ULTRAVIOLET_DEFAULTS, seed), ultraviolet);
  test.each(SEEDS)('type Ia is opaque with an edge near 300–330 nm (seed %i)', (seed) => {
    const result = uv('natural-ia', seed);
    expect(result.ultraviolet!.ratio).toBeLessThan(0.02);
    expect(result.ultraviolet!.edgeNm).toBeGreaterThan(295);
    expect(result.ultraviolet!.edgeNm).toBeLessThan(335);
    expect(codes(result)).toEqual(['ultraviolet:opaque']);
  });
  test.each(['natural-iia', 'cvd-treated', 'hpht'] as const)('%s is transparent to the fundamental edge, and that speaks for no origin', (kind) => {
    const result = uv(kind, 2);
    expect(result.ultraviolet!.ratio).toBeGreaterThan(0.2);
    expect(result.ultraviolet!.edgeNm).toBeGreaterThan(220);
    expect(result.ultraviolet!.edgeNm).toBeLessThan(240);
    expect(result.findings[0]).toMatchObject({ supports: 'none', strength: 'neutral' });
  });
  test('opaqueness is never more than supporting', () => {
    for (const seed of SEEDS) expect(uv('natural-ia', seed).findings.every((f) => f.strength === 'supporting' || f.strength === 'neutral')).toBe(true);
  });
  test('counts without reference are told', () => {
    const spectrum = simulateUltravioletTransmission(simulatedStone('natural-iia', 1), ULTRAVIOLET_DEFAULTS, 1);
    expect(analysed({ ...spectrum, yUnit: 'counts' }, ultraviolet).warnings.map((w) => w.code)).toContain('no-reference');
  });
  test('no light, no reading', () => {
    const spectrum = simulateUltravioletTransmission(simulatedStone('natural-iia', 1), ULTRAVIOLET_DEFAULTS, 1);
    const result = analysed({ ...spectrum, y: spectrum.y.map((t) => t * 0.0001 + (t - 0.2) * 0.001) }, ultraviolet);
    expect(result.findings.filter((f) => f.supports === 'natural')).toEqual([]);
  });
  test('a curve that ends at 300 nm gives no ratio', () => {
    const spectrum = simulateUltravioletTransmission(simulatedStone('natural-ia', 1), { ...ULTRAVIOLET_DEFAULTS, fromNm: 300 }, 1);
    expect(analysed(spectrum, ultraviolet).ultraviolet!.ratio).toBeNull();
  });
});
