import { INFRARED_REFERENCE_LINES } from '../reference/infrared-reference-lines.ts';
import type { PeakResult } from '../spectra/analysis.ts';
import type { DetectedLine, Detection } from '../spectra/detect-lines.ts';

const LEAST_SNR_TO_NAME = 5;

function nameOf(line: DetectedLine): (typeof INFRARED_REFERENCE_LINES)[number] | null {
  if (line.snr < LEAST_SNR_TO_NAME) return null;
  let best: (typeof INFRARED_REFERENCE_LINES)[number] | null = null;
  for (const reference of INFRARED_REFERENCE_LINES) {
    const distance = Math.abs(line.position - reference.cm1);
    if (distance > reference.toleranceCm1 || line.fwhm > reference.mostFwhmCm1) continue;
    if (best === null || distance / reference.toleranceCm1 < Math.abs(line.position - best.cm1) / best.toleranceCm1) best = reference;
  }
  return best;
}

/** The lines of an infrared curve, cm-1, with the reference lines they fit. Their meaning is in the infrared result, not in the names. */
export function infraredPeaks(detection: Detection): PeakResult[] {
  const named = detection.lines.map(nameOf);
  const seen = new Set(named.flatMap((reference) => (reference === null ? [] : [reference.id])));
  return detection.lines.map((line, k) => {
    // The weaker line of a defect is not named without the stronger.
    const reference = named[k]?.id === 'IR-1405' && !seen.has('IR-3107') ? null : named[k] ?? null;
    return {
      position: line.position, unit: 'cm-1', height: line.height, fwhm: line.fwhm, prominence: line.prominence, snr: line.snr, standardError: line.standardError,
      centre: reference?.id ?? null, offset: reference ? line.position - reference.cm1 : null, ambiguousWith: [], sidebandOf: null,
    };
  });
}
