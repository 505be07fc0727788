import type { WeighedFinding } from '../weighed-finding.ts';

/**
 * Boron beside aggregated nitrogen is most unusual in one natural crystal and has been the sign of a CVD layer on a natural core
 * (Ardon & McElhenny, Gems & Gemology Lab Notes, Spring 2019). The finding exists only where both were seen.
 */
export const compositeSuspicion = (counted: readonly WeighedFinding[]): WeighedFinding[] => counted.filter((finding) => finding.code === 'infrared:boron');

export const SUSPECT_LAYER = 'A grown layer on a natural core is suspected: clean the stone, repeat the infrared test, and look at several facets with deep ultraviolet and photoluminescence before an origin is stated.';

/**
 * What sees the stone's skin: a growth pattern that was visible, or a luminescence spectrum in which some centre was named. One in
 * which nothing stands out has not shown that it could see.
 */
function sawTheSkin({ method, code }: WeighedFinding): boolean {
  if (method === 'growth-pattern') return code !== 'pattern:none-seen';
  return method === 'photoluminescence' && /^(centre|family):/.test(code);
}

/** Was a grown layer looked for by a method that would show it? */
export const layerLookedFor = (counted: readonly WeighedFinding[]): boolean => counted.some(sawTheSkin);

export const LAYER_NOT_LOOKED_FOR = 'The findings are those of natural growth, yet a CVD layer on a natural core shows the same until its skin is looked at (Ardon & McElhenny, Gems & Gemology Lab Notes, Spring 2019): photoluminescence or growth pattern is needed before an origin is stated.';
