import type { Page } from 'playwright-core';
import type { MadeFile } from './stone-files.ts';

/** Drops files onto the middle of the window, as from the desk. */
export async function dropFiles(page: Page, files: readonly MadeFile[]): Promise<void> {
  const carried = files.map((file) => ({ name: file.name, base64: file.buffer.toString('base64') }));
  await page.evaluate((list) => {
    const transfer = new DataTransfer();
    for (const { name, base64 } of list) transfer.items.add(new File([Uint8Array.from(atob(base64), (c) => c.charCodeAt(0))], name));
    for (const type of ['dragenter', 'dragover', 'drop']) document.body.dispatchEvent(new DragEvent(type, { bubbles: true, cancelable: true, dataTransfer: transfer }));
  }, carried);
}
