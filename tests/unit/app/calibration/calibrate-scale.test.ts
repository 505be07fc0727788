import { describe, expect, test } from 'vitest';
import { applyCalibration } from '../../../../app/calibration/apply-calibration.ts';
import { calibrateScale } from '../../../../app/calibration/calibrate-scale.ts';
import { correctionAt, largestUncertainty, scaleFit, scaleUncertaintyAt } from '../../../../app/calibration/scale-fit.ts';
import { CALIBRATION_STANDARDS, withOwnLines } from '../../../../app/calibration/standards.ts';
import { seededRandom } from '../../../../app/spectra/simulate/seeded-random.ts';
import type { Spectrum } from '../../../../app/spectra/spectrum.ts';
import { madeLamp, standardOf, type MadeLamp } from './made-lamp.ts';

const RANGES: Readonly<Record<string, readonly [number, number]>> = { mercury: [240, 620], 'mercury-argon': [350, 980], argon: [680, 1000], neon: [520, 900] };
const range = (id: string) => RANGES[id]!;
const accept = (id: string, curve: Spectrum) => {
  const outcome = calibrateScale(curve, standardOf(id));
  if (!outcome.ok) throw new Error(`${outcome.error.code}: ${outcome.error.message}`);
  return outcome.value;
};
const refuse = (id: string, curve: Spectrum) => {
  const outcome = calibrateScale(curve, standardOf(id));
  return outcome.ok ? 'accepted' : outcome.error.code;
};

/** A scale shifted, stretched and bent at random within what instruments show. */
function wrongScale(id: string, seed: number): (truth: number) => number {
  const r = seededRandom(seed * 77);
  const [from, to] = range(id);
  const [middle, half] = [0.5 * (from + to), 0.5 * (to - from)];
  const [offset, slope, bend] = [r.between(-2.5, 2.5), r.between(-0.008, 0.008), r.between(-0.3, 0.3)];
  return (truth) => truth - offset - slope * (truth - middle) - bend * ((truth - middle) / half) ** 2;
}
/** The true position behind a measured one. */
function truthOf(shown: (truth: number) => number, measured: number): number {
  let truth = measured;
  for (let k = 0; k < 40; k++) truth += measured - shown(truth);
  return truth;
}

describe('calibrating with lamps', () => {
  test.each(['mercury', 'mercury-argon', 'argon', 'neon'])('%s: scales off by up to 2.5 nm and 0.8 per cent are found, and the stated uncertainty holds', (id) => {
    const [from, to] = range(id);
    let squares = 0;
    let count = 0;
    for (const fwhm of [0.3, 1, 1.8]) {
      for (let seed = 1; seed <= 8; seed++) {
        const shown = wrongScale(id, seed);
        const { fit } = accept(id, madeLamp(id, { from, to, points: 3000, fwhm, shown, seed }));
        for (let measured = fit.range[0]; measured <= fit.range[1]; measured += 5) {
          const error = measured + correctionAt(fit, measured) - truthOf(shown, measured);
          expect(Math.abs(error)).toBeLessThan(Math.max(0.02, 0.05 * fwhm));
          squares += (error / scaleUncertaintyAt(fit, measured)) ** 2;
          count++;
        }
      }
    }
    expect(Math.sqrt(squares / count)).toBeLessThan(1.3);
  });
  test('a fine instrument is calibrated to a hundredth of a nanometre', () => {
    const { fit } = accept('neon', madeLamp('neon', { from: 520, to: 900, points: 4096, fwhm: 0.3, shown: wrongScale('neon', 3) }));
    expect(fit.residualRms).toBeLessThan(0.01);
    expect(largestUncertainty(fit)).toBeLessThan(0.01);
    expect(scaleFit.parse(JSON.parse(JSON.stringify(fit)))).toEqual(fit);
  });
  test('the degree follows the scale: a straight one gets 1, a bent one 2, a twisted one 3', () => {
    const u = (v: number): number => (v - 710) / 190;
    const lamp = (shown: (v: number) => number): MadeLamp => ({ from: 520, to: 900, points: 4096, fwhm: 0.4, shown });
    expect(accept('neon', madeLamp('neon', lamp((v) => v + 0.8 + 0.001 * (v - 710)))).fit.degree).toBe(1);
    expect(accept('neon', madeLamp('neon', lamp((v) => v + 0.8 + 0.4 * u(v) ** 2))).fit.degree).toBe(2);
    expect(accept('neon', madeLamp('neon', lamp((v) => v + 0.8 + 0.4 * u(v) ** 3))).fit.degree).toBe(3);
  });
  test('a line of another gas and a missing line do no harm', () => {
    const made = madeLamp('argon', { from: 680, to: 1000, points: 3000, fwhm: 0.8, shown: (v) => v + 1.2, strangers: [702, 764.9, 900, 941], without: (line) => Math.abs(line.position - 811.5311) < 0.01 });
    const { fit, unassigned } = accept('argon', made);
    expect(Math.abs(correctionAt(fit, 800) + 1.2)).toBeLessThan(0.03);
    expect(unassigned.some((position) => Math.abs(position - 900) < 0.5)).toBe(true);
    expect(fit.lines.some((line) => Math.abs(line.reference - 900) < 1)).toBe(false);
  });
  test('outside the lines the correction goes on straight and the uncertainty grows', () => {
    const { fit } = accept('neon', madeLamp('neon', { from: 520, to: 900, points: 3000, fwhm: 0.5, shown: wrongScale('neon', 5) }));
    const [a, b, c] = [1000, 1010, 1020].map((nm) => correctionAt(fit, nm));
    expect(a! - 2 * b! + c!).toBeCloseTo(0, 9);
    expect(scaleUncertaintyAt(fit, 1200)).toBeGreaterThan(scaleUncertaintyAt(fit, 1000));
    expect(scaleUncertaintyAt(fit, 1000)).toBeGreaterThan(scaleUncertaintyAt(fit, 700));
  });
  test.each([['neon', 'argon'], ['argon', 'neon'], ['neon', 'mercury'], ['mercury', 'neon'], ['mercury', 'argon'], ['argon', 'mercury'], ['mercury-argon', 'neon'], ['neon', 'mercury-argon']])('a %s lamp is not taken for %s', (lamp, as) => {
    for (const fwhm of [0.5, 1.8]) {
      for (let seed = 1; seed <= 6; seed++) expect(refuse(as, madeLamp(lamp, { from: 240, to: 980, points: 3000, fwhm, seed }))).not.toBe('accepted');
    }
  });
  test('lines at random fit no lamp', () => {
    for (const lines of [4, 15, 30]) {
      for (let seed = 1; seed <= 6; seed++) {
        const r = seededRandom(seed * 13 + lines);
        const curve = madeLamp('neon', { from: 380, to: 980, points: 3000, fwhm: 1.2, seed, without: () => true, strangers: Array.from({ length: lines }, () => r.between(390, 970)) });
        for (const id of ['argon', 'neon', 'mercury']) expect(refuse(id, curve)).not.toBe('accepted');
      }
    }
  });
  test('refusals say what to do', () => {
    expect(refuse('mercury', madeLamp('mercury', { from: 540, to: 620, points: 800, fwhm: 0.5 }))).toBe('too-few-lines');
    expect(refuse('mercury', madeLamp('mercury', { from: 240, to: 620, points: 800, fwhm: 1, without: () => true }))).toBe('too-few-lines');
    expect(refuse('polystyrene-raman', madeLamp('neon', { from: 520, to: 900, points: 800, fwhm: 1 }))).toBe('unit-differs');
    expect(refuse('neon', { x: new Float64Array(3), y: new Float64Array(3), xUnit: 'nm', yUnit: 'counts' })).toBe('curve-unusable');
    for (const bad of [Number.NaN, Infinity, 0]) expect(['curve-unusable', 'too-few-lines']).toContain(refuse('neon', { x: new Float64Array(100).fill(bad), y: new Float64Array(100), xUnit: 'nm', yUnit: 'counts' }));
  });
  test('lines at the ceiling of the detector do not count', () => {
    const made = madeLamp('neon', { from: 520, to: 900, points: 3000, fwhm: 1 });
    const cut: Spectrum = { ...made, y: made.y.map((value) => Math.min(value, 18000)) };
    const outcome = calibrateScale(cut, standardOf('neon'));
    const whole = accept('neon', made);
    if (outcome.ok) expect(outcome.value.fit.lines.length).toBeLessThan(whole.fit.lines.length);
    else expect(outcome.error.message).toMatch(/record|choose/i);
  });
});

describe('other standards', () => {
  test.each(CALIBRATION_STANDARDS.filter((s) => s.unit === 'raman-shift').map((s) => s.id))('%s: a Raman scale off by 4 to 11 cm-1', (id) => {
    const { fit } = accept(id, madeLamp(id, { from: 0, to: 3500, points: 3500, fwhm: 6, shown: (v) => v + 4 + 0.002 * v }));
    for (const shift of [500, 1000, 1600]) if (shift > fit.range[0] && shift < fit.range[1]) expect(Math.abs(correctionAt(fit, shift) + 4 + (0.002 * (shift - 4)) / 1.002)).toBeLessThan(0.4);
  });
  test('polystyrene in transmission, and the same in absorbance', () => {
    const made = madeLamp('polystyrene-infrared', { from: 900, to: 3200, points: 2300, fwhm: 8, height: 1000, noise: 1, shown: (v) => v + 2 });
    const absorbance = made.y.map((value) => (value - 200) / 1000);
    for (const curve of [{ ...made, y: absorbance, yUnit: 'absorbance' as const }, { ...made, y: absorbance.map((a) => 100 * 10 ** -a), yUnit: 'percent-transmittance' as const }, { ...made, y: absorbance.map((a) => 10 ** -a), yUnit: 'unstated' as const }]) {
      const { fit } = accept('polystyrene-infrared', curve);
      expect(fit.lines.length).toBe(7);
      expect(Math.abs(correctionAt(fit, 1600) + 2)).toBeLessThan(0.4);
    }
  });
  test('holmium with the positions of its own certificate', () => {
    const own = withOwnLines(standardOf('holmium-solution'), standardOf('holmium-solution').lines.map((line) => ({ position: line.position + 0.5, uncertainty: 0.1 })));
    const made = madeLamp('holmium-solution', { from: 230, to: 680, points: 1800, fwhm: 5, height: 1000, noise: 1 });
    const outcome = calibrateScale({ ...made, yUnit: 'absorbance' }, own);
    expect(own.fromMemory).toBe(false);
    expect(outcome.ok && Math.abs(correctionAt(outcome.value.fit, 450) - 0.5) < 0.1).toBe(true);
  });
});

describe('applying a calibration', () => {
  const { fit } = accept('neon', madeLamp('neon', { from: 520, to: 900, points: 3000, fwhm: 0.5, shown: wrongScale('neon', 2) }));
  const curve: Spectrum = { x: Float64Array.of(540, 600, 700, 800), y: Float64Array.of(1, 2, 3, 4), xUnit: 'nm', yUnit: 'counts' };
  test('adds the correction, in ångström as in nm, and changes nothing else', () => {
    const done = applyCalibration(fit, curve);
    const fine = applyCalibration(fit, { ...curve, x: curve.x.map((nm) => 10 * nm), xUnit: 'angstrom' });
    if (!done.ok || !fine.ok) throw new Error('not applied');
    expect([...done.value.x]).toEqual([...curve.x].map((nm) => nm + correctionAt(fit, nm)));
    expect(fine.value.x[2]! / 10).toBeCloseTo(done.value.x[2]!, 9);
    expect(done.value.y).toBe(curve.y);
  });
  test('refuses another unit, and a scale that would fold', () => {
    expect(applyCalibration(fit, { ...curve, xUnit: 'cm-1' })).toMatchObject({ ok: false, error: { code: 'unit-differs' } });
    expect(applyCalibration({ ...fit, coefficients: [0, -400], degree: 1 }, curve)).toMatchObject({ ok: false, error: { code: 'scale-folds' } });
  });
});
