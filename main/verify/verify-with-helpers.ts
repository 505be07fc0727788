import { statSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import type { Verification } from '../../app/contract/casebook.ts';
import type { Casebook } from '../../db/open-casebook.ts';
import type { VerifyOptions } from '../../db/store/verify.ts';
import { NOTHING_OUTSIDE } from '../../db/verify/checkpoints.ts';
import { workerLocation, YOUNG_MB } from './start-helper.ts';
import type { EndMessage, HelpersBy, LeadMessage, ThreadData } from './verify-messages.ts';

/** Verifies an open casebook; null where it was stopped. */
export type Verify = (casebook: Casebook, options: VerifyOptions) => Promise<Verification | null>;

/** More helpers than this wait for one another and for the disk. */
const HELPERS_AT_MOST = 4;

/** On the calling thread, in slices: for tests and the command line from source, where there is no bundle. */
export const verifyOnThisThread: Verify = (casebook, options) => casebook.ledgers.verify(options);

type Outcome = Extract<LeadMessage, { kind: 'done' | 'stopped' | 'cannot-open' | 'lost' }>;

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
    // Only when the thread is gone, and its helpers before it, does nobody read the file any more.
    worker.on('exit', () => {
      signal?.removeEventListener('abort', stop);
      if (outcome instanceof Error) reject(outcome);
      else resolve(outcome);
    });
  });
}

export type VerifyHelp = {
  /** The bundle of the threads that verify. */
  readonly workerFile: string;
  /**
   * In Electron, where the binding of the database works on no thread but a program's first: how to start the program again. Left out, threads help.
   * A file of fewer bytes than `from` is done on the calling thread before a process would have started.
   */
  readonly program?: { readonly file: string; readonly args: readonly string[]; readonly from: number };
  /** Hears how it was done, for the log. */
  readonly note?: (what: string, entry: Readonly<Record<string, string | number>>) => void;
};

/**
 * Verifies with helpers that read the file by connections of their own, past the lock that this process holds, while the calling thread
 * is free. Where a machine does not let the file be read so, or a helper is ended from outside, it is done on the calling thread.
 */
export function createVerifyWithHelpers({ workerFile, program, note }: VerifyHelp): Verify {
  const by: HelpersBy = program === undefined ? { kind: 'threads', workerFile } : { kind: 'processes', program: program.file, args: program.args };
  const helpers = Math.max(2, Math.min(HELPERS_AT_MOST, availableParallelism()));
  return async (casebook, options) => {
    if (options.signal?.aborted) return null;
    if (program !== undefined && statSync(casebook.file).size < program.from) return verifyOnThisThread(casebook, options);
    const begun = performance.now();
    const outcome = await casebook.still((file) => lead(workerFile, {
      role: 'lead', file, still: !casebook.readOnly, by, helpers,
      what: { at: options.at, outside: options.outside ?? NOTHING_OUTSIDE, guardsRestored: casebook.guardsRestored, strange: casebook.strange(), wholeFile: options.wholeFile ?? false },
    }, options));
    if (outcome === null || outcome.kind === 'stopped') return null;
    if (outcome.kind === 'done') {
      note?.('verified', { by: by.kind, helpers, ms: Math.round(performance.now() - begun) });
      return outcome.verification;
    }
    note?.('verifying goes on without helpers', { why: outcome.kind === 'lost' ? outcome.how : 'the file can’t be read past its lock here' });
    options.alone?.();
    return verifyOnThisThread(casebook, options);
  };
}
