/** Reads that came back as locked wait here until the window is open again, so that nothing on it is taken down meanwhile. */
let waiting: (() => void)[] = [];

export const whenUnlocked = (): Promise<void> => new Promise((resolve) => { waiting.push(resolve); });

export function noteUnlocked(): void {
  const all = waiting;
  waiting = [];
  for (const resolve of all) resolve();
}
