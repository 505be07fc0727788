import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import type { OpenCulet } from '../harness/launch.ts';

export type SavedFile = { readonly name: string; readonly bytes: Uint8Array };

type Main = typeof globalThis & { savedFile?: Promise<string> };

/** Electron asks the person where to save; here the test says it. */
async function saveInElectron(culet: OpenCulet, folder: string, act: () => Promise<void>): Promise<string> {
  await culet.electron!.evaluate(({ session }, to) => {
    (globalThis as Main).savedFile = new Promise((resolve, reject) => {
      session.defaultSession.once('will-download', (_event, item) => {
        const file = `${to}/${item.getFilename()}`;
        item.setSavePath(file);
        item.once('done', (_done, state) => { if (state === 'completed') resolve(file); else reject(new Error(`The download was ${state}.`)); });
      });
    });
  }, folder);
  await act();
  return culet.electron!.evaluate(() => (globalThis as Main).savedFile!);
}

/** Does `act` and gives the file that the window saves because of it. */
export async function fileSavedBy(culet: OpenCulet, act: () => Promise<void>): Promise<SavedFile> {
  const folder = mkdtempSync(join(tmpdir(), 'culet-saved-'));
  try {
    if (culet.electron !== null) {
      const file = await saveInElectron(culet, folder, act);
      return { name: basename(file), bytes: new Uint8Array(readFileSync(file)) };
    }
    const [download] = await Promise.all([culet.page.waitForEvent('download'), act()]);
    const file = join(folder, 'saved');
    await download.saveAs(file);
    return { name: download.suggestedFilename(), bytes: new Uint8Array(readFileSync(file)) };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
