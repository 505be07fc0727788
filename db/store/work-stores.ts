import type { StoreHandle } from '../handle.ts';
import { createCalibrationsStore, type CalibrationsStore } from './calibrations.ts';
import { createConclusionsStore, type ConclusionsStore } from './conclusions.ts';
import { createFindingsStore, type FindingsStore } from './findings.ts';
import { createInstrumentsStore, type InstrumentsStore } from './instruments.ts';
import { createPhotoAnalysesStore, type PhotoAnalysesStore } from './photo-analyses.ts';
import { createPiecesStore, type PiecesStore } from './pieces.ts';
import { createLotsStore, type LotsStore } from './lots.ts';
import { createReportDraftsStore, type ReportDraftsStore } from './report-drafts.ts';
import { createReportHouseStore, type ReportHouseStore } from './report-house.ts';
import { createReportsStore, type ReportsStore } from './reports.ts';
import { createRunsStore, type RunsStore } from './runs.ts';
import { createSpectraStore, type SpectraStore } from './spectra.ts';
import { evidenceOfStone, type Evidence } from './stone-folder.ts';
import { createWeightsStore, type WeightsStore } from './weights.ts';

/** The stores of the work on a stone. */
export type WorkStores = {
  readonly instruments: InstrumentsStore;
  readonly calibrations: CalibrationsStore;
  readonly runs: RunsStore;
  readonly spectra: SpectraStore;
  readonly findings: FindingsStore;
  readonly conclusions: ConclusionsStore;
  readonly reports: ReportsStore;
  readonly reportDrafts: ReportDraftsStore;
  readonly reportHouse: ReportHouseStore;
  readonly pieces: PiecesStore;
  readonly photoAnalyses: PhotoAnalysesStore;
  readonly lots: LotsStore;
  readonly weights: WeightsStore;
  /** All that was found for a stone, and what it amounts to at an instant. */
  evidence(stoneId: string, at: string): Promise<Evidence | null>;
};

export function createWorkStores(handle: StoreHandle, newId: () => string): WorkStores {
  return {
    instruments: createInstrumentsStore(handle, newId),
    calibrations: createCalibrationsStore(handle, newId),
    runs: createRunsStore(handle, newId),
    spectra: createSpectraStore(handle, newId),
    findings: createFindingsStore(handle, newId),
    conclusions: createConclusionsStore(handle, newId),
    reports: createReportsStore(handle, newId),
    reportDrafts: createReportDraftsStore(handle, newId),
    reportHouse: createReportHouseStore(handle, newId),
    pieces: createPiecesStore(handle, newId),
    photoAnalyses: createPhotoAnalysesStore(handle, newId),
    lots: createLotsStore(handle, newId),
    weights: createWeightsStore(handle, newId),
    async evidence(stoneId, at) { return evidenceOfStone(handle.read, stoneId, at); },
  };
}
