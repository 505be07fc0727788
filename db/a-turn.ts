/** Lets everything else that waits have its turn. By the global function: Electron wakes its own loop for that one alone. */
export const aTurn = (): Promise<void> => new Promise((resolve) => { setImmediate(resolve); });
