import { detectLines, type DetectedLine, type DetectionOptions } from '../../../app/spectra/detect-lines.ts';
import { DETECTION } from '../../../app/spectra/analyse-spectrum.ts';
import type { TableLine } from './data.ts';

/** What one curve gave: positions of all lines, ids of the table's lines among them, and the strongest five that a fit carries. */
export type Reading = { readonly centers: readonly number[]; readonly match: readonly number[]; readonly fit: readonly (readonly ['fit', number, number, number, number])[] };

const OPTIONS: DetectionOptions = { resolution: null, ...DETECTION.photoluminescence };
const FITS = 5;

/** The nearest line of the table within its tolerance. */
function named({ position }: DetectedLine, table: readonly TableLine[]): number | null {
  let best = table[0]!;
  for (const line of table) if (Math.abs(line.pos - position) < Math.abs(best.pos - position)) best = line;
  return Math.abs(best.pos - position) <= best.tol ? best.id : null;
}

/** The product's own way from a raw curve to its lines (spikes, smoothing, noise, baseline, peaks, a fit of every line), and the table's names. */
export function readCurve(x: Float64Array, y: Float64Array, table: readonly TableLine[]): Reading {
  const { lines } = detectLines(x, y, OPTIONS);
  const fitted = lines.filter((line) => line.standardError !== null).sort((a, b) => b.prominence - a.prominence).slice(0, FITS);
  return {
    centers: lines.map((line) => line.position),
    match: lines.flatMap((line) => named(line, table) ?? []),
    fit: fitted.map(({ height, position, fwhm }) => ['fit', height, position, fwhm, 0]),
  };
}
