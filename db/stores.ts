import type { StoreHandle } from './handle.ts';
import { createAuditStore, type AuditStore } from './store/audit.ts';
import { createBenchStore, type BenchStore } from './store/bench.ts';
import { createCasesStore, type CasesStore } from './store/cases.ts';
import { createCheckpointsStore, type CheckpointsStore } from './store/checkpoints.ts';
import { createClientsStore, type ClientsStore } from './store/clients.ts';
import { createCredentialsStore, type CredentialsStore } from './store/credentials.ts';
import { createCustodyStore, type CustodyStore } from './store/custody.ts';
import { createDraftsStore, type DraftsStore } from './store/drafts.ts';
import { createFiguresStore, type FiguresStore } from './store/figures.ts';
import { createFindStore, type FindStore } from './store/find.ts';
import { createSealedBundlesStore, type SealedBundlesStore } from './store/sealed-bundles.ts';
import { createSealedCasesStore, type SealedCasesStore } from './store/sealed-cases.ts';
import { createKeysStore, type KeysStore } from './store/keys.ts';
import { createHistoryStore, type HistoryStore } from './store/history.ts';
import { createLaboratoryStore, type LaboratoryStore } from './store/laboratory.ts';
import { createPeopleStore, type PeopleStore } from './store/people.ts';
import { createPhotographsStore, type PhotographsStore } from './store/photographs.ts';
import { createRawRecordsStore, type RawRecordsStore } from './store/put-raw-record.ts';
import { createStonesStore, type StonesStore } from './store/stones.ts';
import { createTrialsStore, type TrialsStore } from './store/trials.ts';
import { createVerifyStore, type AtOpening, type VerifyStore } from './store/verify.ts';

/** The stores of what was taken in. Those of the work done on it are made from the same handle. */
export type Stores = {
  readonly laboratory: LaboratoryStore;
  readonly people: PeopleStore;
  readonly credentials: CredentialsStore;
  readonly keys: KeysStore;
  readonly checkpoints: CheckpointsStore;
  readonly sealedBundles: SealedBundlesStore;
  readonly sealedCases: SealedCasesStore;
  readonly clients: ClientsStore;
  readonly cases: CasesStore;
  readonly stones: StonesStore;
  readonly custody: CustodyStore;
  readonly rawRecords: RawRecordsStore;
  readonly photographs: PhotographsStore;
  readonly drafts: DraftsStore;
  readonly audit: AuditStore;
  readonly bench: BenchStore;
  readonly find: FindStore;
  readonly history: HistoryStore;
  readonly figures: FiguresStore;
  readonly trials: TrialsStore;
  readonly ledgers: VerifyStore;
};

export function createStores(handle: StoreHandle, newId: () => string, opened: AtOpening): Stores {
  return {
    laboratory: createLaboratoryStore(handle, newId),
    people: createPeopleStore(handle, newId),
    credentials: createCredentialsStore(handle),
    keys: createKeysStore(handle, newId),
    checkpoints: createCheckpointsStore(handle),
    sealedBundles: createSealedBundlesStore(handle),
    sealedCases: createSealedCasesStore(handle),
    clients: createClientsStore(handle, newId),
    cases: createCasesStore(handle, newId),
    stones: createStonesStore(handle, newId),
    custody: createCustodyStore(handle, newId),
    rawRecords: createRawRecordsStore(handle),
    photographs: createPhotographsStore(handle, newId),
    drafts: createDraftsStore(handle),
    audit: createAuditStore(handle),
    bench: createBenchStore(handle),
    find: createFindStore(handle),
    history: createHistoryStore(handle),
    figures: createFiguresStore(handle),
    trials: createTrialsStore(handle, newId),
    ledgers: createVerifyStore(handle, opened),
  };
}
