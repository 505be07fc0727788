import { useCallback, useEffect, useRef, useState } from 'react';
import { failedRow, type BatchRow } from '../../app/batch/batch-row.ts';
import { MAX_FILE_BYTES } from '../../app/contract/common.ts';
import type { Failure } from '../../app/contract/failure.ts';
import type { AnalysisParameters } from '../../app/spectra/analysis.ts';
import type { StatableXUnit } from '../../app/spectra/spectrum.ts';
import { door } from '../door.ts';
import type { BatchFile } from './gather-entries.ts';

/** One call carries about this much: small enough that neither side is kept from its other work for more than a few milliseconds. */
const CHUNK = { files: 12, bytes: 400_000 } as const;

export type BatchState = {
  readonly rows: readonly BatchRow[]; readonly done: number; readonly total: number;
  readonly phase: 'nothing' | 'running' | 'done' | 'stopped';
  readonly failure: Failure | null;
};
const NOTHING: BatchState = { rows: [], done: 0, total: 0, phase: 'nothing', failure: null };

type Sent = { readonly name: string; readonly bytes: Uint8Array; readonly xUnit?: StatableXUnit };
type Chunk = { readonly files: readonly Sent[]; readonly failed: readonly BatchRow[]; readonly next: number };

/** Reads the next files from disk, up to a chunk's size; those that can't be read become rows at once. */
async function nextChunk(files: readonly BatchFile[], from: number, xUnit: StatableXUnit | undefined): Promise<Chunk> {
  const taken: Sent[] = [];
  const failed: BatchRow[] = [];
  let at = from;
  for (let size = 0; at < files.length && taken.length < CHUNK.files && size < CHUNK.bytes; at++) {
    const { path, file } = files[at]!;
    const name = path.slice(-1000);
    if (file.size > MAX_FILE_BYTES) { failed.push(failedRow(name, null, '', { code: 'too-large', message: 'The file is larger than 64 MB and was not read.' })); continue; }
    try {
      taken.push({ name, bytes: new Uint8Array(await file.arrayBuffer()), ...(xUnit === undefined ? {} : { xUnit }) });
      size += file.size;
    } catch {
      failed.push(failedRow(name, null, '', { code: 'cannot-open', message: 'The file could not be opened: was it moved?' }));
    }
  }
  return { files: taken, failed, next: at };
}

let batches = 0;

/** Analyses files chunk by chunk; nothing is kept. The rows come as they are done, and it can be stopped. */
export function useBatch(): BatchState & { start(files: readonly BatchFile[], parameters: AnalysisParameters, xUnit: StatableXUnit | undefined): void; stop(): void } {
  const [state, setState] = useState<BatchState>(NOTHING);
  const current = useRef<string | null>(null);

  const stop = useCallback(() => {
    const task = current.current;
    current.current = null;
    if (task === null) return;
    void door.call('work.cancel', { task });
    setState((now) => ({ ...now, phase: 'stopped' }));
  }, []);
  useEffect(() => stop, [stop]);

  const start = useCallback((files: readonly BatchFile[], parameters: AnalysisParameters, xUnit: StatableXUnit | undefined) => {
    const task = `batch ${++batches} ${Math.random().toString(36).slice(2)}`;
    current.current = task;
    setState({ ...NOTHING, total: files.length, phase: files.length > 0 ? 'running' : 'done' });
    void (async () => {
      for (let from = 0; from < files.length && current.current === task;) {
        const chunk = await nextChunk(files, from, xUnit);
        const reply = chunk.files.length === 0 ? null : await door.call('batch.analyse', { task, files: [...chunk.files], parameters });
        if (current.current !== task) return;
        if (reply !== null && !reply.ok) {
          current.current = null;
          setState((now) => ({ ...now, phase: 'stopped', failure: reply.error }));
          return;
        }
        from = chunk.next;
        const added = [...(reply?.value ?? []), ...chunk.failed];
        setState((now) => ({ ...now, rows: [...now.rows, ...added], done: chunk.next, phase: chunk.next >= files.length ? 'done' : 'running' }));
      }
    })();
  }, []);
  return { ...state, start, stop };
}
