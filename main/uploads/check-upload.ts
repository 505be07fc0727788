import type { Failure } from '../../app/contract/failure.ts';
import { ok, type Result } from '../../app/result.ts';
import type { Call } from '../services/service.ts';
import { taskFailure } from '../workers/task-failure.ts';
import type { TaskPool } from '../workers/task-pool.ts';
import type { CheckedBundle, Upload } from './uploads.ts';

/** Ends when one of them does. `done`: nobody listens any more. */
export function eitherSignal(...signals: readonly AbortSignal[]): { readonly signal: AbortSignal; done(): void } {
  const either = new AbortController();
  const stop = (): void => { either.abort(); };
  for (const signal of signals) {
    if (signal.aborted) stop();
    else signal.addEventListener('abort', stop, { once: true });
  }
  return { signal: either.signal, done() { for (const signal of signals) signal.removeEventListener('abort', stop); } };
}

/** Checks a file that was carried here as a bundle, once; says how far it has come under the name of the upload, and stops when it is dropped. */
export async function checkUpload(upload: Upload, pool: TaskPool, { signal: own, emit }: Pick<Call, 'signal' | 'emit'>): Promise<Result<CheckedBundle, Failure>> {
  if (upload.checked !== null) return ok(upload.checked);
  const { signal, done } = eitherSignal(own, upload.signal);
  const task = await pool.run('check-bundle', upload.file, { signal, onProgress: (step) => { emit({ kind: 'progress', task: upload.id, ...step }); } });
  done();
  if (!task.ok) return taskFailure(task.error);
  upload.checked = task.value;
  return ok(task.value);
}
