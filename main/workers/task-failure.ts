import type { Failure } from '../../app/contract/failure.ts';
import { err } from '../../app/result.ts';
import type { TaskFailure } from './task-pool.ts';

/**
 * What the window is told when a task brought no result. Cancelling is an answer; anything else is a fault and is
 * thrown, so that the door logs it and gives it a reference.
 */
export function taskFailure(failure: TaskFailure): { readonly ok: false; readonly error: Failure } {
  if (failure.code !== 'cancelled') throw new Error(`worker task ${failure.code}: ${failure.message}`);
  return err({ code: 'cancelled', message: 'The work was cancelled; nothing was kept.', next: 'Start it again when you want it done.' });
}
