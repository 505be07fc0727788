import type { Chromaticity, Xyz } from './tristimulus.ts';
import { xyzOf } from './tristimulus.ts';

export type LinearRgb = readonly [number, number, number];

/** The white of sRGB, D65 (IEC 61966-2-1). */
export const D65: Chromaticity = { x: 0.3127, y: 0.329 };

/** XYZ to linear RGB, from the primaries and the white of IEC 61966-2-1 at full precision. */
const TO_RGB: readonly LinearRgb[] = [
  [3.2409699419, -1.5373831776, -0.4986107603], [-0.9692436363, 1.8759675015, 0.0415550574], [0.0556300797, -0.2039769589, 1.0569715142],
];
const TO_XYZ: readonly LinearRgb[] = [
  [0.4123907993, 0.3575843394, 0.1804807884], [0.2126390059, 0.7151686788, 0.0721923154], [0.0193308187, 0.1191947798, 0.9505321522],
];

const times = (m: readonly LinearRgb[], [a, b, c]: Xyz): [number, number, number] =>
  [m[0]![0] * a + m[0]![1] * b + m[0]![2] * c, m[1]![0] * a + m[1]![1] * b + m[1]![2] * c, m[2]![0] * a + m[2]![1] * b + m[2]![2] * c];

/** Linear RGB of XYZ; parts outside 0–1 mean that a screen can't show it. */
export const linearFromXyz = (xyz: Xyz): LinearRgb => times(TO_RGB, xyz);
export const xyzFromLinear = (rgb: LinearRgb): Xyz => times(TO_XYZ, rgb);

/** Transfer function of sRGB, IEC 61966-2-1. Negative values go as their amounts do. */
export const encodeSrgb = (v: number): number => (v < 0 ? -encodeSrgb(-v) : v <= 0.0031308 ? 12.92 * v : 1.055 * v ** (1 / 2.4) - 0.055);
/** Its inverse. */
export const decodeSrgb = (v: number): number => (v < 0 ? -decodeSrgb(-v) : v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4);

/** Whole number 0–255 of an encoded value, cut at the ends, halves rounded up. */
export const byteOf = (encoded: number): number => Math.floor(255 * Math.max(0, Math.min(1, encoded)) + 0.5);

export type Swatch = {
  /** #rrggbb */
  readonly hex: string;
  /** False where the screen's primaries can't make this chromaticity: the swatch is then the nearest of the same hue, paler. */
  readonly inGamut: boolean;
};

/** Rounding of the matrices: less than this below zero is zero. */
const GAMUT_SLACK = 1e-6;

const towards = (from: Chromaticity, to: Chromaticity, share: number): Chromaticity => ({ x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) });
const fits = (point: Chromaticity): boolean => Math.min(...linearFromXyz(xyzOf(point, 1))) >= -GAMUT_SLACK;

/**
 * A patch of this chromaticity, as bright as the screen can show it. Outside the screen's gamut the chromaticity is moved
 * straight towards the white until it fits (hue roughly kept, saturation lost), and `inGamut` says so.
 */
export function swatchOf(point: Chromaticity): Swatch {
  const inGamut = point.y > 0 && fits(point);
  let shown = point;
  if (!inGamut) {
    let [pale, pure] = [1, 0];
    for (let step = 0; step < 40; step++) {
      const middle = 0.5 * (pale + pure);
      if (fits(towards(point, D65, middle))) pale = middle;
      else pure = middle;
    }
    shown = towards(point, D65, pale);
  }
  const linear = linearFromXyz(xyzOf(shown, 1)).map((v) => Math.max(0, v));
  const brightest = Math.max(...linear);
  return { hex: `#${linear.map((v) => byteOf(encodeSrgb(v / brightest)).toString(16).padStart(2, '0')).join('')}`, inGamut };
}
