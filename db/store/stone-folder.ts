import type { FindingView, RunView } from '../../app/contract/work.ts';
import { METHODS, METHOD_IDS, type MethodId } from '../../app/domain/method.ts';
import type { Proposal } from '../../app/evidence/proposal.ts';
import { proposeConclusion } from '../../app/evidence/propose-conclusion.ts';
import { protocolStateOf, type ProtocolState } from '../../app/protocol/protocol-state.ts';
import { runCounts } from '../../app/runs/run-counts.ts';
import type { ReadDb, WriteTx } from '../handle.ts';
import { conclusionsOfStone } from './conclusions-read.ts';
import { findingsOfStone } from './findings-read.ts';
import { instrumentsAt } from './instruments.ts';
import { theLaboratory } from './laboratory.ts';
import { runsOfStone } from './runs-read.ts';
import { stonePlace } from './runs.ts';

/** What was found for a stone, and what it amounts to. */
export type Evidence = { readonly runs: RunView[]; readonly findings: FindingView[]; readonly proposal: Proposal; readonly protocol: ProtocolState };

/** Judged with a lens, a lamp, a magnet or a scale: no instrument needs to be entered for them. */
const needsNoEntry = (method: MethodId): boolean => METHODS[method].yields === 'observation' && method !== 'growth-pattern';

/** The tests this house can do: those of its instruments in use, and those that need none. */
function methodsAvailable(db: ReadDb | WriteTx, at: string): MethodId[] {
  const ofInstruments = new Set(instrumentsAt(db, at).filter((view) => view.active).flatMap((view) => view.methods));
  return METHOD_IDS.filter((method) => needsNoEntry(method) || ofInstruments.has(method));
}

/** Steps of a stored weight in one carat. */
const CARAT_STEPS = 10_000;
type Lies = { kind: 'loose' | 'jewellery' | 'lot'; weight: number | null };
const LIES = 'SELECT i.kind, s.weight FROM stone s JOIN item i ON i.id = s.item_id WHERE s.id = @stoneId';

/** Weighs a stone's findings as they stand. `at` (UTC ISO 8601) says which instruments are in use. Null where there is no such stone. */
export function evidenceOfStone(db: ReadDb | WriteTx, stoneId: string, at: string): Evidence | null {
  const place = stonePlace(db, stoneId);
  if (place === null) return null;
  const lies = db.get<Lies>(LIES, { stoneId })!;
  const runs = runsOfStone(db, stoneId);
  const findings = findingsOfStone(db, stoneId);
  const stone = { mounted: place.mounted, setting: place.setting, colourClass: place.colourClass, weightCt: lies.weight === null ? null : lies.weight / CARAT_STEPS };
  const sound = runs.filter((run) => runCounts(run.method, run.instrumentState)).map((run) => run.method);
  const protocol = protocolStateOf(theLaboratory(db).settings.protocols, { ...stone, kind: lies.kind }, new Set(sound));
  const proposal = proposeConclusion({
    stone,
    findings: findings.filter((finding) => finding.state !== 'replaced'),
    methodsDone: [...new Set(runs.map((run) => run.method))],
    methodsAvailable: methodsAvailable(db, at),
    protocol: { name: protocol.name, asks: protocol.asks },
    disputed: conclusionsOfStone(db, stoneId).at(-1)?.confirmation?.agrees === false,
  });
  return { runs, findings, proposal, protocol };
}
