/** Calls that a person may stop, by the name the window gave them. */
export type CancelTasks = {
  /** A signal for one call of this name; it also ends when the call's own signal does. `done` must be called at the end. */
  begin(task: string, own: AbortSignal): { readonly signal: AbortSignal; done(): void };
  /** Stops all calls of this name and gives their number. */
  cancel(task: string): number;
};

export function createCancelTasks(): CancelTasks {
  const running = new Map<string, Set<AbortController>>();
  return {
    begin(task, own) {
      const controller = new AbortController();
      const calls = running.get(task) ?? new Set<AbortController>();
      running.set(task, calls.add(controller));
      const stop = (): void => { controller.abort(); };
      if (own.aborted) stop();
      else own.addEventListener('abort', stop, { once: true });
      return {
        signal: controller.signal,
        done() {
          own.removeEventListener('abort', stop);
          calls.delete(controller);
          if (calls.size === 0) running.delete(task);
        },
      };
    },
    cancel(task) {
      const calls = [...running.get(task) ?? []];
      for (const controller of calls) controller.abort();
      return calls.length;
    },
  };
}
