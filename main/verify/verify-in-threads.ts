import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import type { Verification } from '../../app/contract/casebook.ts';
import type { Casebook } from '../../db/open-casebook.ts';
import type { VerifyOptions } from '../../db/store/verify.ts';
import { NOTHING_OUTSIDE } from '../../db/verify/checkpoints.ts';
import { workerLocation, YOUNG_MB } from './helper-runner.ts';
import type { EndMessage, LeadMessage, ThreadData } from './verify-messages.ts';

/** Verifies an open casebook; null where it was stopped. */
export type Verify = (casebook: Casebook, options: VerifyOptions & { /** Opened unchecked. */ readonly wholeFile?: boolean }) => Promise<Verification | null>;

/** More threads than this wait for one another and for the disk. */
const HELPERS_AT_MOST = 4;

/** On the calling thread, in slices: for tests and the command line from source, where there is no bundle. */
export const verifyOnThisThread: Verify = (casebook, { wholeFile: _, ...options }) => casebook.ledgers.verify(options);

type Outcome = { readonly kind: 'done'; readonly verification: Verification } | { readonly kind: 'stopped' } | { readonly kind: 'cannot-open' };

function lead(workerFile: string, workerData: ThreadData, { signal, progress }: VerifyOptions): Promise<Outcome> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(workerLocation(workerFile), { workerData, resourceLimits: { maxYoungGenerationSizeMb: YOUNG_MB } });
    let outcome: Outcome | Error = new Error('The thread that verifies ended before it was done.');
    const stop = (): void => { worker.postMessage({ end: true } satisfies EndMessage); };
    signal?.addEventListener('abort', stop, { once: true });
    worker.on('message', (message: LeadMessage) => {
      if (message.kind === 'progress') progress?.(message.done, message.total);
      else if (message.kind === 'fault') outcome = new Error(`verifying: ${message.stack}`);
      else outcome = message;
    });
    worker.on('error', (fault: Error) => { outcome = fault; });
    // Only when the thread is gone does nobody read the file any more.
    worker.on('exit', () => {
      signal?.removeEventListener('abort', stop);
      if (outcome instanceof Error) reject(outcome);
      else resolve(outcome);
    });
  });
}

/**
 * Verifies with threads that read the file by connections of their own, past the lock that this process holds, while the calling thread
 * is free. Where a machine does not let the file be read so, it is done on the calling thread.
 */
export function createVerifyInThreads(workerFile: string): Verify {
  // The database's binding works on Electron's main thread alone; on any other it ends the program.
  if (process.versions['electron'] !== undefined) return verifyOnThisThread;
  const helpers = Math.max(2, Math.min(HELPERS_AT_MOST, availableParallelism()));
  return async (casebook, options) => {
    if (options.signal?.aborted) return null;
    const outcome = await casebook.still((file) => lead(workerFile, {
      role: 'lead', file, still: !casebook.readOnly,
      lead: { what: { at: options.at, outside: options.outside ?? NOTHING_OUTSIDE, guardsRestored: casebook.guardsRestored, wholeFile: options.wholeFile ?? false }, workerFile, helpers },
    }, options));
    if (outcome === null || outcome.kind === 'stopped') return null;
    return outcome.kind === 'cannot-open' ? verifyOnThisThread(casebook, options) : outcome.verification;
  };
}
