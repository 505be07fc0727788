import type { MethodId } from '../../domain/method.ts';
import type { WeighedFinding } from '../weighed-finding.ts';

/**
 * Boron beside aggregated nitrogen is most unusual in one natural crystal and has been the sign of a CVD layer on a natural core
 * (Ardon & McElhenny, Gems & Gemology Lab Notes, Spring 2019). The finding exists only where both were seen.
 */
export const compositeSuspicion = (counted: readonly WeighedFinding[]): WeighedFinding[] => counted.filter((finding) => finding.code === 'infrared:boron');

export const SUSPECT_LAYER = 'A grown layer on a natural core is suspected: clean the stone, repeat the infrared test, and look at several facets with deep ultraviolet and photoluminescence before an origin is stated.';

/** The methods that look at the stone's skin as well as its bulk. */
const SEE_A_LAYER: readonly MethodId[] = ['photoluminescence', 'growth-pattern'];

/** Said with every natural proposal that rests on the bulk of the stone alone. */
export function unseenLayer(counted: readonly WeighedFinding[]): string[] {
  const looked = counted.some((finding) => SEE_A_LAYER.includes(finding.method));
  return looked ? [] : ['A grown layer on a natural core was not looked for: photoluminescence or growth pattern would show it.'];
}
