import { describe, expect, test } from 'vitest';
import { colourWord } from '../../../../app/colour/colour-word.ts';
import { dominantWavelength, EQUAL_ENERGY } from '../../../../app/colour/dominant-wavelength.ts';
import { luminescenceColour } from '../../../../app/colour/luminescence-colour.ts';
import { colourMatchingAt } from '../../../../app/colour/matching-functions.ts';
import { chromaticity } from '../../../../app/colour/tristimulus.ts';
import { airFromRamanShift } from '../../../../app/spectra/convert-axis.ts';
import { seededRandom } from '../../../../app/spectra/simulate/seeded-random.ts';

const NM = Float64Array.from({ length: 1201 }, (_, i) => 380 + 0.35 * i);
const bell = (centre: number, fwhm: number, height = 20000) => (nm: number): number => height * Math.exp(-4 * Math.LN2 * ((nm - centre) / fwhm) ** 2);
const noise = NM.map(() => 5);
function read(light: (nm: number) => number, laserNm?: number) {
  const r = seededRandom(7);
  return luminescenceColour({ nm: NM, power: NM.map((nm) => 300 + light(nm) + 5 * r.normal()), noise, ...(laserNm === undefined ? {} : { laserNm }) });
}

describe('colour of luminescence', () => {
  test.each([[450, 20, 'blue'], [440, 8, 'violet'], [520, 12, 'green'], [566, 8, 'yellow-green'], [579, 6, 'yellow'], [595, 8, 'orange'], [640, 20, 'red']])('a band at %i nm', (centre, fwhm, word) => {
    const colour = read(bell(centre, fwhm))!;
    expect(colour.word).toBe(word);
    expect(Math.abs(colour.dominantNm! - centre)).toBeLessThan(8);
    expect(colour.purity).toBeGreaterThan(0.8);
  });
  test('blue and yellow together are white; blue and red are pink or purple, with no dominant wavelength', () => {
    const white = read((nm) => bell(450, 60, 18000)(nm) + bell(575, 90, 20000)(nm))!;
    expect(white).toMatchObject({ word: 'white', inGamut: true });
    expect(white.purity).toBeLessThan(0.12);
    const purple = read((nm) => bell(430, 30)(nm) + bell(650, 30)(nm))!;
    expect(['pink', 'purple']).toContain(purple.word);
    expect(purple.dominantNm).toBeNull();
  });
  test('the laser’s own light and the diamond line do not colour it', () => {
    const laser = 405;
    const scattered = (nm: number): number => bell(laser, 1, 5e5)(nm) + bell(airFromRamanShift(laser, 1332.4), 0.6, 2e5)(nm);
    const clean = read(bell(520, 60))!;
    const found = read((nm) => bell(520, 60)(nm) + scattered(nm), laser)!;
    expect(Math.hypot(found.x - clean.x, found.y - clean.y)).toBeLessThan(0.004);
    expect(found.word).toBe('green');
  });
  test('no colour without light, and none where the curve leaves out what the eye sees', () => {
    expect(read(() => 0)).toBeNull();
    const part = NM.filter((nm) => nm > 600);
    expect(luminescenceColour({ nm: part, power: part.map(bell(640, 20)), noise: part.map(() => 5) })).toBeNull();
    expect(luminescenceColour({ nm: new Float64Array(0), power: new Float64Array(0), noise: new Float64Array(0) })).toBeNull();
  });
  test('a curve that begins behind the laser is whole', () => {
    const part = NM.filter((nm) => nm > 540);
    const colour = luminescenceColour({ nm: part, power: part.map(bell(637, 60)), noise: part.map(() => 5), laserNm: 532 })!;
    expect(colour.word).toBe('red');
    expect(luminescenceColour({ nm: part, power: part.map(bell(637, 60)), noise: part.map(() => 5), laserNm: 405 })).toBeNull();
  });
});

describe('dominant wavelength', () => {
  test('of spectral light is that light, at full purity', () => {
    for (const nm of [420, 470, 505, 531.5, 560, 588.4, 620]) {
      const found = dominantWavelength(chromaticity(colourMatchingAt(nm))!);
      expect(Math.abs(found.nm! - nm)).toBeLessThan(0.15);
      expect(found.purity).toBeGreaterThan(0.995);
    }
  });
  test('half-way to the neutral the purity is a half', () => {
    const pure = chromaticity(colourMatchingAt(550))!;
    const half = dominantWavelength({ x: 0.5 * (pure.x + EQUAL_ENERGY.x), y: 0.5 * (pure.y + EQUAL_ENERGY.y) });
    expect(half.purity).toBeCloseTo(0.5, 3);
    expect(half.nm).toBeCloseTo(550, 1);
  });
  test('the neutral has none', () => {
    expect(dominantWavelength(EQUAL_ENERGY)).toEqual({ nm: null, complementaryNm: null, purity: 0 });
    expect(colourWord(dominantWavelength(EQUAL_ENERGY))).toBe('white');
  });
});
