import type { OpenCulet } from '../harness/launch.ts';

/** The smallest window the program promises to be whole in. */
export const SMALLEST = { width: 1280, height: 720 } as const;

/** Gives the window's content another size, as a person who pulls at its corner. */
export async function resize({ page, electron }: Pick<OpenCulet, 'page' | 'electron'>, size: { readonly width: number; readonly height: number }): Promise<void> {
  if (electron === null) {
    await page.setViewportSize(size);
    return;
  }
  await electron.evaluate(({ BrowserWindow }, { width, height }) => { BrowserWindow.getAllWindows()[0]?.setContentSize(width, height); }, size);
  await page.waitForFunction(({ width, height }) => innerWidth === width && innerHeight === height, size);
}
