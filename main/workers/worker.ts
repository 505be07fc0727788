import { parentPort } from 'node:worker_threads';
import type { JobMessage, WorkerMessage } from './messages.ts';
import { TASKS } from './registry.ts';
import type { Task } from './task.ts';

/** Entry of a worker thread (bundled to worker.cjs): takes a job, does its task, answers, waits for the next. */
function serve(port: NonNullable<typeof parentPort>): void {
  const tasks = TASKS as unknown as Readonly<Record<string, Task<unknown, unknown>>>;
  const answer = (message: WorkerMessage, transfers: ArrayBuffer[] = []): void => port.postMessage(message, transfers);

  port.on('message', (message: JobMessage) => {
    void (async () => {
      const { job, name, payload } = message;
      try {
        const task = Object.hasOwn(tasks, name) ? tasks[name] : undefined;
        if (task === undefined) throw new Error(`no task is called ${name}`);
        const value = await task.run(payload, { progress: (step) => answer({ kind: 'progress', job, ...step }) });
        answer({ kind: 'done', job, value }, task.transfers?.(value) ?? []);
      } catch (fault) {
        const error = fault instanceof Error ? fault : new Error(String(fault));
        answer({ kind: 'fault', job, message: error.message, stack: error.stack ?? '' });
      }
    })();
  });
}

if (parentPort !== null) serve(parentPort);
