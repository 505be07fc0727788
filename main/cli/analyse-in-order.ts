import { existsSync } from 'node:fs';
import type { ReadOptions } from '../../app/files/spectrum-file.ts';
import type { AnalysisParameters } from '../../app/spectra/analysis.ts';
import { programFolders } from '../host/program-folders.ts';
import { createInlinePool } from '../workers/inline-pool.ts';
import { createTaskPool, type TaskPool } from '../workers/task-pool.ts';
import type { AnalysedFile } from './analyse-file.ts';
import type { GatheredFile } from './gather-files.ts';
import type { CliIo } from './io.ts';

/** Fewer files are done before anyone wonders. */
const PROGRESS_FROM = 50;
/** A line of progress at most this often, ms. */
const PROGRESS_EVERY_MS = 1000;
/** Files under way for each thread: the next one lies ready when a thread is done. */
const AHEAD = 3;

type Order = { readonly stated: ReadOptions; readonly parameters: AnalysisParameters; readonly workers: number };

/** Threads of the built program, or the calling thread: for one worker, and from source, where there is no bundle. */
function poolFor(workers: number): TaskPool {
  if (workers < 2) return createInlinePool();
  const { worker } = programFolders();
  return existsSync(worker) ? createTaskPool({ workerFile: worker, size: workers }) : createInlinePool();
}

async function analyse(gathered: GatheredFile, { stated, parameters }: Order, pool: TaskPool): Promise<AnalysedFile> {
  const { file } = gathered;
  const bytes = await gathered.read();
  if (!bytes.ok) return { file, readWarnings: [], curves: [], error: bytes.error };
  const own = bytes.value.byteLength === bytes.value.buffer.byteLength ? bytes.value : bytes.value.slice();
  const task = await pool.run('analyse-file', { file, bytes: own, stated, parameters });
  if (!task.ok) throw new Error(`analysing ${file}: ${task.error.message}`);
  return task.value;
}

function progressOf(total: number, io: CliIo): (done: number) => void {
  let last = performance.now();
  return (done) => {
    const now = performance.now();
    if (total < PROGRESS_FROM || (now - last < PROGRESS_EVERY_MS && done < total)) return;
    last = now;
    io.err(`${done} of ${total} files\n`);
  };
}

/** Analyses files with as many threads as ordered and gives the outcomes in the order of the files; says how far it is on standard error. */
export async function* analyseInOrder(files: readonly GatheredFile[], order: Order, io: CliIo): AsyncGenerator<AnalysedFile> {
  const pool = poolFor(order.workers);
  const say = progressOf(files.length, io);
  const underWay: Promise<AnalysedFile>[] = [];
  const ahead = order.workers < 2 ? 1 : AHEAD * order.workers;
  try {
    let next = 0;
    for (let done = 0; done < files.length; done++) {
      while (next < files.length && underWay.length < ahead) {
        const begun = analyse(files[next++]!, order, pool);
        begun.catch(() => undefined); // it is awaited in its turn below; until then nobody listens
        underWay.push(begun);
      }
      yield await underWay.shift()!;
      say(done + 1);
    }
  } finally {
    await pool.close();
  }
}
