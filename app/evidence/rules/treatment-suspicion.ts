import { hasWeight } from '../weighed-finding.ts';
import type { WeighedFinding } from '../weighed-finding.ts';

export type Treatment = { readonly state: 'none' | 'question' | 'suspected'; readonly findings: readonly WeighedFinding[] };

/** Signs of aggregated nitrogen: untreated natural stones that hold it show H2 too (Hainschwang et al., Diamond Relat. Mater. 2006). */
const AGGREGATED = /^(infrared:(type-Ia(A|AB|B)|platelet)|centre:(N3|N2))$/;

/** Radiation lines beside it say that the stone was irradiated and warmed (Collins, Davies, Woods 1986). */
const RADIATION = /^centre:(GR1|GR1-744|ND1|TR12|3H|RAD)/;

/**
 * Signs of treatment among the counted findings. One weak line beside aggregated nitrogen is a question; anything more, a
 * line beside lines of radiation, or one in a stone without aggregated nitrogen, is a suspicion.
 */
export function treatmentSuspicion(counted: readonly WeighedFinding[]): Treatment {
  const findings = counted.filter((finding) => finding.supports === 'treatment' && hasWeight(finding));
  if (findings.length === 0) return { state: 'none', findings };
  const oneLine = new Set(findings.map((finding) => finding.code)).size === 1 && findings.every((finding) => finding.code.startsWith('centre:') && finding.strength === 'supporting');
  const aggregated = counted.some((finding) => AGGREGATED.test(finding.code) && hasWeight(finding));
  const irradiated = counted.some((finding) => RADIATION.test(finding.code));
  return { state: oneLine && aggregated && !irradiated ? 'question' : 'suspected', findings };
}

export const TREATMENT_LEAVES_SCREENING = 'A finding of treatment was recorded: treated stones are outside this screening. Their treatment needs infrared, absorption and cooled photoluminescence, judged by a laboratory equipped for it.';
export const TREATMENT_IS_A_QUESTION = 'One line that treatment can make stands beside aggregated nitrogen. Untreated natural stones show it as well (Hainschwang et al., Diamond Relat. Mater. 2006), so it is a question and no verdict: repeat it with a better signal, the stone cooled.';
