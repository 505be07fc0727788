import { DIAMOND_RAMAN_CM1 } from '../reference/reference-lines.ts';
import type { AnalysisWarning } from './analysis.ts';
import { airFromVacuum, vacuumFromAir } from './convert-axis.ts';
import type { DetectedLine } from './detect-lines.ts';
import type { DiamondRaman } from './diamond-raman.ts';
import type { Match } from './match-centres.ts';

/** A missing diamond line may then not count against diamond. */
export type LaserDoubt = { readonly warning: AnalysisWarning };

/** A diode laser may be this far from its nominal wavelength, nm (judgement). */
export const MOST_LASER_ERROR_NM = 6;
const LEAST_SNR = 15;
const WIDEST_CM1 = 60;
/** Luminescence lies on the long side of its laser; so far on the other side, nm, and this clear over the noise, the laser was another (judgement). */
const BELOW_LASER_NM = 5;
const LEAST_SNR_BELOW = 10;

/** Where a missing diamond line is better explained by a wrong laser wavelength than by the stone. */
export function checkLaser(raman: DiamondRaman | null, lines: readonly DetectedLine[], matches: readonly Match[], laserNm: number, unit: 'nm' | 'raman-shift'): LaserDoubt | null {
  if (raman?.result.state === 'present') return null;
  const below = unit === 'nm' ? lines.filter((line) => line.snr >= LEAST_SNR_BELOW && line.position < laserNm - BELOW_LASER_NM && !matches.find((m) => m.line === line)?.artefact) : [];
  if (below.length > 0) {
    return {
      warning: { code: 'laser-doubtful', message: `Light stands out at ${below.slice(0, 3).map((line) => line.position.toFixed(1)).join(', ')} nm, on the short side of the stated laser (${laserNm} nm), where a stone does not shine: check the laser’s wavelength.` },
    };
  }
  if (raman === null) return null;
  const unnamed = lines.filter((line) => {
    const match = matches.find((m) => m.line === line);
    return line.snr >= LEAST_SNR && line.fwhm <= WIDEST_CM1 * line.position ** 2 * 1e-7 && (match === undefined || (match.centre === null && match.artefact === null && match.sidebandOf === null));
  });
  for (const line of unnamed.sort((a, b) => b.height - a.height)) {
    const implied = airFromVacuum(1 / (1 / vacuumFromAir(line.position) + DIAMOND_RAMAN_CM1 * 1e-7));
    if (Math.abs(implied - laserNm) > MOST_LASER_ERROR_NM) continue;
    return {
      warning: { code: 'laser-doubtful', message: `A narrow line at ${line.position.toFixed(2)} nm would be the diamond line if the laser were ${implied.toFixed(2)} nm instead of ${laserNm} nm: check the laser’s wavelength.` },
    };
  }
  const centres = matches.filter((match) => match.centre !== null && match.line.snr >= 10);
  if (raman.result.state === 'absent' && centres.length > 0) {
    return {
      warning: { code: 'laser-doubtful', message: `Centres of diamond are there (${centres.slice(0, 3).map((match) => match.centre!.name).join(', ')}), but no diamond line where the laser puts it: check the laser’s wavelength, or repeat with another laser.` },
    };
  }
  return null;
}
