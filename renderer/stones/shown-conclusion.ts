import type { StoneSummary } from '../../app/contract/cases.ts';
import type { ConclusionId } from '../../app/domain/conclusion.ts';

/** The sign a stone carries in lists and trees: what two persons disagree on is open again. */
export const shownConclusion = (stone: Pick<StoneSummary, 'conclusion' | 'stage'>): ConclusionId => (stone.stage === 'disagreed' ? 'undetermined' : stone.conclusion ?? 'undetermined');
