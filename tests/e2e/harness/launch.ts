import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { ElectronApplication, Page } from 'playwright-core';
import { inject } from 'vitest';
import type { Host } from './hosts.ts';
import { openElectron } from './open-electron.ts';
import { openLoopback } from './open-loopback.ts';
import type { Watch } from './watch-page.ts';

export type OpenOptions = {
  readonly host: Host;
  /** The program's data folder; without it a fresh one, removed on close. Give one to open the same data twice. */
  readonly dataDir?: string;
  /** A casebook file to open instead of the one last used. */
  readonly casebook?: string;
  /** More arguments, after the program's own. */
  readonly args?: readonly string[];
  readonly env?: Readonly<Record<string, string>>;
};

/** What a host needs to know; the options with their defaults filled in. */
export type Settings = {
  readonly dataDir: string;
  readonly casebook: string | undefined;
  readonly args: readonly string[];
  readonly env: Readonly<Record<string, string>>;
};

/** The running program, the same in both hosts. */
export type Opened = Watch & {
  readonly host: Host;
  readonly page: Page;
  /** The page's address; in loopback with its token. */
  readonly url: string;
  /** The process that holds the casebook, for tests that kill it. */
  readonly pid: number;
  /** Playwright's handle on Electron's main process; null in loopback. */
  readonly electron: ElectronApplication | null;
  /** Everything the program wrote to its terminal so far. */
  readonly log: () => string;
  /** Closes the program as a person would, and waits until it has ended. */
  readonly close: () => Promise<void>;
};

export type OpenCulet = Opened & { readonly dataDir: string };

/**
 * Opens the built program in the host asked for and gives its page.
 * @throws when it does not open; the message holds what the program said
 */
export async function openCulet(options: OpenOptions): Promise<OpenCulet> {
  const own = options.dataDir === undefined;
  const dataDir = options.dataDir ?? mkdtempSync(join(tmpdir(), 'culet-e2e-'));
  const settings: Settings = { dataDir, casebook: options.casebook, args: options.args ?? [], env: options.env ?? {} };
  const { browser, electron } = inject('machine');
  const remove = () => { if (own) rmSync(dataDir, { recursive: true, force: true, maxRetries: 5 }); };
  try {
    if (options.host === 'electron' && electron === null) throw new Error('Electron cannot run here; ask availableHosts() first.');
    const opened = options.host === 'electron' ? await openElectron(settings, electron!) : await openLoopback(settings, browser);
    return { ...opened, dataDir, close: async () => { await opened.close(); remove(); } };
  } catch (error) {
    remove();
    throw error;
  }
}
