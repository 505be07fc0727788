import { GLOW_COLOURS, GLOW_STRENGTHS } from '../../../../app/domain/observation.ts';
import type { Observation } from '../../../../app/domain/observation.ts';

/** Every observation the schema allows, one field value at a time. */
export const EVERY_OBSERVATION: readonly Observation[] = [
  ...GLOW_COLOURS.flatMap((colour) => GLOW_STRENGTHS.flatMap((strength): Observation[] => [
    { method: 'fluorescence-long-wave', colour, strength }, { method: 'fluorescence-short-wave', colour, strength },
    ...[0, 5, 60].map((seconds): Observation => ({ method: 'phosphorescence', colour, strength, seconds })),
  ])),
  ...(['octahedral-zoning', 'dislocation-network', 'striations', 'cuboctahedral-sectors', 'layer-boundary', 'none-seen', 'other'] as const).map((pattern): Observation => ({ method: 'growth-pattern', pattern })),
  ...(['banded', 'mottled', 'tatami', 'columnar', 'none-seen', 'other'] as const).map((pattern): Observation => ({ method: 'crossed-polarisers', pattern })),
  ...(['none', 'weak', 'clear'] as const).map((response): Observation => ({ method: 'magnet', response })),
  ...(['metallic-flux', 'pinpoints', 'crystal-inclusion', 'mantle-mineral', 'feather', 'graphitised-fracture', 'green-graining', 'graining', 'inscription', 'facet-doubling', 'gas-bubbles', 'nothing-seen'] as const).map((feature): Observation => ({ method: 'microscopy', features: [feature] })),
  ...(['diamond-like', 'not-diamond-like'] as const).map((reading): Observation => ({ method: 'thermal-probe', reading })),
  ...(['conducts', 'does-not-conduct'] as const).map((reading): Observation => ({ method: 'electrical-conductivity', reading })),
  ...[3.515, 3.53, 3.56, 5.8].map((value): Observation => ({ method: 'specific-gravity', value, uncertainty: 0.01 })),
  { method: 'refractive-index', by: 'refractometer', reading: 'over-scale' },
  ...[1.762, 2.417, 2.16].map((value): Observation => ({ method: 'refractive-index', by: value < 2 ? 'refractometer' : 'reflectivity', reading: 'value', value })),
  ...(['opaque', 'partly', 'transparent'] as const).map((reading): Observation => ({ method: 'ultraviolet-transmission', reading })),
];
