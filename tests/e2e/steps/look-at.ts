import { expect } from 'vitest';
import type { OpenCulet } from '../harness/launch.ts';
import { takeView, VIEW_SIZE, type Theme } from '../harness/take-view.ts';
import { clippedParts, unnamedControls } from './measure-view.ts';
import { resize, SMALLEST } from './resize.ts';

/** Pictures in the themes named, or both; then the same at the smallest size, where nothing may be cut, and every control has a name. */
export async function lookAt(culet: OpenCulet, name: string, themes: readonly Theme[] = []): Promise<void> {
  await takeView(culet, name, themes.length > 0 ? themes : undefined);
  expect.soft(await unnamedControls(culet.page), `${name}: controls without a name`).toEqual([]);
  expect.soft(await clippedParts(culet.page), `${name} at ${VIEW_SIZE.width} × ${VIEW_SIZE.height}`).toEqual([]);
  await resize(culet, SMALLEST);
  expect.soft(await clippedParts(culet.page), `${name} at ${SMALLEST.width} × ${SMALLEST.height}`).toEqual([]);
  await resize(culet, VIEW_SIZE);
}

/** Goes to an address of the window and waits until its heading stands there and nothing is being read any more. */
export async function visit({ page }: Pick<OpenCulet, 'page'>, address: string, shown: string): Promise<void> {
  await page.evaluate((hash) => { window.location.hash = hash; }, address);
  await page.getByRole('heading', { level: 1, name: shown }).waitFor();
  await page.waitForFunction(() => document.querySelector('.working') === null);
}
