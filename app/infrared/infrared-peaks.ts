import { INFRARED_REFERENCE_LINES } from '../reference/infrared-reference-lines.ts';
import type { PeakResult } from '../spectra/analysis.ts';
import type { DetectedLine, Detection } from '../spectra/detect-lines.ts';

const LEAST_SNR_TO_NAME = 5;
/** A line of a defect that others could imitate is named only beside the line that proves the defect: boron's 1290 lies in the nitrogen bands. */
const NEEDS: Readonly<Record<string, string>> = { 'IR-1405': 'IR-3107', 'IR-B1290': 'IR-B2802' };

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
    const candidate = named[k] ?? null;
    const proof = candidate === null ? undefined : NEEDS[candidate.id];
    const reference = proof !== undefined && !seen.has(proof) ? null : candidate;
    return {
      position: line.position, unit: 'cm-1', height: line.height, fwhm: line.fwhm, prominence: line.prominence, snr: line.snr, standardError: line.standardError,
      centre: reference?.id ?? null, offset: reference ? line.position - reference.cm1 : null, ambiguousWith: [], sidebandOf: null,
    };
  });
}
