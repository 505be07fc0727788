import type { FoundLaser } from './find-laser.ts';

/** Farther from its nominal wavelength a laser is rather another one than off (judgement). */
const USUAL_NM = 2;

/** What came out, as it stands beside the instrument's other checks. */
export function laserWords({ laserNm, uncertaintyNm, foundNm }: FoundLaser, nominalNm: number): string {
  const off = laserNm - nominalNm;
  const doubt = Math.abs(off) > USUAL_NM ? ' That is far for a laser of this name: make sure that the line is the diamond line.' : '';
  return `Diamond line at ${foundNm.toFixed(3)} nm: the laser is at ${laserNm.toFixed(3)} ± ${uncertaintyNm.toFixed(3)} nm in air, ${Math.abs(off).toFixed(3)} nm ${off < 0 ? 'below' : 'above'} the ${nominalNm} nm it was taken for.${doubt}`;
}
