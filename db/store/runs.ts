import type { RunView, SpectrumView } from '../../app/contract/work.ts';
import { colourClass, type ColourClass } from '../../app/domain/colour-class.ts';
import type { RunPlace } from '../../app/runs/check-run.ts';
import type { Change } from '../change.ts';
import type { ReadDb, StoreHandle, WriteTx } from '../handle.ts';
import { bytesKept, runsOfStone, type KeptBytes } from './runs-read.ts';
import { putRun, type NewRun } from './runs-write.ts';

/** What is asked of a stone before a run is recorded for it. */
export type StonePlace = RunPlace & { readonly stoneId: string; readonly caseId: string; readonly itemId: string; readonly colourClass: ColourClass };

export function stonePlace(db: ReadDb | WriteTx, stoneId: string): StonePlace | null {
  const row = db.get<{ id: string; case_id: string; item_id: string; label: string; mounted: number; colour_class: string; setting: string | null; last: string | null }>(`
    SELECT s.id, s.case_id, s.item_id, s.label, s.mounted, s.colour_class, i.setting,
           (SELECT json_extract(c.content, '$.event') FROM custody_entry c WHERE c.item_id = s.item_id
            AND json_extract(c.content, '$.event') IN ('received', 'returned') ORDER BY c.seq DESC LIMIT 1) AS last
    FROM stone s JOIN item i ON i.id = s.item_id WHERE s.id = @stoneId`, { stoneId });
  if (row === undefined) return null;
  return {
    stoneId: row.id, caseId: row.case_id, itemId: row.item_id, stoneLabel: row.label, mounted: row.mounted === 1,
    setting: row.setting as StonePlace['setting'], returned: row.last === 'returned', colourClass: colourClass.parse(row.colour_class),
  };
}

export type RunsStore = {
  place(stoneId: string): Promise<StonePlace | null>;
  caseExists(caseId: string): Promise<boolean>;
  kept(caseId: string, digests: readonly string[]): Promise<Map<string, KeptBytes>>;
  ofStone(stoneId: string): Promise<RunView[]>;
  /** One transaction for everything the run brought. Null where there is no such stone. */
  record(change: Change & { personId: string }, run: NewRun): Promise<RunView | null>;
  spectrumView(stoneId: string, spectrumId: string): Promise<SpectrumView | null>;
};

export function createRunsStore(handle: StoreHandle, newId: () => string): RunsStore {
  return {
    async place(stoneId) { return stonePlace(handle.read, stoneId); },
    async caseExists(caseId) { return handle.read.get('SELECT 1 AS one FROM case_record WHERE id = @caseId', { caseId }) !== undefined; },
    async kept(caseId, digests) { return bytesKept(handle.read, caseId, digests); },
    async ofStone(stoneId) { return runsOfStone(handle.read, stoneId); },
    record: (change, run) => handle.transact((tx) => {
      const runId = putRun(tx, newId, change, run);
      return runId === null ? null : runsOfStone(tx, run.stoneId).find((view) => view.id === runId) ?? null;
    }),
    async spectrumView(stoneId, spectrumId) {
      return runsOfStone(handle.read, stoneId).flatMap((run) => run.spectra).find((view) => view.id === spectrumId) ?? null;
    },
  };
}
