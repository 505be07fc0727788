import type { FindingFact, Strength, Supports } from '../../../../app/domain/finding.ts';
import { METHOD_IDS } from '../../../../app/domain/method.ts';
import type { MethodId } from '../../../../app/domain/method.ts';
import { proposeConclusion } from '../../../../app/evidence/propose-conclusion.ts';
import type { ProposalInput } from '../../../../app/evidence/propose-conclusion.ts';
import type { Proposal } from '../../../../app/evidence/proposal.ts';
import type { WeighedFinding } from '../../../../app/evidence/weighed-finding.ts';
import { opticalCentre } from '../../../../app/reference/optical-centres.ts';

export const fact = (code: string, supports: Supports, strength: Strength, method: MethodId): FindingFact => ({ code, statement: `${code} seen.`, supports, strength, method });

/** The fact of an optical centre with the weight its table gives it. */
export function centre(id: string, method: MethodId = 'photoluminescence'): FindingFact {
  const entry = opticalCentre(id);
  if (entry === undefined) throw new Error(`no centre ${id}`);
  return { code: `centre:${id}`, statement: `${entry.name} seen.`, supports: entry.strength === 'neutral' ? 'none' : entry.supports, strength: entry.strength, method };
}

export const DIAMOND = fact('diamond-line:present', 'diamond', 'diagnostic', 'raman');

export const weigh = (facts: readonly FindingFact[], more: Partial<WeighedFinding> = {}): WeighedFinding[] =>
  facts.map((entry, i) => ({ ...entry, id: `${more.id ?? 'f'}${i}`, counts: true, state: 'proposed', run: `R${i + 1}`, ...more, ...(more.id === undefined ? {} : { id: `${more.id}${i}` }) }));

export type Stone = ProposalInput['stone'];
export const LOOSE: Stone = { mounted: false, setting: null, colourClass: 'colourless' };

export const propose = (findings: readonly WeighedFinding[], more: Partial<ProposalInput> = {}): Proposal =>
  proposeConclusion({ stone: LOOSE, findings, methodsDone: [...new Set(findings.map((finding) => finding.method))], methodsAvailable: METHOD_IDS, ...more });

/** The proposal for plain facts on a loose colourless stone whose diamond line was seen. */
export const proposeFor = (...facts: FindingFact[]): Proposal => propose(weigh([DIAMOND, ...facts]));
