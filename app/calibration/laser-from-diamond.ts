import { DIAMOND_RAMAN_CM1 } from '../reference/reference-lines.ts';
import { airFromVacuum, vacuumFromAir } from '../spectra/convert-axis.ts';

/** How far the line of a good, unstrained stone may lie from the working value, cm-1, one standard deviation (quoted 1332–1332.5; judgement). */
const LINE_UNCERTAINTY_CM1 = 0.3;

export type LaserFromDiamond = {
  /** Laser wavelength in air, nm. */
  readonly laserNm: number;
  /** Standard uncertainty, nm. */
  readonly uncertaintyNm: number;
};

/**
 * The laser's wavelength from the diamond line of a known stone at room temperature: 1/λ0 = 1/λR + 1332.4·10⁻⁷ nm⁻¹ (vacuum).
 * @param foundNm where the line was found, nm in air
 * @param uncertaintyNm standard uncertainty of that, scale included
 */
export function laserFromDiamond(foundNm: number, uncertaintyNm: number, lineCm1 = DIAMOND_RAMAN_CM1): LaserFromDiamond {
  const scattered = vacuumFromAir(foundNm);
  const laser = 1 / (1 / scattered + lineCm1 * 1e-7);
  const fromLine = laser * laser * 1e-7 * LINE_UNCERTAINTY_CM1;
  const fromPosition = (laser / scattered) ** 2 * uncertaintyNm;
  return { laserNm: airFromVacuum(laser), uncertaintyNm: Math.hypot(fromLine, fromPosition) };
}
