import type { TestProject } from 'vitest/node';
import { display, installedElectron, startsAtAll } from '../../../scripts/lib/electron.mjs';
import { findChromium } from './chromium.ts';
import type { Host } from './hosts.ts';

/** Electron's program where it is here, starts, and has a display to show a window on. */
async function usableElectron() {
  const found = installedElectron();
  if (!found.ok) return found;
  const shown = await display();
  return shown.ok ? startsAtAll(found.value) : shown;
}

/**
 * Runs once before the end-to-end tests: finds out which hosts can run here, and says so.
 * CULET_HOSTS=loopback (or electron) keeps a run to one of them.
 */
export default async function announceHosts(project: TestProject): Promise<void> {
  const wanted = (process.env['CULET_HOSTS'] ?? 'loopback,electron').split(',');
  const browser = await findChromium();
  const electron = await usableElectron();
  const hosts: Host[] = [];
  if (wanted.includes('loopback')) {
    hosts.push('loopback');
    console.log(`Runs in loopback: ${browser.name}`);
  }
  if (!wanted.includes('electron')) console.log('Does not run in Electron: CULET_HOSTS does not name it');
  else if (!electron.ok) console.log(`Does not run in Electron: ${electron.reason}`);
  else {
    hosts.push('electron');
    console.log(`Runs in Electron: ${electron.value}`);
  }
  project.provide('machine', { hosts, browser, electron: electron.ok ? electron.value : null });
}
