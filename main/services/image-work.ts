import type { Failure } from '../../app/contract/failure.ts';
import { sayImageRefusal, type ImageRefusal } from '../../app/images/image-refusal.ts';
import { err, ok, type Result } from '../../app/result.ts';
import { taskFailure } from '../workers/task-failure.ts';
import type { TaskName, TaskPayload, TaskResult } from '../workers/registry.ts';
import type { Work } from './work-context.ts';

/** A refusal of the picture's reading as it crosses the door. `name` is the file's, so that of two the right one is looked at. */
export function imageFailure(refusal: ImageRefusal, name: string): { readonly ok: false; readonly error: Failure } {
  const { message, next } = sayImageRefusal(refusal);
  return err({ code: 'unreadable', message: `${message.replace('This picture', `“${name}”`).replace('This file', `“${name}”`)}`, next });
}

/** A task of the pool that reads one picture: its value, or why not in words. */
export async function runImageTask<N extends TaskName, T>(
  { pool, call }: Pick<Work, 'pool' | 'call'>, name: N, payload: TaskPayload<N>, fileName: string, read: (result: TaskResult<N>) => Result<T, ImageRefusal>,
): Promise<Result<T, Failure>> {
  const outcome = await pool.run(name, payload, { signal: call.signal });
  if (!outcome.ok) return taskFailure(outcome.error);
  const result = read(outcome.value);
  return result.ok ? ok(result.value) : imageFailure(result.error, fileName);
}
