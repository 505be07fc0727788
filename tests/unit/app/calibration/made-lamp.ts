import { calibrationStandard } from '../../../../app/calibration/standards.ts';
import type { CalibrationStandard, ReferenceLine } from '../../../../app/calibration/standard.ts';
import { seededRandom } from '../../../../app/spectra/simulate/seeded-random.ts';
import type { Spectrum, XUnit, YUnit } from '../../../../app/spectra/spectrum.ts';

export type MadeScale = (truth: number) => number;
export type MadeLamp = {
  readonly from: number; readonly to: number; readonly points: number; readonly fwhm: number;
  /** What the instrument shows for a true position. */
  readonly shown?: MadeScale;
  readonly seed?: number; readonly noise?: number; readonly height?: number;
  /** Lines of the table that the lamp does not show. */
  readonly without?: (line: ReferenceLine) => boolean;
  readonly strangers?: readonly number[];
};

export const standardOf = (id: string): CalibrationStandard => {
  const standard = calibrationStandard(id);
  if (!standard) throw new Error(`no standard ${id}`);
  return standard;
};

/** A curve of a lamp as an instrument with its own, wrong scale records it: Gaussian lines, a little background, noise. Heights scatter about the table's strengths by a factor of three. */
export function madeLamp(id: string, lamp: MadeLamp): Spectrum {
  const standard = standardOf(id);
  const { from, to, points, fwhm, shown = (v) => v, seed = 1, noise = 8, height = 30000, without = () => false, strangers = [] } = lamp;
  const r = seededRandom(seed);
  const lines = standard.lines.filter((line) => !without(line));
  const most = Math.max(...lines.map((line) => line.strength));
  const peaks = [...lines.map((line) => ({ at: shown(line.position), height: height * Math.sqrt(line.strength / most) * r.logBetween(0.5, 1.5) })), ...strangers.map((at) => ({ at, height: 0.2 * height }))];
  const x = Float64Array.from({ length: points }, (_, i) => from + ((to - from) * i) / (points - 1));
  const y = x.map((v) => {
    let sum = 200 + 0.02 * (v - from);
    for (const peak of peaks) { const u = (v - peak.at) / fwhm; if (Math.abs(u) < 6) sum += peak.height * Math.exp(-4 * Math.LN2 * u * u); }
    return sum + Math.sqrt(noise * noise + Math.max(0, sum - 200)) * r.normal();
  });
  const xUnit: XUnit = standard.unit;
  const yUnit: YUnit = 'counts';
  return { x, y, xUnit, yUnit };
}
