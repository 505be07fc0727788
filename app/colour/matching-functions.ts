/** Wavelength of the first row, distance of the rows and wavelength of the last, nm. */
export const MATCHING_GRID_NM = { from: 380, step: 5, to: 780 } as const;

/**
 * CIE 1931 standard colorimetric observer (2°), x̄ ȳ z̄ from 380 to 780 nm every 5 nm.
 * Source: ISO/CIE 11664-1 (CIE 018); the table is the CIE's.
 */
export const MATCHING_FUNCTIONS: readonly (readonly [number, number, number])[] = [
  [0.001368, 0.000039, 0.006450001], [0.002236, 0.000064, 0.01054999], [0.004243, 0.00012, 0.02005001], [0.00765, 0.000217, 0.03621], // 380
  [0.01431, 0.000396, 0.06785001], [0.02319, 0.00064, 0.1102], [0.04351, 0.00121, 0.2074], [0.07763, 0.00218, 0.3713], // 400
  [0.13438, 0.004, 0.6456], [0.21477, 0.0073, 1.0390501], [0.2839, 0.0116, 1.3856], [0.3285, 0.01684, 1.62296], // 420
  [0.34828, 0.023, 1.74706], [0.34806, 0.0298, 1.7826], [0.3362, 0.038, 1.77211], [0.3187, 0.048, 1.7441], // 440
  [0.2908, 0.06, 1.6692], [0.2511, 0.0739, 1.5281], [0.19536, 0.09098, 1.28764], [0.1421, 0.1126, 1.0419], // 460
  [0.09564, 0.13902, 0.8129501], [0.05795001, 0.1693, 0.6162], [0.03201, 0.20802, 0.46518], [0.0147, 0.2586, 0.3533], // 480
  [0.0049, 0.323, 0.272], [0.0024, 0.4073, 0.2123], [0.0093, 0.503, 0.1582], [0.0291, 0.6082, 0.1117], // 500
  [0.06327, 0.71, 0.07824999], [0.1096, 0.7932, 0.05725001], [0.1655, 0.862, 0.04216], [0.2257499, 0.9148501, 0.02984], // 520
  [0.2904, 0.954, 0.0203], [0.3597, 0.9803, 0.0134], [0.4334499, 0.9949501, 0.008749999], [0.5120501, 1, 0.005749999], // 540
  [0.5945, 0.995, 0.0039], [0.6784, 0.9786, 0.002749999], [0.7621, 0.952, 0.0021], [0.8425, 0.9154, 0.0018], // 560
  [0.9163, 0.87, 0.001650001], [0.9786, 0.8163, 0.0014], [1.0263, 0.757, 0.0011], [1.0567, 0.6949, 0.001], // 580
  [1.0622, 0.631, 0.0008], [1.0456, 0.5668, 0.0006], [1.0026, 0.503, 0.00034], [0.9384, 0.4412, 0.00024], // 600
  [0.8544499, 0.381, 0.00019], [0.7514, 0.321, 0.0001], [0.6424, 0.265, 0.00004999999], [0.5419, 0.217, 0.00003], // 620
  [0.4479, 0.175, 0.00002], [0.3608, 0.1382, 0.00001], [0.2835, 0.107, 0], [0.2187, 0.0816, 0], // 640
  [0.1649, 0.061, 0], [0.1212, 0.04458, 0], [0.0874, 0.032, 0], [0.0636, 0.0232, 0], // 660
  [0.04677, 0.017, 0], [0.0329, 0.01192, 0], [0.0227, 0.00821, 0], [0.01584, 0.005723, 0], // 680
  [0.01135916, 0.004102, 0], [0.008110916, 0.002929, 0], [0.005790346, 0.002091, 0], [0.004109457, 0.001484, 0], // 700
  [0.002899327, 0.001047, 0], [0.00204919, 0.00074, 0], [0.001439971, 0.00052, 0], [0.0009999493, 0.0003611, 0], // 720
  [0.0006900786, 0.0002492, 0], [0.0004760213, 0.0001719, 0], [0.0003323011, 0.00012, 0], [0.0002348261, 0.0000848, 0], // 740
  [0.0001661505, 0.00006, 0], [0.000117413, 0.0000424, 0], [0.00008307527, 0.00003, 0], [0.00005870652, 0.0000212, 0], // 760
  [0.00004150994, 0.00001499, 0], // 780
];

/** Weights of the four rows around a place t (0 to 1) between the middle two: third-degree Lagrange. */
const lagrange = (t: number): readonly [number, number, number, number] => [
  (-t * (t - 1) * (t - 2)) / 6, ((t + 1) * (t - 1) * (t - 2)) / 2, (-(t + 1) * t * (t - 2)) / 2, ((t + 1) * t * (t - 1)) / 6,
];

/**
 * x̄ ȳ z̄ at a wavelength in nm: the table's own value on a row, in between by third-degree Lagrange interpolation over the four
 * nearest rows, as CIE 15 allows. Zero outside 380–780 nm, where less than 2·10⁻⁴ of the area lies.
 */
export function colourMatchingAt(nm: number): readonly [number, number, number] {
  const { from, step, to } = MATCHING_GRID_NM;
  if (!(nm >= from && nm <= to)) return [0, 0, 0];
  const last = MATCHING_FUNCTIONS.length - 1;
  const at = Math.min(last - 1, Math.floor((nm - from) / step));
  const weights = lagrange((nm - from) / step - at);
  const out: [number, number, number] = [0, 0, 0];
  weights.forEach((weight, k) => {
    const row = MATCHING_FUNCTIONS[Math.max(0, Math.min(last, at - 1 + k))]!;
    for (let c = 0; c < 3; c++) out[c] = out[c]! + weight * row[c]!;
  });
  return [Math.max(0, out[0]), Math.max(0, out[1]), Math.max(0, out[2])];
}

const FINE_STEP_NM = 1;
const FINE_ROWS = (MATCHING_GRID_NM.to - MATCHING_GRID_NM.from) / FINE_STEP_NM + 1;
/** x̄ ȳ z̄ every nanometre, one after the other: curves have thousands of points, and the straight line between these rows is within 10⁻⁴ of the interpolation. */
const FINE: Float64Array = Float64Array.from({ length: 3 * FINE_ROWS }, (_, i) => colourMatchingAt(MATCHING_GRID_NM.from + FINE_STEP_NM * Math.floor(i / 3))[i % 3]!);

/** Sums of light times x̄, ȳ, z̄ over points with weights of their own; nm ascending, points outside 380–780 nm add nothing. */
export function weighedSums(nm: Float64Array, light: (point: number) => number): [number, number, number] {
  let [x, y, z] = [0, 0, 0];
  for (let i = 0; i < nm.length; i++) {
    const at = (nm[i]! - MATCHING_GRID_NM.from) / FINE_STEP_NM;
    if (!(at >= 0)) continue;
    if (at > FINE_ROWS - 1) break;
    const row = Math.min(FINE_ROWS - 2, Math.floor(at));
    const t = at - row;
    const k = 3 * row;
    const value = light(i);
    x += value * (FINE[k]! + t * (FINE[k + 3]! - FINE[k]!));
    y += value * (FINE[k + 1]! + t * (FINE[k + 4]! - FINE[k + 1]!));
    z += value * (FINE[k + 2]! + t * (FINE[k + 5]! - FINE[k + 2]!));
  }
  return [x, y, z];
}
