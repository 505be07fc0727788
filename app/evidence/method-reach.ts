import type { Strength, Supports } from '../domain/finding.ts';
import type { MethodId } from '../domain/method.ts';

/** The best a method can bring home for each answer, and what that would be. */
export type Reach = { readonly supports: Supports; readonly strength: Strength; readonly by: string };

/**
 * Grades are judgement on the literature cited where the findings are made (optical centres, infrared, observations);
 * a method that brings nothing for an origin has an empty list.
 */
export const METHOD_REACH: Readonly<Record<MethodId, readonly Reach[]>> = {
  raman: [{ supports: 'diamond', strength: 'diagnostic', by: 'the diamond line near 1332 cm⁻¹ or an imitation’s lines' }],
  photoluminescence: [
    { supports: 'diamond', strength: 'diagnostic', by: 'the diamond line' },
    { supports: 'natural', strength: 'strong', by: 'N3 or the nickel–nitrogen family' },
    { supports: 'grown-cvd', strength: 'strong', by: 'the 596/597 nm pair, 468 nm or neutral silicon-vacancy' },
    { supports: 'grown-hpht', strength: 'strong', by: 'nickel at 883/885 nm or cobalt lines' },
  ],
  infrared: [
    { supports: 'natural', strength: 'strong', by: 'aggregated nitrogen' },
    { supports: 'grown-cvd', strength: 'strong', by: 'the line at 3123 cm⁻¹' },
  ],
  absorption: [{ supports: 'natural', strength: 'strong', by: 'cape lines' }],
  'growth-pattern': [
    { supports: 'natural', strength: 'strong', by: 'octahedral zoning or a dislocation network' },
    { supports: 'grown-cvd', strength: 'strong', by: 'striations of CVD growth' },
    { supports: 'grown-hpht', strength: 'strong', by: 'cuboctahedral sectors' },
  ],
  phosphorescence: [{ supports: 'grown-hpht', strength: 'strong', by: 'a lasting greenish-blue after-glow' }],
  'crossed-polarisers': [
    { supports: 'natural', strength: 'supporting', by: 'banded or tatami strain' },
    { supports: 'grown-cvd', strength: 'supporting', by: 'columnar strain' },
    { supports: 'grown-hpht', strength: 'supporting', by: 'no strain at all' },
  ],
  microscopy: [
    { supports: 'grown-hpht', strength: 'strong', by: 'metallic flux' },
    { supports: 'natural', strength: 'supporting', by: 'mineral inclusions' },
  ],
  magnet: [{ supports: 'grown-hpht', strength: 'strong', by: 'attraction by metal inclusions' }],
  'fluorescence-long-wave': [
    { supports: 'natural', strength: 'supporting', by: 'blue stronger under long-wave' },
    { supports: 'grown', strength: 'supporting', by: 'a glow stronger under short-wave' },
  ],
  'fluorescence-short-wave': [
    { supports: 'natural', strength: 'supporting', by: 'blue stronger under long-wave' },
    { supports: 'grown', strength: 'supporting', by: 'a glow stronger under short-wave' },
  ],
  'ultraviolet-transmission': [{ supports: 'natural', strength: 'supporting', by: 'opacity at 254 nm' }],
  'thermal-probe': [],
  'electrical-conductivity': [],
  'specific-gravity': [],
};
