import { converter, differenceCiede2000, parse } from 'culori';
import { describe, expect, test } from 'vitest';
import { colourDifference, labFromXyz, type Lab } from '../../../app/colour/lab.ts';
import { byteOf, decodeSrgb, encodeSrgb, linearFromXyz, swatchOf, xyzFromLinear } from '../../../app/colour/srgb.ts';
import { xyzOf } from '../../../app/colour/tristimulus.ts';

describe('sRGB, IEC 61966-2-1', () => {
  test.each([[0.001, 0.01292], [0.0031308, 0.040449936], [0.01, 0.0998528227], [0.05, 0.247800528], [0.18, 0.4613561295], [0.5, 0.7353569831], [0.75, 0.8808250211]])('%d is encoded as %d', (linear, encoded) => {
    expect(encodeSrgb(linear)).toBeCloseTo(encoded, 9);
  });
  test.each([[0.04045, 0.003130805], [0.5, 0.2140411405], [128 / 255, 0.2158605001], [188 / 255, 0.5028864580]])('%d is decoded as %d', (encoded, linear) => {
    expect(decodeSrgb(encoded)).toBeCloseTo(linear, 9);
  });
  test.each([
    [0.3127, 0.329, 1, [255, 255, 255]], [0.3127, 0.329, 0.5, [188, 188, 188]], [0.3127, 0.329, 0.18, [118, 118, 118]], [0.3457, 0.3585, 0.5, [202, 185, 162]],
    [0.4, 0.4, 0.3, [176, 144, 95]], [0.25, 0.3, 0.4, [113, 179, 199]], [0.45, 0.42, 0.25, [178, 127, 60]], [0.44757, 0.40745, 1, [255, 234, 133]],
  ])('x %d, y %d, Y %d', (x, y, Y, bytes) => {
    expect(linearFromXyz(xyzOf({ x, y }, Y)).map(encodeSrgb).map(byteOf)).toEqual(bytes);
  });
  test('out and back', () => {
    const rgb = [0.2, 0.5, 0.9] as const;
    linearFromXyz(xyzFromLinear(rgb)).forEach((v, i) => { expect(v).toBeCloseTo(rgb[i]!, 9); });
  });
  test('a swatch says whether the screen can show the colour', () => {
    expect(swatchOf({ x: 0.3127, y: 0.329 })).toEqual({ hex: '#ffffff', inGamut: true });
    expect(swatchOf({ x: 0.64, y: 0.33 })).toEqual({ hex: '#ff0000', inGamut: true });
    const pureGreen = swatchOf({ x: 0.0743, y: 0.8338 });
    expect(pureGreen.inGamut).toBe(false);
    expect(pureGreen.hex).toMatch(/^#00ff[0-9a-f]{2}$/);
  });
});

const culoriLab = converter('lab65');
const culoriXyz = converter('xyz65');
const culoriDifference = differenceCiede2000();
const asCulori = ([l, a, b]: Lab) => ({ mode: 'lab65' as const, l, a, b });

describe('CIELAB and CIEDE2000', () => {
  // ISO/CIE 11664-4, white D65.
  test.each([
    ['#ff0000', 53.2371, 80.0901, 67.2033], ['#00ff00', 87.7355, -86.1816, 83.1866], ['#0000ff', 32.3009, 79.1953, -107.8555], ['#808080', 53.585, 0, 0], ['#1e90ff', 59.3803, 9.9683, -63.386],
  ])('%s', (hex, L, a, b) => {
    const rgb = [1, 3, 5].map((i) => decodeSrgb(Number.parseInt(hex.slice(i, i + 2), 16) / 255)) as [number, number, number];
    const lab = labFromXyz(xyzFromLinear(rgb));
    [L, a, b].forEach((v, i) => { expect(Math.abs(lab[i]! - v)).toBeLessThan(6e-4); });
    const other = culoriLab(parse(hex)!);
    [other.l, other.a, other.b].forEach((v, i) => { expect(Math.abs(lab[i]! - v)).toBeLessThan(6e-4); });
    const xyz = culoriXyz(parse(hex)!);
    xyzFromLinear(rgb).forEach((v, i) => { expect(v).toBeCloseTo([xyz.x, xyz.y, xyz.z][i]!, 6); });
  });
  // Pairs of G. Sharma, W. Wu, E. N. Dalal, Color Res. Appl. 30 (2005) 21.
  test.each<[Lab, Lab, number]>([
    [[50, 2.6772, -79.7751], [50, 0, -82.7485], 2.0425], [[50, 3.1571, -77.2803], [50, 0, -82.7485], 2.8615], [[50, 2.8361, -74.02], [50, 0, -82.7485], 3.4412],
    [[50, 2.5, 0], [73, 25, -18], 27.1492], [[50, 2.5, 0], [50, 0, -2.5], 4.3065], [[60.2574, -34.0099, 36.2677], [60.4626, -34.1751, 39.4387], 1.2644], [[2.0776, 0.0795, -1.135], [0.9033, -0.0636, -0.5514], 0.9082],
  ])('%j and %j', (a, b, expected) => {
    expect(colourDifference(a, b)).toBeCloseTo(expected, 4);
    expect(colourDifference(b, a)).toBeCloseTo(expected, 4);
    expect(culoriDifference(asCulori(a), asCulori(b))).toBeCloseTo(expected, 4);
  });
});
