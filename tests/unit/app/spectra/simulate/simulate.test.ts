import { describe, expect, test } from 'vitest';
import { diamondIndex, latticeTransmittance } from '../../../../../app/spectra/simulate/lattice-transmittance.ts';
import { emissionInstrument } from '../../../../../app/spectra/simulate/instrument.ts';
import { voigt, voigtWidth } from '../../../../../app/spectra/simulate/line-shapes.ts';
import { simulatePhotoluminescence } from '../../../../../app/spectra/simulate/photoluminescence.ts';
import { seededRandom } from '../../../../../app/spectra/simulate/seeded-random.ts';
import { simulatedStone, STONE_KINDS } from '../../../../../app/spectra/simulate/stone.ts';

describe('seeded numbers', () => {
  test('one seed, one stream', () => {
    const a = seededRandom(12);
    const b = seededRandom(12);
    for (let i = 0; i < 50; i++) expect(a.uniform()).toBe(b.uniform());
    expect(seededRandom(13).uniform()).not.toBe(seededRandom(12).uniform());
  });
  test('uniform and normal moments', () => {
    const r = seededRandom(7);
    let sum = 0;
    let square = 0;
    let flat = 0;
    const n = 50_000;
    for (let i = 0; i < n; i++) {
      const z = r.normal();
      sum += z;
      square += z * z;
      flat += r.uniform();
    }
    expect(Math.abs(sum / n)).toBeLessThan(0.02);
    expect(Math.abs(square / n - 1)).toBeLessThan(0.03);
    expect(Math.abs(flat / n - 0.5)).toBeLessThan(0.01);
  });
});

test('Voigt width against exact values (Lorentz half widths 1, 0.5, 1; sigmas 1, 1, 0.5)', () => {
  const toFwhm = 2.354820045;
  expect(voigtWidth(2, toFwhm)).toBeCloseTo(3.601309, 4);
  expect(voigtWidth(1, toFwhm)).toBeCloseTo(2.93497, 4);
  expect(voigtWidth(2, 0.5 * toFwhm)).toBeCloseTo(2.570098, 4);
  expect(voigt(0.5 * voigtWidth(2, toFwhm), 0, 2, toFwhm)).toBeCloseTo(0.5, 2);
});

test('index and ceiling of transmission of diamond (Peter 1923, from memory)', () => {
  expect(diamondIndex(589.3)).toBeCloseTo(2.4173, 4);
  expect(diamondIndex(430.8) - diamondIndex(686.7)).toBeCloseTo(0.0444, 4);
  expect(latticeTransmittance(589)).toBeCloseTo(0.7065, 3);
  expect(latticeTransmittance(254)).toBeCloseTo(0.666, 3);
});

describe('simulated photoluminescence', () => {
  const instrument = emissionInstrument();
  test.each(STONE_KINDS)('%s: the seed fixes every count, and no count is impossible', (kind) => {
    const a = simulatePhotoluminescence(simulatedStone(kind, 4), instrument, 9);
    const b = simulatePhotoluminescence(simulatedStone(kind, 4), instrument, 9);
    expect(a.y).toEqual(b.y);
    expect(a.x).toHaveLength(instrument.points);
    expect(a.y.every((value) => Number.isInteger(value) && value <= instrument.ceiling)).toBe(true);
    expect(a.x.every((value, i) => i === 0 || value > a.x[i - 1]!)).toBe(true);
  });
  test('another seed, another curve', () => {
    expect(simulatePhotoluminescence(simulatedStone('hpht', 4), instrument, 9).y).not.toEqual(simulatePhotoluminescence(simulatedStone('hpht', 4), instrument, 10).y);
  });
});
