import type { ConclusionId } from '../../domain/conclusion.ts';
import { methodGroup } from '../method-group.ts';
import { cited, listed } from '../sentences.ts';
import { isHeavy } from '../weighed-finding.ts';
import type { WeighedFinding } from '../weighed-finding.ts';

/** A method of growth is named by a strong finding, or by supporting ones from two independent methods. */
function isNamed(findings: readonly WeighedFinding[]): boolean {
  return findings.some(isHeavy) || new Set(findings.map((finding) => methodGroup(finding.method))).size >= 2;
}

/** Each test once, in the order of weight; the findings themselves stand among the reasons. */
const sourcesOf = (findings: readonly WeighedFinding[]): string => listed([...new Set(findings.map((finding) => cited(finding).replace(', ', ' of ')))]);

export type GrowthMethod = { readonly conclusion: Extract<ConclusionId, 'grown-cvd' | 'grown-hpht' | 'grown-undetermined-method'>; readonly reason: string };

/** CVD or HPHT, from what speaks for growth in a laboratory; open where both are claimed or neither is named well enough. */
export function growthMethod(grown: readonly WeighedFinding[]): GrowthMethod {
  const cvd = grown.filter((finding) => finding.supports === 'grown-cvd');
  const hpht = grown.filter((finding) => finding.supports === 'grown-hpht');
  if (cvd.length > 0 && hpht.length > 0) {
    return { conclusion: 'grown-undetermined-method', reason: `The growth method stays open: ${sourcesOf(cvd)} for CVD, ${sourcesOf(hpht)} for HPHT.` };
  }
  if (isNamed(cvd)) return { conclusion: 'grown-cvd', reason: `CVD growth is named by ${sourcesOf(cvd)}.` };
  if (isNamed(hpht)) return { conclusion: 'grown-hpht', reason: `HPHT growth is named by ${sourcesOf(hpht)}.` };
  return { conclusion: 'grown-undetermined-method', reason: 'No finding names the growth method well enough.' };
}
