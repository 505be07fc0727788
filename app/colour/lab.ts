import type { Xyz } from './tristimulus.ts';
import { D65 } from './srgb.ts';
import { xyzOf } from './tristimulus.ts';

export type Lab = readonly [number, number, number];

const WHITE: Xyz = xyzOf(D65, 1);
/** Where the cube root turns into a straight line, (6/29)³, and its slope there (ISO/CIE 11664-4). */
const EPSILON = (6 / 29) ** 3;
const root = (t: number): number => (t > EPSILON ? Math.cbrt(t) : t / (3 * (6 / 29) ** 2) + 4 / 29);

/** CIELAB of XYZ (white has Y = 1) against a white, D65 unless stated. Source: ISO/CIE 11664-4. */
export function labFromXyz([X, Y, Z]: Xyz, white: Xyz = WHITE): Lab {
  const [fx, fy, fz] = [root(X / white[0]), root(Y / white[1]), root(Z / white[2])];
  return [116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz)];
}

const DEG = Math.PI / 180;
const hueOf = (b: number, a: number): number => (a === 0 && b === 0 ? 0 : (Math.atan2(b, a) / DEG + 360) % 360);

/**
 * Colour difference CIEDE2000 with all weights 1. Source: ISO/CIE 11664-6; in the form of G. Sharma, W. Wu, E. N. Dalal,
 * Color Res. Appl. 30 (2005) 21.
 */
export function colourDifference([L1, a1, b1]: Lab, [L2, a2, b2]: Lab): number {
  const meanC7 = (0.5 * (Math.hypot(a1, b1) + Math.hypot(a2, b2))) ** 7;
  const g = 0.5 * (1 - Math.sqrt(meanC7 / (meanC7 + 25 ** 7)));
  const [p1, p2] = [(1 + g) * a1, (1 + g) * a2];
  const [c1, c2] = [Math.hypot(p1, b1), Math.hypot(p2, b2)];
  const [h1, h2] = [hueOf(b1, p1), hueOf(b2, p2)];
  const grey = c1 * c2 === 0;
  const turn = h2 - h1;
  const dh = grey ? 0 : turn > 180 ? turn - 360 : turn < -180 ? turn + 360 : turn;
  const dH = 2 * Math.sqrt(c1 * c2) * Math.sin(0.5 * dh * DEG);
  const sumH = h1 + h2;
  const H = grey ? sumH : Math.abs(h1 - h2) <= 180 ? sumH / 2 : sumH < 360 ? (sumH + 360) / 2 : (sumH - 360) / 2;
  const [L, C] = [0.5 * (L1 + L2), 0.5 * (c1 + c2)];
  const T = 1 - 0.17 * Math.cos((H - 30) * DEG) + 0.24 * Math.cos(2 * H * DEG) + 0.32 * Math.cos((3 * H + 6) * DEG) - 0.2 * Math.cos((4 * H - 63) * DEG);
  const SL = 1 + (0.015 * (L - 50) ** 2) / Math.sqrt(20 + (L - 50) ** 2);
  const [SC, SH] = [1 + 0.045 * C, 1 + 0.015 * C * T];
  const RT = -2 * Math.sqrt(C ** 7 / (C ** 7 + 25 ** 7)) * Math.sin(60 * Math.exp(-(((H - 275) / 25) ** 2)) * DEG);
  const [l, c, h] = [(L2 - L1) / SL, (c2 - c1) / SC, dH / SH];
  return Math.sqrt(l * l + c * c + h * h + RT * c * h);
}
