import { EVIDENCE_TABLE_VERSION } from './evidence-table.ts';
import { proposeConclusion } from './propose-conclusion.ts';
import { proposal, RULES_VERSION } from './proposal.ts';
import type { Proposal } from './proposal.ts';

export type Rederivation =
  | { readonly state: 'same' }
  /** Same versions, another outcome: what is stored was altered, or the program has a fault. */
  | { readonly state: 'differs'; readonly now: Proposal }
  /** Made with other versions: `now` is what the present ones say of the same findings. */
  | { readonly state: 'other-versions'; readonly made: string; readonly present: string; readonly now: Proposal }
  /** Made before proposals kept what they were made from. */
  | { readonly state: 'no-basis' };

const versions = (rules: string, table: string | undefined): string => [rules, table ?? 'table not stored'].join(', ');

/** One form for both: stored proposals went through JSON, new ones did not. */
const asStored = (one: Proposal): string => JSON.stringify(proposal.parse(JSON.parse(JSON.stringify(one))));

/** Makes a stored proposal again from what it was made from. */
export function rederive(stored: Proposal): Rederivation {
  if (stored.basis === undefined) return { state: 'no-basis' };
  const now = proposeConclusion(stored.basis);
  if (stored.rules !== RULES_VERSION || stored.table !== EVIDENCE_TABLE_VERSION) {
    return { state: 'other-versions', made: versions(stored.rules, stored.table), present: versions(RULES_VERSION, EVIDENCE_TABLE_VERSION), now };
  }
  return asStored(now) === asStored(stored) ? { state: 'same' } : { state: 'differs', now };
}
