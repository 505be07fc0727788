import type { AnalysisParameters } from './analysis.ts';
import { airFromRamanShift, ramanShiftFromAir } from './convert-axis.ts';
import type { DetectedLine, Detection } from './detect-lines.ts';
import type { PreparedSpectrum } from './prepare-spectrum.ts';

/** Green light, so that a Raman-shift axis without a stated laser can still be put beside wavelengths. */
const FALLBACK_LASER_NM = 532;

/** An emission curve's own axis beside wavelength in air (nm) and Raman shift (cm-1). */
export type EmissionScale = {
  readonly unit: 'nm' | 'raman-shift';
  readonly laserNm: number;
  /** Whether shifts mean something: on a shift axis, or with a laser. */
  readonly canShift: boolean;
  /** Whether wavelengths mean something. */
  readonly canName: boolean;
  readonly toNm: (position: number) => number;
  readonly fromNm: (nm: number) => number;
  readonly toShift: (position: number) => number;
  /** The detected lines on the wavelength axis, in the same order. */
  readonly inNm: readonly DetectedLine[];
  readonly resolutionNm: number | null;
  /** Distance of the points. */
  readonly stepNm: number;
};

/** Width at a wavelength: cm-1 to nm. */
const nmWidth = (widthCm1: number, nm: number): number => widthCm1 * nm * nm * 1e-7;

/** A line's width in cm-1 at its place in nm. */
export const widthCm1 = (line: DetectedLine): number => line.fwhm / nmWidth(1, line.position);

export function emissionScale(prepared: PreparedSpectrum, detection: Detection, parameters: AnalysisParameters): EmissionScale {
  const unit = prepared.unit === 'raman-shift' ? 'raman-shift' : 'nm';
  const laserNm = parameters.laserNm ?? FALLBACK_LASER_NM;
  const stated = parameters.laserNm !== undefined;
  const toNm = (position: number): number => (unit === 'nm' ? position : airFromRamanShift(laserNm, position));
  const { x } = prepared;
  const middleNm = toNm(0.5 * (x[0]! + x[x.length - 1]!));
  return {
    unit, laserNm, canShift: unit === 'raman-shift' || stated, canName: unit === 'nm' || stated, toNm,
    fromNm: (nm) => (unit === 'nm' ? nm : ramanShiftFromAir(laserNm, nm)),
    toShift: (position) => (unit === 'nm' ? ramanShiftFromAir(laserNm, position) : position),
    inNm: unit === 'nm' ? detection.lines : detection.lines.map((line) => {
      const position = toNm(line.position);
      return { ...line, position, fwhm: nmWidth(line.fwhm, position), standardError: line.standardError === null ? null : nmWidth(line.standardError, position) };
    }),
    resolutionNm: detection.resolution === null ? null : unit === 'nm' ? detection.resolution : nmWidth(detection.resolution, middleNm),
    stepNm: unit === 'nm' ? detection.step : nmWidth(detection.step, middleNm),
  };
}
