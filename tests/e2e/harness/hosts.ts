import { inject } from 'vitest';
import type { Browser } from './chromium.ts';

/** Who shows the window: Electron, or a browser on the loopback address. */
export type Host = 'loopback' | 'electron';

/** What the run found on this machine, worked out once in announce-hosts.ts. */
export type Machine = { readonly hosts: readonly Host[]; readonly browser: Browser; readonly electron: string | null };

declare module 'vitest' {
  interface ProvidedContext { machine: Machine }
}

/** The hosts that can run here; a spec does `describe.each(availableHosts())('in %s', (host) => …)`. */
export function availableHosts(): Host[] {
  return [...inject('machine').hosts];
}
