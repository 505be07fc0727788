import { copyFileSync, mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { err, ok, type Result } from '../../app/result.ts';

/** 'never-rests', or why the copy could not be written, in the words of the system. */
export type SnapshotFault = { readonly code: 'never-rests' } | { readonly code: 'cannot-copy'; readonly reason: string };

export type Snapshot = { readonly file: string; remove(): void };

/** A casebook that is being written is tried again; so often, after so many milliseconds. */
export const SNAPSHOT_DEFAULTS = { tries: 20, waitMs: 250, quietMs: 50 } as const;

/**
 * Copies the casebook and its write-ahead log to a folder of its own, so that it can be looked at while another program holds it.
 * Both together hold every finished transaction; a copy during which either changed is thrown away and made again, because a page and
 * the log that replaces it might then come from different moments. Fails where the casebook never rests.
 */
export async function snapshotCasebook(file: string, options: { readonly tries: number; readonly waitMs: number; readonly quietMs: number } = SNAPSHOT_DEFAULTS): Promise<Result<Snapshot, SnapshotFault>> {
  const folder = mkdtempSync(path.join(tmpdir(), 'culet-view-'));
  const remove = (): void => { rmSync(folder, { recursive: true, force: true }); };
  const copy = path.join(folder, path.basename(file));
  for (let attempt = 0; attempt < options.tries; attempt++) {
    const before = stateOf(file);
    // Clocks of file systems are coarse: a write within the same tick would not show.
    if (Date.now() - before.newestMs >= options.quietMs) {
      const reason = copyParts(file, copy);
      if (reason !== null) {
        remove();
        return err({ code: 'cannot-copy', reason });
      }
      if (stateOf(file).text === before.text) return ok({ file: copy, remove });
    }
    await new Promise((resolve) => { setTimeout(resolve, options.waitMs); });
  }
  remove();
  return err({ code: 'never-rests' });
}

const parts = (file: string): string[] => [file, `${file}-wal`];

function stateOf(file: string): { text: string; newestMs: number } {
  const states = parts(file).map((part) => statSync(part, { throwIfNoEntry: false }));
  return { text: states.map((state) => (state === undefined ? 'none' : `${state.size} ${state.mtimeMs} ${state.ino}`)).join(', '), newestMs: Math.max(...states.map((state) => state?.mtimeMs ?? 0)) };
}

/** Null when done, else the reason. The log may vanish between looking and copying, when the other program closes; the states then differ. */
function copyParts(file: string, copy: string): string | null {
  for (const [index, part] of parts(file).entries()) {
    const target = parts(copy)[index]!;
    rmSync(target, { force: true });
    try {
      copyFileSync(part, target);
    } catch (fault) {
      const code = fault instanceof Error && 'code' in fault ? String(fault.code) : String(fault);
      if (code !== 'ENOENT') return code;
    }
  }
  return null;
}
