import { Worker } from 'node:worker_threads';
import { err, ok, type Result } from '../../app/result.ts';
import type { JobMessage, WorkerMessage } from './messages.ts';
import type { TaskName, TaskPayload, TaskResult } from './registry.ts';
import type { TaskProgress } from './task.ts';

/** Why a task brought no result. 'faulted': it threw; 'crashed': its thread died; both are faults of the program, not of the data. */
export type TaskFailure = { readonly code: 'cancelled' | 'faulted' | 'crashed'; readonly message: string };

export type TaskOptions = {
  readonly signal?: AbortSignal;
  readonly onProgress?: (step: TaskProgress) => void;
  /** Buffers of the payload that are handed over instead of copied: the caller no longer has them. */
  readonly transfers?: readonly ArrayBuffer[];
};

export type TaskPool = {
  /** Does one task away from the main thread. Never rejects. */
  run<N extends TaskName>(name: N, payload: TaskPayload<N>, options?: TaskOptions): Promise<Result<TaskResult<N>, TaskFailure>>;
  /** Ends the threads; what is still waiting or running comes back as cancelled. */
  close(): Promise<void>;
};

export type TaskPoolOptions = {
  /** The bundled worker entry. */
  readonly workerFile: string | URL;
  /** Threads at most; they start when first needed. */
  readonly size?: number;
};

/** Two: one long job must not keep a short one waiting, and the machine stays usable. */
const DEFAULT_SIZE = 2;

/** Spectra make much short-lived garbage; left to itself each thread lets a hundred megabytes of it lie about. Work is not slower with this. */
const YOUNG_MB = 16;

const CANCELLED: TaskFailure = { code: 'cancelled', message: 'The work was cancelled before it was done.' };

type Job = {
  readonly id: number;
  readonly name: string;
  readonly payload: unknown;
  readonly transfers: readonly ArrayBuffer[];
  readonly onProgress: ((step: TaskProgress) => void) | undefined;
  finish(outcome: Result<unknown, TaskFailure>): void;
};

type Thread = { readonly worker: Worker; job: Job | null };

/** A pool of worker threads. Cancelling a running job ends its thread; the next job gets a new one. */
export function createTaskPool({ workerFile, size = DEFAULT_SIZE }: TaskPoolOptions): TaskPool {
  const threads = new Set<Thread>();
  const waiting: Job[] = [];
  let nextId = 1;
  let closed = false;

  const settle = (thread: Thread, outcome: Result<unknown, TaskFailure>): void => {
    const job = thread.job;
    thread.job = null;
    thread.worker.unref();
    job?.finish(outcome);
  };

  const discard = (thread: Thread, outcome: Result<unknown, TaskFailure>): void => {
    threads.delete(thread);
    settle(thread, outcome);
    assign();
  };

  const listen = (thread: Thread): void => {
    thread.worker.on('message', (message: WorkerMessage) => {
      if (message.job !== thread.job?.id) return;
      switch (message.kind) {
        case 'progress': thread.job.onProgress?.({ done: message.done, total: message.total, note: message.note }); return;
        case 'done': settle(thread, ok(message.value)); assign(); return;
        case 'fault': settle(thread, err({ code: 'faulted', message: message.stack || message.message })); assign(); return;
      }
    });
    thread.worker.on('error', (fault: Error) => discard(thread, err({ code: 'crashed', message: fault.stack ?? fault.message })));
    thread.worker.on('exit', (code) => { if (threads.has(thread)) discard(thread, err({ code: 'crashed', message: `The worker thread ended with code ${code}.` })); });
  };

  const freeThread = (): Thread | null => {
    for (const thread of threads) if (thread.job === null) return thread;
    if (threads.size >= size) return null;
    const thread: Thread = { worker: new Worker(workerFile, { resourceLimits: { maxYoungGenerationSizeMb: YOUNG_MB } }), job: null };
    thread.worker.unref();
    threads.add(thread);
    listen(thread);
    return thread;
  };

  function assign(): void {
    while (waiting.length > 0 && !closed) {
      const thread = freeThread();
      if (thread === null) return;
      const job = waiting.shift()!;
      thread.job = job;
      thread.worker.ref(); // a running job keeps the process alive, an idle thread does not
      try {
        thread.worker.postMessage({ job: job.id, name: job.name, payload: job.payload } satisfies JobMessage, job.transfers);
      } catch (fault) {
        settle(thread, err({ code: 'faulted', message: fault instanceof Error ? fault.message : String(fault) }));
      }
    }
  }

  const cancel = (job: Job): void => {
    const place = waiting.indexOf(job);
    if (place >= 0) {
      waiting.splice(place, 1);
      job.finish(err(CANCELLED));
      return;
    }
    for (const thread of threads) {
      if (thread.job !== job) continue;
      void thread.worker.terminate();
      discard(thread, err(CANCELLED));
      return;
    }
  };

  return {
    run<N extends TaskName>(name: N, payload: TaskPayload<N>, options: TaskOptions = {}) {
      const { signal, onProgress, transfers = [] } = options;
      return new Promise<Result<TaskResult<N>, TaskFailure>>((resolve) => {
        if (closed || signal?.aborted === true) { resolve(err(CANCELLED)); return; }
        const onAbort = (): void => cancel(job);
        const job: Job = {
          id: nextId++, name, payload, transfers, onProgress,
          finish: (outcome) => {
            signal?.removeEventListener('abort', onAbort);
            resolve(outcome as Result<TaskResult<N>, TaskFailure>);
          },
        };
        signal?.addEventListener('abort', onAbort, { once: true });
        waiting.push(job);
        assign();
      });
    },
    async close() {
      closed = true;
      for (const job of waiting.splice(0)) job.finish(err(CANCELLED));
      const ending = [...threads];
      threads.clear();
      for (const thread of ending) settle(thread, err(CANCELLED));
      await Promise.all(ending.map((thread) => thread.worker.terminate()));
    },
  };
}
