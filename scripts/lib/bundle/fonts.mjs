import { cpSync, existsSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { inRoot } from '../paths.mjs';
import { Stop } from '../say.mjs';

/**
 * Puts the printed page's font files beside the program: a packaged program has no node_modules to look in.
 * The list is the printer's own, read from its source, which the project's Node can load as it is.
 * @param {string} folder made here
 * @returns {Promise<number>} how many files were copied; a family has no file for a script it does not cover
 * @throws {Stop} when a family has none at all
 */
export async function copyPrintedFonts(folder) {
  /** @type {{ CARRIED_FONTS: readonly { family: string, name: string }[] }} */
  const { CARRIED_FONTS: fonts } = await import(pathToFileURL(inRoot('main', 'print', 'font-files.ts')).href);
  mkdirSync(folder, { recursive: true });
  const sourceOf = (/** @type {{ family: string, name: string }} */ font) => inRoot('node_modules', '@fontsource', font.family, 'files', font.name);
  const present = fonts.filter((font) => existsSync(sourceOf(font)));
  for (const font of present) cpSync(sourceOf(font), join(folder, font.name));
  const missing = new Set(fonts.map((font) => font.family).filter((family) => !present.some((font) => font.family === family)));
  if (missing.size > 0) throw new Stop(`No font files were found for ${[...missing].join(', ')}: run npm ci, or mend the list in main/print/font-files.ts.`);
  return present.length;
}
