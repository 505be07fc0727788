import { median } from '../spectra/statistics.ts';
import { transformField, type ComplexField } from './fft.ts';

/** How far the second patch lies from the first, cells, and how clear that is. */
export type PatchShift = {
  readonly dx: number; readonly dy: number;
  /** Height of the best place over that of the best one elsewhere; 1 means chance. */
  readonly clearness: number;
};

/** Around the best place this many cells belong to it when the next best is looked for. */
const PEAK_HALF = 3;

/**
 * Directions in which brightness rises, as unit complex numbers fading to zero where the rise is no more than noise, tapered
 * to the patch's edge, transformed. What is bright under one lamp may be dim under the other; its edges lie in the same places.
 * @param patch side·side values, side a power of two
 */
export function orientationSpectrum(patch: Float32Array, side: number): ComplexField {
  const [re, im] = [new Float64Array(side * side), new Float64Array(side * side)];
  const size = new Float64Array((side - 2) * (side - 2));
  for (let y = 1, k = 0; y < side - 1; y++) {
    for (let x = 1; x < side - 1; x++, k++) {
      const at = y * side + x;
      re[at] = patch[at + 1]! - patch[at - 1]!;
      im[at] = patch[at + side]! - patch[at - side]!;
      size[k] = Math.sqrt(re[at]! ** 2 + im[at]! ** 2);
    }
  }
  const noise = 2 * median(size) + 1e-9;
  for (let y = 0; y < side; y++) {
    const wy = Math.sin(Math.PI * (y + 0.5) / side) ** 2;
    for (let x = 0; x < side; x++) {
      const at = y * side + x;
      const length = Math.sqrt(re[at]! ** 2 + im[at]! ** 2);
      const weight = wy * Math.sin(Math.PI * (x + 0.5) / side) ** 2 / (length + noise);
      re[at] = re[at]! * weight;
      im[at] = im[at]! * weight;
    }
  }
  const field = { side, re, im };
  transformField(field, 'forward');
  return field;
}

/** Where a parabola through three neighbours has its top, from the middle one. */
const topOf = (before: number, middle: number, after: number): number => {
  const bend = before - 2 * middle + after;
  return bend < 0 ? Math.max(-0.5, Math.min(0.5, 0.5 * (before - after) / bend)) : 0;
};

/** Shift of the second field against the first, by correlation of orientations (A. Fitch et al., BMVC 2002), to a part of a cell. */
export function shiftBetween(first: ComplexField, second: ComplexField): PatchShift {
  const { side } = first;
  const cross: ComplexField = { side, re: new Float64Array(side * side), im: new Float64Array(side * side) };
  for (let i = 0; i < side * side; i++) {
    cross.re[i] = second.re[i]! * first.re[i]! + second.im[i]! * first.im[i]!;
    cross.im[i] = second.im[i]! * first.re[i]! - second.re[i]! * first.im[i]!;
  }
  transformField(cross, 'inverse');
  const height = cross.re;
  let best = 0;
  for (let i = 1; i < height.length; i++) if (height[i]! > height[best]!) best = i;
  const [bx, by] = [best % side, Math.floor(best / side)];
  const wrap = (v: number): number => (v + side) % side;
  const at = (x: number, y: number): number => height[wrap(y) * side + wrap(x)]!;
  let next = 0;
  for (let i = 0; i < height.length; i++) {
    const [dx, dy] = [Math.abs((i % side) - bx), Math.abs(Math.floor(i / side) - by)];
    if (Math.min(dx, side - dx) > PEAK_HALF || Math.min(dy, side - dy) > PEAK_HALF) next = Math.max(next, height[i]!);
  }
  const signed = (v: number): number => (v > side / 2 ? v - side : v);
  return {
    dx: signed(bx) + topOf(at(bx - 1, by), at(bx, by), at(bx + 1, by)),
    dy: signed(by) + topOf(at(bx, by - 1), at(bx, by), at(bx, by + 1)),
    clearness: next > 0 ? height[best]! / next : height[best]! > 0 ? Infinity : 0,
  };
}
