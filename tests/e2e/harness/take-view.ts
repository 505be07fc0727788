import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { inRoot } from '../../../scripts/lib/paths.mjs';
import type { Host } from './hosts.ts';

/** The size all pictures are taken at, so that they can be laid side by side. */
export const VIEW_SIZE = { width: 1440, height: 900 } as const;

export type Theme = 'light' | 'dark';

/** Where the pictures of every view go, for a person to look at. */
export const VIEWS_FOLDER = inRoot('test-results', 'views');

/**
 * Takes a picture of the window in each theme and puts the theme back to light.
 * @param name what is shown, in words joined by hyphens
 * @returns the files, named `<host>-<theme>-<name>.png`
 */
export async function takeView(opened: { readonly host: Host; readonly page: Page }, name: string, themes: readonly Theme[] = ['light', 'dark']): Promise<string[]> {
  const { host, page } = opened;
  mkdirSync(VIEWS_FOLDER, { recursive: true });
  const files: string[] = [];
  for (const theme of themes) {
    await page.emulateMedia({ colorScheme: theme, reducedMotion: 'reduce' });
    // A picture taken before the fonts are there shows another face; two frames let the theme settle.
    await page.evaluate(async () => {
      await document.fonts.ready;
      await new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve)));
    });
    const path = join(VIEWS_FOLDER, `${host}-${theme}-${name}.png`);
    await page.screenshot({ path, animations: 'disabled', caret: 'hide', scale: 'css' });
    files.push(path);
  }
  await page.emulateMedia({ colorScheme: 'light', reducedMotion: 'reduce' });
  return files;
}
