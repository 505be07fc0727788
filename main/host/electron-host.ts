import { mkdirSync, readFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { app, BrowserWindow, dialog, ipcMain, Menu, safeStorage, session, type WebContents } from 'electron';
import type { DoorEvent } from '../../app/contract/index.ts';
import { VERSION } from '../version.ts';
import { registerPageScheme, servePage } from './app-protocol.ts';
import { createCallsInFlight, type CallsInFlight, type Caller } from './calls-in-flight.ts';
import { CALL_CHANNEL, EVENT_CHANNEL } from './channels.ts';
import { dataFolder } from './data-folder.ts';
import { openWindow } from './electron-window.ts';
import { hardenEveryWebContents } from './harden.ts';
import { isOurFrame } from './is-our-frame.ts';
import { createElectronStore } from '../keys/electron-store.ts';
import { createFileLog, type Log } from './log.ts';
import { menuTemplate } from './menu.ts';
import { openHouse, type OpenHouse } from './open-house.ts';
import { programFolders } from './program-folders.ts';
import { statedValue } from './stated-value.ts';

/** Runs the program in Electron. The lock comes first: a second program on the same data would find the casebook taken. */
export function runElectronHost(): void {
  const args = process.argv.slice(1);
  const folder = dataFolder(statedValue(args, 'data'), { platform: process.platform, env: process.env, home: os.homedir() }, process.cwd());
  mkdirSync(folder, { recursive: true });
  app.setPath('userData', folder);
  // What the browser engine keeps for itself stays apart from the laboratory's files.
  app.setPath('sessionData', path.join(folder, 'window'));
  if (!app.requestSingleInstanceLock()) {
    app.exit(0);
    return;
  }
  // Electron takes --no-sandbox away again when it is asked for the sandbox; as root it could then not start a page.
  if (!app.commandLine.hasSwitch('no-sandbox')) app.enableSandbox();
  registerPageScheme();
  app.on('second-instance', showWindow);
  app.on('window-all-closed', () => { app.quit(); });
  const log = createFileLog(folder, () => new Date(), (line) => { process.stderr.write(`${line}\n`); });
  app.whenReady().then(() => { start(folder, statedCasebook(args), log); }).catch((fault: unknown) => { cannotStart(fault, folder, log); });
}

/** Absolute, from where the person is. */
function statedCasebook(args: readonly string[]): string | undefined {
  const stated = statedValue(args, 'casebook');
  return stated === undefined ? undefined : path.resolve(stated);
}

/** Without this, a fault before the window is shown would leave a program that nobody sees. */
function cannotStart(fault: unknown, folder: string, log: Log): void {
  log.error('did not start', { stack: stackOf(fault) });
  dialog.showErrorBox('Culet could not start', `What went wrong stands in the log in ${folder}. Nothing was changed.`);
  app.exit(1);
}

const stackOf = (fault: unknown): string => (fault instanceof Error ? (fault.stack ?? fault.message) : String(fault));

function start(folder: string, casebook: string | undefined, log: Log): void {
  const { page, preload, icon, migrations, worker, verifyWorker } = programFolders();
  hardenEveryWebContents(session.defaultSession);
  servePage(session.defaultSession, page);
  app.setAboutPanelOptions({ applicationName: 'Culet', applicationVersion: VERSION, copyright: 'Keeps a small gem laboratory’s diamond cases.' });
  Menu.setApplicationMenu(Menu.buildFromTemplate(menuTemplate({
    isMac: process.platform === 'darwin', developer: !app.isPackaged, send: (command) => { sendToWindows({ kind: 'menu', command }); },
  })));
  // The window comes up while the casebook opens; its first call waits for it.
  const systemStore = createElectronStore({ safeStorage, platform: process.platform, localState: () => readLocalState(app.getPath('sessionData')) });
  const verifyHelp = { workerFile: verifyWorker, program: { file: process.execPath, args: argsOfHelper(), from: HELP_FROM_BYTES } };
  const house = openHouse({ systemStore, dataFolder: folder, casebook, host: 'electron', hostNote: '', migrations, worker, verifyHelp, log, announce: sendToWindows });
  const calls = house.then((opened) => createCallsInFlight(opened.house));
  house.catch((fault: unknown) => { cannotStart(fault, folder, log); });
  answerCalls(calls);
  watchPages(log);
  openWindow({ dataFolder: folder, preload, icon });
  app.on('activate', () => { if (BrowserWindow.getAllWindows().length === 0) openWindow({ dataFolder: folder, preload, icon }); });
  closeSafely(house, calls, log);
}

/** What the browser engine keeps of the system's key store on Windows, or null. */
function readLocalState(folder: string): string | null {
  try {
    return readFileSync(path.join(folder, 'Local State'), 'utf8');
  } catch {
    return null;
  }
}

/** SQLite’s check of a table, which can’t be cut, takes some twenty milliseconds in a casebook of this size; a process takes half a second to start. */
const HELP_FROM_BYTES = 16_000_000;

/**
 * What comes before the switch when this program starts itself again. Electron alone is told where the program lies; a process that is not
 * to have a sandbox, as for root, can't have one either.
 */
function argsOfHelper(): string[] {
  return [...(app.isPackaged ? [] : [app.getAppPath()]), ...(app.commandLine.hasSwitch('no-sandbox') ? ['--no-sandbox'] : [])];
}

function showWindow(): void {
  const window = BrowserWindow.getAllWindows()[0];
  if (window === undefined) return;
  if (window.isMinimized()) window.restore();
  window.show();
  window.focus();
}

function sendToWindows(event: DoorEvent): void {
  for (const window of BrowserWindow.getAllWindows()) {
    if (!window.isDestroyed() && !window.webContents.isDestroyed()) window.webContents.send(EVENT_CHANNEL, event);
  }
}

/** One session for each window; a page that is loaded anew keeps it. */
function answerCalls(calls: Promise<CallsInFlight>): void {
  const callers = new WeakMap<WebContents, Caller>();
  ipcMain.handle(CALL_CHANNEL, async (event, name: unknown, input: unknown) => {
    if (!isOurFrame(event.senderFrame) || typeof name !== 'string') throw new Error('refused sender');
    const caller = callers.get(event.sender) ?? createCaller(event.sender);
    callers.set(event.sender, caller);
    return (await calls).run(name, input, caller);
  });
}

function createCaller(sender: WebContents): Caller {
  const gone = new AbortController();
  sender.once('destroyed', () => { gone.abort(); });
  return {
    session: { personId: null }, gone: gone.signal,
    emit: (event) => { if (!sender.isDestroyed()) sender.send(EVENT_CHANNEL, event); },
  };
}

/** A page whose process died is loaded again: what was typed lies in the drafts. */
function watchPages(log: Log): void {
  app.on('render-process-gone', (_event, contents, details) => {
    log.error('window process gone', { reason: details.reason, exitCode: details.exitCode });
    if (details.reason !== 'clean-exit' && !contents.isDestroyed()) contents.reload();
  });
}

/** Quitting waits until the changes under way are written and the casebook has let go of its file. */
function closeSafely(house: Promise<OpenHouse>, calls: Promise<CallsInFlight>, log: Log): void {
  let closing = false;
  const close = async (): Promise<void> => {
    try {
      await (await calls).close();
      await (await house).close();
    } catch (fault) {
      log.error('closing failed', { stack: stackOf(fault) });
    }
    // Quitting a second time would hang: the windows are gone and the first quit was held back.
    app.exit(0);
  };
  // After the windows: what a page still saves while it closes has arrived by then.
  app.on('will-quit', (event) => {
    event.preventDefault();
    if (!closing) void close();
    closing = true;
  });
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.on(signal, () => { app.quit(); });
}
