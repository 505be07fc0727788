import type { FileTrial } from '../../app/contract/work.ts';
import type { MethodId } from '../../app/domain/method.ts';

const ABSORBS: readonly string[] = ['absorbance', 'transmittance', 'percent-transmittance', 'absorption-coefficient', 'reflectance', 'percent-reflectance'];
/** Infrared of diamond is looked at below this, cm-1; above it a wavenumber is visible light. */
const INFRARED_ENDS_CM1 = 9000;

/** The method whose files look like this, or null where the units do not tell. A person has the last word. */
export function guessMethod(trial: Pick<FileTrial, 'blocks'> | undefined): MethodId | null {
  const block = trial?.blocks[0];
  if (!block) return null;
  switch (block.xUnit) {
    case 'raman-shift': return 'raman';
    case 'cm-1': return Math.max(block.firstX, block.lastX) < INFRARED_ENDS_CM1 ? 'infrared' : null;
    case 'nm': case 'nm-vacuum': case 'angstrom': return ABSORBS.includes(block.yUnit) ? 'absorption' : 'photoluminescence';
    default: return null;
  }
}
