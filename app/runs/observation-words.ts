import type { GLOW_STRENGTHS } from '../domain/observation.ts';

/** How a glow's strength is said in a line of text. */
export const GLOW_WORDS: Readonly<Record<(typeof GLOW_STRENGTHS)[number], string>> = {
  inert: 'inert', 'very-weak': 'very weak', weak: 'weak', moderate: 'moderate', strong: 'strong', 'very-strong': 'very strong',
};

/** Words of an observation that read otherwise in a sentence than in the list of choices; the rest are said as they are. */
export const OBSERVATION_WORDS: Readonly<Record<string, string>> = {
  none: 'no colour', 'greenish-blue': 'greenish blue', 'yellow-green': 'yellow-green', uneven: 'uneven colour',
  'octahedral-zoning': 'octahedral zoning', 'dislocation-network': 'dislocation network', 'cuboctahedral-sectors': 'cuboctahedral sectors',
  'layer-boundary': 'layer boundary', 'none-seen': 'no pattern seen', other: 'other pattern',
  'metallic-flux': 'metallic flux', 'crystal-inclusion': 'crystal inclusion', 'mantle-mineral': 'mantle mineral (by its Raman spectrum)', 'graphitised-fracture': 'graphitised fracture', 'over-scale': 'above the scale',
  'green-graining': 'green graining', 'facet-doubling': 'facet doubling', 'gas-bubbles': 'gas bubbles', 'nothing-seen': 'nothing seen',
  'diamond-like': 'diamond-like', 'not-diamond-like': 'not diamond-like', 'does-not-conduct': 'does not conduct',
};
