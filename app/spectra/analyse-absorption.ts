import type { AnalysisParameters, AnalysisWarning, PeakResult } from './analysis.ts';
import { findBroadBands } from './broad-bands.ts';
import type { Detection } from './detect-lines.ts';
import type { FindingInput } from './finding-input.ts';
import { matchCentres } from './match-centres.ts';
import type { PreparedSpectrum } from './prepare-spectrum.ts';

type Reading = Pick<FindingInput, 'peaks' | 'named' | 'bands' | 'warnings'>;

/** Absorbance above which stray light rules (judgement; stray light of 0.1 to 1 % limits instruments to 2 to 3). */
const MOST_ABSORBANCE = 2.5;
/** The lattice's own edge begins here, nm: 5.47 eV at room temperature (Clark, Dean & Harris 1964, from memory), and slope enough to imitate lines. */
const FROM_NM = 232;

/** Reads an absorption curve from the ultraviolet to the near infrared: sharp lines by the table of centres, and broad bands. */
export function analyseAbsorption(prepared: PreparedSpectrum, detection: Detection, parameters: AnalysisParameters): Reading {
  const { temperatureK, calibrationErrorNm } = parameters;
  const { x } = prepared;
  const warnings: AnalysisWarning[] = [];
  let opaque = 0;
  for (const value of detection.smoothed) if (value > MOST_ABSORBANCE) opaque++;
  const isAbsorbance = prepared.ordinate === 'absorbance';
  if (isAbsorbance && opaque > 0.02 * x.length) warnings.push({ code: 'absorbance-high', message: `Absorbance exceeds ${MOST_ABSORBANCE} over part of the range: heights there are limited by stray light.` });
  // Without a stated resolution the narrowest line says little here: absorption lines are wide of themselves.
  const resolutionNm = parameters.resolution === undefined ? Math.max(2 * detection.step, 1) : detection.resolution;
  const usable = detection.lines.filter((line) => line.position >= FROM_NM && (!isAbsorbance || detection.smoothed[line.index]! <= MOST_ABSORBANCE));
  const named = matchCentres(usable, { mode: 'absorption', temperatureK, resolutionNm, stepNm: detection.step, calibrationErrorNm });
  const peaks: PeakResult[] = named.map(({ line, centre, expectedNm, ambiguousWith, sidebandOf }) => ({
    position: line.position, unit: 'nm', height: line.height, fwhm: line.fwhm, prominence: line.prominence, snr: line.snr, standardError: line.standardError,
    centre: centre?.id ?? null, offset: expectedNm === null ? null : line.position - expectedNm, ambiguousWith: [...ambiguousWith], sidebandOf,
  }));
  return { peaks, named, bands: findBroadBands(x, detection.smoothed, detection.noise), warnings };
}
