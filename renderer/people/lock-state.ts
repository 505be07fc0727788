/** Reads that came back as locked wait here until the window is open again, so that nothing on it is taken down meanwhile. */
let waiting: (() => void)[] = [];

export const whenUnlocked = (): Promise<void> => new Promise((resolve) => { waiting.push(resolve); });

export function noteUnlocked(): void {
  const all = waiting;
  waiting = [];
  for (const resolve of all) resolve();
}

let heard: (() => void) | null = null;

/** Who is told that a call came back as locked. */
export function onLocked(listener: () => void): void { heard = listener; }

export function noteLocked(): void { heard?.(); }
