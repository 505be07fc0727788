import type { lotsContract } from '../../app/contract/lots.ts';
import type { reportDraftsContract } from '../../app/contract/report-drafts.ts';
import type { reportHouseContract } from '../../app/contract/report-house.ts';
import type { workContract } from '../../app/contract/work.ts';
import { createBundleService } from './bundle.ts';
import { createCalibrationServices } from './calibrations.ts';
import { createConclusionServices } from './conclusions.ts';
import { createFindingServices } from './findings.ts';
import { createInstrumentServices } from './instruments.ts';
import { createLaserServices } from './laser-calibration.ts';
import { createLotServices } from './lots.ts';
import { createRawService } from './raw.ts';
import { createReportDraftServices } from './report-drafts.ts';
import { createReportHouseServices } from './report-house.ts';
import { createReportServices } from './reports.ts';
import { createRecordRunService } from './runs-record.ts';
import { createTryFilesService } from './runs-try-files.ts';
import type { Services } from './service.ts';
import { createSpectraServices } from './spectra.ts';
import { createStoneFolderService } from './stone-folder.ts';
import { createWeightServices } from './weights.ts';
import type { WorkDeps } from './work-context.ts';

/** Every operation of the work on a stone: instruments, runs, findings, conclusions, lots, reports, bundle. */
export function createWorkServices(deps: WorkDeps): Pick<Services, keyof typeof workContract | keyof typeof lotsContract | keyof typeof reportDraftsContract | keyof typeof reportHouseContract> {
  return {
    ...createInstrumentServices(deps),
    ...createCalibrationServices(deps),
    ...createLaserServices(deps),
    ...createFindingServices(deps),
    ...createConclusionServices(deps),
    ...createReportServices(deps),
    ...createReportDraftServices(deps),
    ...createReportHouseServices(deps),
    ...createSpectraServices(deps),
    ...createLotServices(deps),
    ...createWeightServices(deps),
    'runs.tryFiles': createTryFilesService(deps),
    'runs.record': createRecordRunService(deps),
    'raw.content': createRawService(deps),
    'stones.folder': createStoneFolderService(deps),
    'cases.bundle': createBundleService(deps),
  };
}
