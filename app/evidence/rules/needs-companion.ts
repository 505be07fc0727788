import { hasWeight } from '../weighed-finding.ts';
import type { WeighedFinding } from '../weighed-finding.ts';

/** Facts that have weight only beside another: what they are, and what must stand beside them. */
const COMPANIONS: readonly { readonly code: RegExp; readonly beside: RegExp }[] = [
  // 3107 forms in grown stones on annealing (Day et al., Diamond Relat. Mater. 2024); beside aggregated nitrogen it supports natural growth.
  { code: /^infrared:3107$/, beside: /^infrared:type-Ia/ },
  // The lesser cape lines are broad and weak: they count beside N3 or N2 only.
  { code: /^centre:CAPE/, beside: /^centre:(N3|N2)$/ },
];

/** The findings, where those that lack their companion have lost their weight. `findings` are those that count. */
export function withCompanions(findings: readonly WeighedFinding[]): WeighedFinding[] {
  return findings.map((finding) => {
    const needed = COMPANIONS.find((entry) => entry.code.test(finding.code));
    if (needed === undefined || findings.some((other) => needed.beside.test(other.code) && hasWeight(other))) return finding;
    return { ...finding, strength: 'neutral', supports: 'none' };
  });
}
