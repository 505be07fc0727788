import type { FindingFact } from '../../app/domain/finding.ts';
import type { WriteTx } from '../handle.ts';
import { finding } from '../schema/index.ts';

export type FindingPlace = {
  readonly at: string; readonly caseId: string; readonly stoneId: string; readonly runId: string | null; readonly analysisId: string | null;
  readonly origin: 'analysis' | 'observation' | 'examiner';
};

type Decided = { readonly state: 'accepted'; readonly by: string };

/** Writes findings inside the caller's transaction, the same words once, and returns their ids. */
export function proposeFindings(tx: WriteTx, newId: () => string, place: FindingPlace, facts: readonly FindingFact[], decided?: Decided): string[] {
  const seen = new Set<string>();
  const ids: string[] = [];
  for (const fact of facts) {
    const key = `${fact.code}\n${fact.statement}`;
    if (seen.has(key)) continue;
    seen.add(key);
    const id = newId();
    tx.orm.insert(finding).values({
      id, caseId: place.caseId, stoneId: place.stoneId, runId: place.runId, analysisId: place.analysisId, origin: place.origin,
      code: fact.code, statement: fact.statement, strength: fact.strength, supports: fact.supports, method: fact.method,
      caution: fact.caution ?? '', source: fact.source ?? '',
      state: decided?.state ?? 'proposed', reason: '', decidedBy: decided?.by ?? null, decidedAt: decided === undefined ? null : place.at, createdAt: place.at,
    }).run();
    ids.push(id);
  }
  return ids;
}

/** Takes back what older analyses of a spectrum only proposed; tells how many, and what was decided and so stays. */
export function replaceProposals(tx: WriteTx, spectrumId: string, newestAnalysisId: string): { replaced: number; kept: { code: string; statement: string }[] } {
  const older = `analysis_id IN (SELECT id FROM analysis WHERE spectrum_id = @spectrumId AND id <> @newestAnalysisId)`;
  const { changes } = tx.run(`UPDATE finding SET state = 'replaced' WHERE state = 'proposed' AND ${older}`, { spectrumId, newestAnalysisId });
  const kept = tx.all<{ code: string; statement: string }>(`SELECT code, statement FROM finding WHERE state IN ('accepted', 'set-aside') AND ${older}`, { spectrumId, newestAnalysisId });
  return { replaced: changes, kept };
}
