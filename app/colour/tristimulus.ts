import { weighedSums } from './matching-functions.ts';

export type Xyz = readonly [number, number, number];
export type Chromaticity = { readonly x: number; readonly y: number };

/**
 * CIE XYZ (relative) of light given as power per wavelength.
 * @param nm wavelengths in nm, ascending
 * @param power same length; any scale. Trapezoidal rule on the points given, so unevenly spaced points count with their width.
 */
export function tristimulus(nm: Float64Array, power: Float64Array): Xyz {
  const last = nm.length - 1;
  return weighedSums(nm, (i) => 0.5 * (nm[Math.min(last, i + 1)]! - nm[Math.max(0, i - 1)]!) * power[i]!);
}

/** CIE 1931 x, y of tristimulus values; null where there is no light. */
export function chromaticity([X, Y, Z]: Xyz): Chromaticity | null {
  const sum = X + Y + Z;
  return sum > 0 ? { x: X / sum, y: Y / sum } : null;
}

/** Tristimulus values of a chromaticity at a luminance Y (1 is the white of the screen). y > 0. */
export const xyzOf = ({ x, y }: Chromaticity, Y: number): Xyz => [(x * Y) / y, Y, ((1 - x - y) * Y) / y];
