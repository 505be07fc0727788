import { err, ok, type Result } from '../../app/result.ts';
import { TASKS, type TaskName, type TaskPayload, type TaskResult } from './registry.ts';
import type { Task } from './task.ts';
import type { TaskFailure, TaskOptions, TaskPool } from './task-pool.ts';

/** The same tasks on the calling thread: for the command line and for tests, which run from source and have no bundle. */
export function createInlinePool(): TaskPool {
  return {
    async run<N extends TaskName>(name: N, payload: TaskPayload<N>, options: TaskOptions = {}) {
      const task = TASKS[name] as unknown as Task<TaskPayload<N>, TaskResult<N>>;
      const cancelled: Result<TaskResult<N>, TaskFailure> = err({ code: 'cancelled', message: 'The work was cancelled before it was done.' });
      const isCancelled = (): boolean => options.signal?.aborted ?? false;
      if (isCancelled()) return cancelled;
      try {
        const value = await task.run(payload, { progress: (step) => options.onProgress?.(step) });
        return isCancelled() ? cancelled : ok(value);
      } catch (fault) {
        return err({ code: 'faulted', message: fault instanceof Error ? fault.stack ?? fault.message : String(fault) });
      }
    },
    close: () => Promise.resolve(),
  };
}
