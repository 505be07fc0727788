import type { FindingView, RunView } from '../../app/contract/work.ts';
import { METHODS, METHOD_IDS, type MethodId } from '../../app/domain/method.ts';
import type { Proposal } from '../../app/evidence/proposal.ts';
import { proposeConclusion } from '../../app/evidence/propose-conclusion.ts';
import type { ReadDb, WriteTx } from '../handle.ts';
import { findingsOfStone } from './findings-read.ts';
import { instrumentsAt } from './instruments.ts';
import { runsOfStone } from './runs-read.ts';
import { stonePlace } from './runs.ts';

/** What was found for a stone, and what it amounts to. */
export type Evidence = { readonly runs: RunView[]; readonly findings: FindingView[]; readonly proposal: Proposal };

/** Judged with a lens, a lamp, a magnet or a scale: no instrument needs to be entered for them. */
const needsNoEntry = (method: MethodId): boolean => METHODS[method].yields === 'observation' && method !== 'growth-pattern';

/** The tests this house can do: those of its instruments in use, and those that need none. */
function methodsAvailable(db: ReadDb | WriteTx, at: string): MethodId[] {
  const ofInstruments = new Set(instrumentsAt(db, at).filter((view) => view.active).flatMap((view) => view.methods));
  return METHOD_IDS.filter((method) => needsNoEntry(method) || ofInstruments.has(method));
}

/** Weighs a stone's findings as they stand. `at` (UTC ISO 8601) says which instruments are in use. Null where there is no such stone. */
export function evidenceOfStone(db: ReadDb | WriteTx, stoneId: string, at: string): Evidence | null {
  const place = stonePlace(db, stoneId);
  if (place === null) return null;
  const runs = runsOfStone(db, stoneId);
  const findings = findingsOfStone(db, stoneId);
  const proposal = proposeConclusion({
    stone: { mounted: place.mounted, setting: place.setting, colourClass: place.colourClass },
    findings: findings.filter((finding) => finding.state !== 'replaced'),
    methodsDone: [...new Set(runs.map((run) => run.method))],
    methodsAvailable: methodsAvailable(db, at),
  });
  return { runs, findings, proposal };
}
