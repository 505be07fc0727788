import { nonNegativeLeastSquares } from './non-negative-least-squares.ts';
import { fitPeaks } from '../spectra/fit-peak.ts';

export type InfraredLine = { readonly position: number; readonly height: number; readonly heightError: number; readonly fwhm: number };
export type LineWanted = { readonly from: number; readonly to: number; readonly windowFrom: number; readonly windowTo: number; readonly leastFwhm: number; readonly mostFwhm: number };

/** Hydrogen, platelet and CVD lines: where the maximum may lie, the window of the fit, the allowed width (cm-1). */
export const LINES = {
  /** N3VH. Day et al., Diamond Relat. Mater. 2024. */
  n3vh: { from: 3105, to: 3109.5, windowFrom: 3085, windowTo: 3130, leastFwhm: 1, mostFwhm: 14 },
  /** NVH0, CVD growth. Fuchs et al., Appl. Phys. Lett. 66 (1995) 177. */
  nvh: { from: 3120.5, to: 3126, windowFrom: 3110, windowTo: 3140, leastFwhm: 1, mostFwhm: 14 },
  /** B'. Limits 1358–1378 from memory (Woods 1986; Clackson et al. 1990); free from 1355 to 1380. */
  platelet: { from: 1355, to: 1380, windowFrom: 1349, windowTo: 1394, leastFwhm: 3, mostFwhm: 30 },
} as const satisfies Record<string, LineWanted>;

const LEAST_SIGMAS = 5;

/**
 * A line of the absorption coefficient (cm-1) in its window, by fit over a straight background. x ascending cm-1.
 * noise: one standard deviation per point. Null where it is not covered or does not stand out.
 */
export function measureLine(x: Float64Array, alpha: Float64Array, noise: Float64Array, wanted: LineWanted): InfraredLine | null {
  if (x[0]! > wanted.windowFrom || x[x.length - 1]! < wanted.windowTo) return null;
  let from = 0;
  while (x[from]! < wanted.windowFrom) from++;
  let to = from;
  while (to < x.length && x[to]! <= wanted.windowTo) to++;
  if (to - from < 8) return null;
  const wx = x.slice(from, to);
  const wy = alpha.slice(from, to);
  const first = wy[0]!;
  const tilt = (wy[wy.length - 1]! - first) / (wx[wx.length - 1]! - wx[0]!);
  let top = -1;
  let height = 0;
  for (let i = 1; i < wx.length - 1; i++) {
    if (wx[i]! < wanted.from - 2 || wx[i]! > wanted.to + 2) continue;
    const over = wy[i]! - first - tilt * (wx[i]! - wx[0]!);
    if (over > height && wy[i]! >= wy[i - 1]! && wy[i]! >= wy[i + 1]!) { height = over; top = i; }
  }
  if (top < 0 || height < 3 * noise[from + top]!) return null;
  const fit = fitPeaks(wx, wy, [{ position: wx[top]!, height, fwhm: Math.max(4, 2 * (wx[1]! - wx[0]!)) }], wx.length < 14 ? 'gaussian' : 'pseudo-voigt');
  const peak = fit?.peaks[0];
  if (!peak || !(peak.height > 0)) return null;
  const error = Number.isFinite(peak.heightError) ? Math.max(peak.heightError, 0.5 * noise[from + top]!) : noise[from + top]!;
  if (peak.height < LEAST_SIGMAS * error || peak.height < LEAST_SIGMAS * noise[from + top]! * 0.8) return null;
  if (peak.position < wanted.from || peak.position > wanted.to || peak.fwhm < wanted.leastFwhm || peak.fwhm > wanted.mostFwhm) return null;
  return { position: peak.position, height: peak.height, heightError: error, fwhm: peak.fwhm };
}

export type BoronReading = { readonly areaCm2: number; readonly areaError: number; readonly height: number };
/** Boron's 2802 cm-1 line: place, width (HWHM about 35) and the window with its background; contamination by C–H is left out. */
const BORON = { at: 2802, fwhm: 68, from: 2700, to: 2990, masks: [[2840, 2875], [2905, 2970]] } as const;

/** Area of the 2802 cm-1 line, cm-2, by a band of fixed place and width over a bent background. Null where it is not covered. */
export function measureBoron(x: Float64Array, alpha: Float64Array): BoronReading | null {
  if (x[0]! > BORON.from || x[x.length - 1]! < BORON.to) return null;
  const picked: number[] = [];
  for (let i = 0; i < x.length; i++) if (x[i]! >= BORON.from && x[i]! <= BORON.to && !BORON.masks.some(([a, b]) => x[i]! > a && x[i]! < b)) picked.push(i);
  const m = picked.length;
  if (m < 30) return null;
  const y = Float64Array.from(picked, (i) => alpha[i]!);
  const band = Float64Array.from(picked, (i) => Math.exp(-4 * Math.LN2 * ((x[i]! - BORON.at) / BORON.fwhm) ** 2));
  const t = Float64Array.from(picked, (i) => (x[i]! - 2845) / 145);
  const columns = [band, new Float64Array(m).fill(1), t, t.map((v) => v * v)];
  const fit = nonNegativeLeastSquares(columns, y, [true, true, true, true]);
  const step = (x[picked[m - 1]!]! - x[picked[0]!]!) / m;
  const variance = (fit.rss / (m - 4)) * Math.max(1, 10 / step);
  const toArea = BORON.fwhm * 1.0644670194312262; // area of a Gaussian of unit height per FWHM
  return { height: fit.coefficients[0]!, areaCm2: fit.coefficients[0]! * toArea, areaError: Math.sqrt(variance * fit.inverse[0]!) * toArea };
}
