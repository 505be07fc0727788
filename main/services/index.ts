import type { CasebookManager } from '../casebook/casebook-manager.ts';
import type { Keyring } from '../keys/keyring.ts';
import type { Checkpoints } from '../checkpoints/checkpoints.ts';
import { createCheckpointsServices } from './checkpoints-services.ts';
import type { SessionGuard } from '../people/session-guard.ts';
import type { Verify } from '../verify/verify-with-helpers.ts';
import type { TaskPool } from '../workers/task-pool.ts';
import { createBatchServices } from './batch.ts';
import { createBundlesServices } from './bundles.ts';
import { createCancelTasks } from './cancel-tasks.ts';
import { createFiguresServices } from './figures.ts';
import { createHistoryServices } from './history.ts';
import { createCustodyPrintServices } from './custody-print.ts';
import type { HostFacts } from './intake-context.ts';
import { createImageServices } from './images.ts';
import { createIntakeServices } from './intake-services.ts';
import { createKeyStoreServices } from './key-store-services.ts';
import { createKeysServices } from './keys-services.ts';
import { createPieceServices } from './pieces.ts';
import { createPrintServices } from './print-services.ts';
import { createReportCheckService } from './report-check.ts';
import { createSealedBundlesServices } from './sealed-bundles.ts';
import type { Deps, Services } from './service.ts';
import type { Uploads } from '../uploads/uploads.ts';
import { createUploadsServices } from './uploads-services.ts';
import { createWorkServices } from './work-services.ts';

export type ServicesDeps = Deps & { readonly manager: CasebookManager; readonly pool: TaskPool; readonly keyring: Keyring; readonly guard: SessionGuard; readonly checkpoints: Checkpoints; readonly verify: Verify; readonly uploads: Uploads; readonly host: HostFacts };

/** Every operation of the contract. One that is missing here does not compile. */
export function createServices(deps: ServicesDeps): Services {
  const work = { now: deps.now, newId: deps.newId, pool: deps.pool, signer: deps.keyring, casebook: () => deps.manager.current() };
  const tasks = createCancelTasks();
  const intake = createIntakeServices({ ...deps, tasks });
  return {
    ...intake,
    ...createKeysServices(deps),
    ...createKeyStoreServices(deps),
    ...createCheckpointsServices(deps),
    ...createFiguresServices(deps),
    ...createHistoryServices(deps),
    ...createBatchServices({ pool: deps.pool, casebook: () => deps.manager.current(), tasks }),
    ...createBundlesServices({ ...work, tasks, uploads: deps.uploads }),
    ...createSealedBundlesServices({ ...work, uploads: deps.uploads }),
    ...createCustodyPrintServices(deps),
    ...createPrintServices({ services: intake, pool: deps.pool }),
    ...createUploadsServices(deps.uploads),
    ...createWorkServices(work),
    ...createImageServices(work),
    ...createPieceServices(work),
    'reports.check': createReportCheckService({ ...work, uploads: deps.uploads }),
  };
}
