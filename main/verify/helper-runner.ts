import { Worker } from 'node:worker_threads';
import { VerifyCancelled } from '../../db/verify/part.ts';
import type { Found, Piece, Runner } from '../../db/verify/pieces.ts';
import type { EndMessage, HelperMessage, PieceMessage, ThreadData } from './verify-messages.ts';

type Job = { readonly id: number; readonly piece: Piece; done(found: Found): void; failed(fault: Error): void };
/** A helper has two jobs: the next one lies ready when it is done with the first. */
type Helper = { readonly worker: Worker; readonly jobs: Map<number, Job> };
const JOBS_EACH = 2;

/** What a piece finds is kept until it is told: with little room for young objects each of them would be moved about twice. */
export const YOUNG_MB = 64;

export type HelperRunner = Runner & {
  /** Nothing more is begun: what waits is rejected as stopped. */
  stop(): void;
  /** Lets the helpers go; done when all of them are gone. */
  end(): Promise<unknown>;
};

/** What SQLite threw in a helper, as if it had been thrown here. */
class HelperFault extends Error {
  readonly code: string;
  constructor(message: string, code: string) {
    super(message);
    this.code = code;
  }
}

/** Has pieces done by threads with connections of their own; `more` hears how many things they looked at. */
export function createHelperRunner(options: { readonly file: string; readonly still: boolean; readonly workerFile: string; readonly helpers: number }, more: (n: number) => void): HelperRunner {
  const waiting: Job[] = [];
  let nextId = 1;
  let stopped = false;
  const workerData: ThreadData = { role: 'help', file: options.file, still: options.still };

  const give = (): void => {
    for (const room of Array.from({ length: JOBS_EACH }, (_, i) => i)) {
      for (const helper of helpers) {
        if (helper.jobs.size > room || waiting.length === 0) continue;
        const job = waiting.shift()!;
        helper.jobs.set(job.id, job);
        helper.worker.postMessage({ job: job.id, piece: job.piece } satisfies PieceMessage);
      }
    }
  };

  const hear = (helper: Helper, message: HelperMessage): void => {
    if (message.kind === 'ready') return;
    if (message.kind === 'more') { more(message.more); return; }
    const job = helper.jobs.get(message.job);
    helper.jobs.delete(message.job);
    give();
    if (message.kind === 'found') job?.done(message.found);
    else job?.failed(new HelperFault(message.message, message.code));
  };

  const lost = (helper: Helper, fault: Error): void => {
    for (const job of [...helper.jobs.values(), ...waiting.splice(0)]) job.failed(fault);
    helper.jobs.clear();
  };

  const gone: Promise<void>[] = [];
  const helpers = Array.from({ length: options.helpers }, (): Helper => {
    const helper: Helper = { worker: new Worker(workerLocation(options.workerFile), { workerData, resourceLimits: { maxYoungGenerationSizeMb: YOUNG_MB } }), jobs: new Map() };
    helper.worker.on('message', (message: HelperMessage) => { hear(helper, message); });
    helper.worker.on('error', (fault: Error) => { lost(helper, fault); });
    gone.push(new Promise((resolve) => { helper.worker.on('exit', () => { resolve(); }); }));
    helper.worker.on('exit', () => { lost(helper, new Error('A thread that verifies ended before it was done.')); });
    return helper;
  });

  return {
    // Enough for every helper to have one in hand and one ready while the first is being looked at.
    ahead: 3 * options.helpers,
    run<P extends Piece>(piece: P) {
      return new Promise<Found<P>>((done, failed) => {
        if (stopped) { failed(new VerifyCancelled()); return; }
        waiting.push({ id: nextId++, piece, done: (found) => { done(found as Found<P>); }, failed });
        give();
      });
    },
    stop() {
      stopped = true;
      for (const job of waiting.splice(0)) job.failed(new VerifyCancelled());
    },
    end() {
      for (const { worker } of helpers) worker.postMessage({ end: true } satisfies EndMessage);
      return Promise.all(gone);
    },
  };
}

/** From source a worker is named by its address, from a bundle by its path. */
export const workerLocation = (workerFile: string): string | URL => (workerFile.startsWith('file:') ? new URL(workerFile) : workerFile);
