import type { FindingFact } from '../domain/finding.ts';
import type { StrainPattern } from './strain-pattern.ts';

export const INDICATION_WORDS: Readonly<Record<StrainPattern['indication'], string>> = { directional: 'directional', mottled: 'mottled', 'nearly-none': 'nearly none' };

/** What the photograph says of one stone's strain. An indication without weight: the examiner names the pattern. */
export function polariserFindings(pattern: StrainPattern): FindingFact[] {
  const direction = pattern.directionDegrees === null ? '' : `, along ${Math.round(pattern.directionDegrees) % 180}°`;
  return [{
    method: 'crossed-polarisers', code: `strain-measured:${pattern.indication}`, strength: 'neutral', supports: 'none',
    statement: `Crossed polarisers, photograph: strain ${INDICATION_WORDS[pattern.indication]}${direction} (coherence ${pattern.coherence.toFixed(2)}, contrast ${pattern.contrast.toFixed(2)}, dark ${Math.round(100 * pattern.dark)} %, confidence ${Math.round(100 * pattern.confidence)} %).`,
    caution: 'an indication: facets, inclusions and the lamp can look alike; the examiner names the pattern', source: 'structure tensor, Bigün & Granlund, ICCV 1987',
  }];
}
