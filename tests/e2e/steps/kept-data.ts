import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Host } from '../harness/hosts.ts';
import { openCulet, type OpenCulet } from '../harness/launch.ts';

/** A data folder that outlives the program, for tests that close it and open it again. */
export function keptData(host: Host) {
  const dataDir = mkdtempSync(join(tmpdir(), 'culet-e2e-'));
  let culet: OpenCulet | null = null;
  return {
    dataDir,
    /** Closes what is open on this data and opens it again. */
    async open(): Promise<OpenCulet> {
      await culet?.close();
      culet = await openCulet({ host, dataDir });
      return culet;
    },
    async close(): Promise<void> {
      await culet?.close();
      culet = null;
    },
    async remove(): Promise<void> {
      await culet?.close();
      culet = null;
      rmSync(dataDir, { recursive: true, force: true, maxRetries: 5 });
    },
  };
}

/** Says at a window that was opened again who works there. */
export async function workAs(culet: Pick<OpenCulet, 'page'>, name: string): Promise<void> {
  const choice = culet.page.getByRole('dialog', { name: 'Who works at this window?' });
  await choice.getByRole('button', { name: new RegExp(name) }).click();
  await choice.waitFor({ state: 'detached' });
}
