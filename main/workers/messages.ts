/** From the pool to a worker thread: one job at a time. */
export type JobMessage = { readonly job: number; readonly name: string; readonly payload: unknown };

/** From a worker thread to the pool. */
export type WorkerMessage =
  | { readonly kind: 'progress'; readonly job: number; readonly done: number; readonly total: number; readonly note: string }
  | { readonly kind: 'done'; readonly job: number; readonly value: unknown }
  | { readonly kind: 'fault'; readonly job: number; readonly message: string; readonly stack: string };
