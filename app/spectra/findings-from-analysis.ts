import type { FindingFact } from '../domain/finding.ts';
import { absorptionBandFindings, centreFindings } from './centre-findings.ts';
import type { FindingInput } from './finding-input.ts';
import { identityFindings } from './identity-findings.ts';
import { infraredFindings } from '../infrared/infrared-findings.ts';
import { ultravioletFindings } from './ultraviolet-findings.ts';

/** What the numbers mean, one fact each, most telling first within each group. */
export function findingsFromAnalysis(input: FindingInput): FindingFact[] {
  return [...identityFindings(input), ...centreFindings(input), ...absorptionBandFindings(input), ...infraredFindings(input), ...ultravioletFindings(input)];
}
