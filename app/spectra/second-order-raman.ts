import { SECOND_ORDER_RAMAN_CM1 } from '../reference/reference-lines.ts';
import type { DetectedLine } from './detect-lines.ts';
import { widthCm1 } from './emission-scale.ts';
import type { Match } from './match-centres.ts';

/** The band's area is about this share of the first-order line's, spread over 400 cm-1 (judgement). */
const AREA_SHARE = 0.25;
const BAND_WIDTH_CM1 = 400;
/** Usual height of a sideband against its zero-phonon line at room temperature (judgement). */
const SIDEBAND_SHARE = 0.3;
/** Narrower lines are no part of the band, nm. */
const LEAST_WIDTH_NM = 2;

/**
 * Whether a bump is diamond's second-order Raman band: in its place, broad, and better explained by it than as the sideband of `match`.
 * line and raman in nm; shift of the line in cm-1.
 */
export function isSecondOrder(line: DetectedLine, shiftCm1: number, match: Match | undefined, matches: readonly Match[], raman: DetectedLine): boolean {
  if (match !== undefined && match.centre !== null) return false;
  if (shiftCm1 < SECOND_ORDER_RAMAN_CM1.from || shiftCm1 > SECOND_ORDER_RAMAN_CM1.cutOff + 40 || line.fwhm <= LEAST_WIDTH_NM) return false;
  const owner = match?.sidebandOf ?? null;
  if (owner === null) return true;
  const expected = (AREA_SHARE * raman.height * widthCm1(raman)) / BAND_WIDTH_CM1;
  return matches.every((other) => other.centre?.id !== owner || SIDEBAND_SHARE * other.line.height < expected);
}
