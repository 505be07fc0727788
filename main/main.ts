import { isHelper } from './verify/helper-switch.ts';

/** A process that verifies for another shows nothing and must be gone when it is done: its end is not left to Electron, which has not begun yet. */
function endAtOnce(code: number): void {
  (process as unknown as { reallyExit(code: number): void }).reallyExit(code);
}

// Each way loads what it needs alone.
if (isHelper(process.argv.slice(1))) void import('./verify/help-in-process.ts').then(({ helpInProcess }) => helpInProcess()).then((end) => { endAtOnce(end === 'done' ? 0 : 2); });
else void import('./host/electron-host.ts').then(({ runElectronHost }) => { runElectronHost(); });
