import type { DoorEvent } from '../../app/contract/index.ts';
import { createCasebookManager } from '../casebook/casebook-manager.ts';
import { dataFiles, filesBeside } from '../casebook/data-files.ts';
import { createBuildDemonstration } from '../demonstration/build-demonstration.ts';
import { createCheckpoints } from '../checkpoints/checkpoints.ts';
import { createDescribeKept } from '../bundle/describe-kept.ts';
import { createKeptBundles } from '../bundle/kept-bundle.ts';
import { createKeyring } from '../keys/keyring.ts';
import type { SystemStore } from '../keys/system-store.ts';
import { createNewId } from '../new-id.ts';
import { createSessionGuard } from '../people/session-guard.ts';
import { createServices } from '../services/index.ts';
import { createVerifyWithHelpers, verifyOnThisThread, type VerifyHelp } from '../verify/verify-with-helpers.ts';
import { VERSION } from '../version.ts';
import { createUploads, sweepUploads } from '../uploads/uploads.ts';
import { createTaskPool, type TaskPool } from '../workers/task-pool.ts';
import type { House } from './dispatch.ts';
import { leaveNote, takeNoteAway, whoHolds } from './holder.ts';
import type { Log } from './log.ts';

export type HouseOptions = {
  readonly dataFolder: string;
  /** A casebook file, absolute, to open instead of the one last used; undefined for that one. */
  readonly casebook?: string | undefined;
  readonly host: 'electron' | 'loopback';
  /** Why this host is used, for the window to say; empty where there is nothing to say. */
  readonly hostNote: string;
  readonly migrations: string;
  /** The bundled worker, or a pool for those who run from source. */
  readonly worker: string | TaskPool;
  /** The threads that verify, and how to start the program again where threads can't help; left out, that is done on this thread. */
  readonly verifyHelp?: Omit<VerifyHelp, 'note'>;
  /** The operating system's key store, where this host reaches one. */
  readonly systemStore: SystemStore;
  readonly log: Log;
  announce(event: DoorEvent): void;
};

export type OpenHouse = {
  readonly house: House;
  /** Set where another program holds the casebook: who starts a second host should leave, not show an unusable window. */
  readonly inUse: { readonly message: string; readonly next: string } | null;
  close(): Promise<void>;
};

/** Opens what was open last and puts the services on it. Trouble with a casebook is no failure here: the window tells of it. */
export async function openHouse(options: HouseOptions): Promise<OpenHouse> {
  const now = (): Date => new Date();
  const newId = createNewId();
  const { log } = options;
  const pool = typeof options.worker === 'string' ? createTaskPool({ workerFile: options.worker }) : options.worker;
  const files = options.casebook === undefined ? dataFiles(options.dataFolder) : { ...dataFiles(options.dataFolder), own: options.casebook, ...filesBeside(options.casebook) };
  const manager = createCasebookManager({
    dataFolder: options.dataFolder, migrationsFolder: options.migrations, now, newId, log, buildDemonstration: createBuildDemonstration({ pool, now }),
    files,
  });
  await manager.openAtStart();
  // Bundles of a casebook from before they were found and compared are read once; the window does not wait for it.
  const describe = createDescribeKept(createKeptBundles());
  const describeKept = (): void => {
    const open = manager.current();
    if (open !== null) describe(open).catch((fault: unknown) => { if (manager.current() === open) log.error('bundles were not described', { stack: String(fault) }); });
  };
  describeKept();
  const keyring = createKeyring(() => manager.current(), options.systemStore);
  const guard = createSessionGuard({ manager, keyring, now });
  const checkpoints = createCheckpoints({ manager, signer: keyring, now, newId });
  const verify = options.verifyHelp === undefined ? verifyOnThisThread : createVerifyWithHelpers({ ...options.verifyHelp, note: (what, entry) => { log.info(what, entry); } });
  const uploads = createUploads({ folder: () => files.incoming, newId });
  const services = createServices({ manager, pool, verify, uploads, keyring, guard, checkpoints, now, newId, host: { version: VERSION, host: options.host, hostNote: options.hostNote } });
  const announce = (event: DoorEvent): void => {
    options.announce(event);
    if (event.kind === 'changed' && event.operation.startsWith('casebook.')) describeKept();
    if (event.kind === 'changed') checkpoints.after(event.operation).catch((fault: unknown) => { log.error('no checkpoint was made', { stack: String(fault) }); });
  };
  const trouble = manager.trouble();
  const inUse = trouble?.code === 'in-use' ? { message: `${trouble.message}${whoHolds(options.dataFolder)}`, next: trouble.next } : null;
  if (inUse === null) {
    leaveNote(options.dataFolder, options.host, now().toISOString());
    sweepUploads(files.incoming);
  }
  return {
    inUse,
    house: { services, log, newId, standing: (session) => guard.standing(session), touch: (session) => { guard.touch(session); }, announce },
    async close() {
      await pool.close();
      await uploads.close();
      await checkpoints.beforeClosing().catch((fault: unknown) => { log.error('no checkpoint was made', { stack: String(fault) }); });
      await manager.noteHead();
      manager.close();
      keyring.forget();
      takeNoteAway(options.dataFolder);
    },
  };
}
