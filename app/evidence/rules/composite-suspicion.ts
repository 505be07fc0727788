import { hasWeight, isHeavy } from '../weighed-finding.ts';
import type { WeighedFinding } from '../weighed-finding.ts';

/**
 * What a CVD layer shows beside the natural core under it: boron, which the finding's code names only beside aggregated nitrogen, and
 * silicon or lines of CVD growth, however weak (Ardon & McElhenny, Gems & Gemology Lab Notes, Spring 2019; Gemmological studies of
 * “hybrid diamond”, Int. Gemmological Conf. 2023).
 */
const OF_A_LAYER = /^(infrared:boron|infrared:3123|centre:(SIV|SIV0|SI830|SI856|CVD\d+)|family:cvd-533-563|pattern:(layer-boundary|striations))$/;

/** Signs of a layer among the counted findings of a stone whose bulk is natural. Neutral ones have lost their weight, boron never had any. */
export const compositeSuspicion = (counted: readonly WeighedFinding[]): WeighedFinding[] =>
  counted.filter((finding) => OF_A_LAYER.test(finding.code) && (hasWeight(finding) || finding.code === 'infrared:boron'));

export const SUSPECT_LAYER = 'A grown layer on a natural core is suspected: clean the stone, repeat the infrared test, and look at several facets with deep ultraviolet and photoluminescence before an origin is stated.';

const isStrongLine = (finding: WeighedFinding): boolean => finding.method === 'photoluminescence' && /^(centre|family):/.test(finding.code) && isHeavy(finding);
const isVacancyLine = ({ method, code }: WeighedFinding): boolean => method === 'photoluminescence' && code === 'centre:GR1';
const isSeenPattern = ({ method, code }: WeighedFinding): boolean => method === 'growth-pattern' && code !== 'pattern:none-seen';
const isReadInfrared = ({ method, code }: WeighedFinding): boolean => method === 'infrared' && code !== 'infrared:type-not-determined';

/**
 * Was a grown layer looked for by a method that would show it? By a luminescence spectrum with a strong line: one in which nothing
 * stands out clearly has not shown that it could see, and one with GR1 may hide silicon-vacancy behind it (Heavily irradiated CVD
 * synthetic diamond, Gems & Gemology Lab Notes, Fall 2014). Or by a growth pattern that was visible together with infrared, which would
 * show boron: the pattern of the core can hide a layer.
 */
export const layerLookedFor = (counted: readonly WeighedFinding[]): boolean =>
  (counted.some(isStrongLine) && !counted.some(isVacancyLine)) || (counted.some(isSeenPattern) && counted.some(isReadInfrared));

export const LAYER_NOT_LOOKED_FOR = 'The findings are those of natural growth, yet a CVD layer on a natural core shows the same until its skin is looked at (Ardon & McElhenny, Gems & Gemology Lab Notes, Spring 2019): photoluminescence with a clear line, or growth pattern together with infrared, is needed before an origin is stated.';
