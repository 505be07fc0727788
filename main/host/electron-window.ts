import { readFileSync } from 'node:fs';
import path from 'node:path';
import { app, BrowserWindow, nativeTheme, screen } from 'electron';
import { webPreferences } from './harden.ts';
import { PAGE_URL } from './is-our-frame.ts';
import { parseWindowPlace, placeWindow, WINDOW_DEFAULTS, type WindowPlace } from './window-place.ts';
import { writeSmallFile } from './write-small-file.ts';

/** The page's ground, so that nothing flashes before it is drawn. */
const GROUND = { light: '#F3EFE6', dark: '#12151A' } as const;

const PLACE_FILE = 'window.json';

export type WindowOptions = { readonly dataFolder: string; readonly preload: string; readonly icon: string };

/** Opens the window where it was left, and remembers where it is left next. */
export function openWindow({ dataFolder, preload, icon }: WindowOptions): BrowserWindow {
  const file = path.join(dataFolder, PLACE_FILE);
  const saved = readPlace(file);
  const window = new BrowserWindow({
    ...placeWindow(saved, screen.getAllDisplays().map((display) => display.workArea)),
    minWidth: WINDOW_DEFAULTS.minWidth, minHeight: WINDOW_DEFAULTS.minHeight,
    title: 'Culet', icon, show: false,
    backgroundColor: nativeTheme.shouldUseDarkColors ? GROUND.dark : GROUND.light,
    webPreferences: { ...webPreferences, preload },
  });
  if (saved?.maximised === true) window.maximize();
  window.once('ready-to-show', () => { window.show(); });
  window.on('close', () => { rememberPlace(file, window); });
  // Windows ends the session: what is under way is finished as far as it lets us; the database bears the rest.
  window.on('session-end', () => { app.quit(); });
  void window.loadURL(PAGE_URL);
  return window;
}

function readPlace(file: string): WindowPlace | null {
  try {
    return parseWindowPlace(readFileSync(file, 'utf8'));
  } catch {
    return null;
  }
}

/** Where the window lies is a comfort: a folder that cannot be written must not keep it from closing. */
function rememberPlace(file: string, window: BrowserWindow): void {
  const place: WindowPlace = { ...window.getNormalBounds(), maximised: window.isMaximized() };
  try {
    writeSmallFile(file, JSON.stringify(place), String(process.pid));
  } catch {
    // Next time it opens at its usual size.
  }
}
