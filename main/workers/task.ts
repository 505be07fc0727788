/** How far a task has come, in steps of its own. */
export type TaskProgress = { readonly done: number; readonly total: number; readonly note: string };

/** What a running task is given beside its payload. */
export type TaskContext = { progress(step: TaskProgress): void };

/**
 * One piece of long work. Payload and result cross a thread border: plain data and typed arrays only.
 * `transfers` names the buffers of the result that may be handed over instead of copied.
 */
export type Task<P, R> = {
  run(payload: P, context: TaskContext): R | Promise<R>;
  transfers?(result: R): ArrayBuffer[];
};

/** The buffers behind some arrays, each once, those that are shared between threads left out. */
export function buffersOf(arrays: readonly ArrayBufferView[]): ArrayBuffer[] {
  const buffers = new Set<ArrayBuffer>();
  for (const array of arrays) if (array.buffer instanceof ArrayBuffer) buffers.add(array.buffer);
  return [...buffers];
}
