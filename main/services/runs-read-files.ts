import type { Failure } from '../../app/contract/failure.ts';
import type { OperationName } from '../../app/contract/index.ts';
import type { InstrumentMemory } from '../../app/contract/work.ts';
import { ok, type Result } from '../../app/result.ts';
import type { AnalysisParameters } from '../../app/spectra/analysis.ts';
import type { StatableXUnit, YUnit } from '../../app/spectra/spectrum.ts';
import { taskFailure } from '../workers/task-failure.ts';
import type { FileOutcome } from '../workers/tasks/read-and-analyse.ts';
import type { Work } from './work-context.ts';

export type IncomingFile = { readonly name: string; readonly bytes: Uint8Array; readonly xUnit?: StatableXUnit | undefined; readonly yUnit?: YUnit | undefined };

/** A view of part of a larger buffer would be sent to the thread with all of that buffer. */
const compact = (bytes: Uint8Array): Uint8Array => bytes.byteLength === bytes.buffer.byteLength ? bytes : bytes.slice();

/**
 * Reads files in a worker thread, each with the unit stated for it or else the one its instrument remembers.
 * @param parameters null reads without analysing
 * @returns one outcome for each file, in order
 */
export async function readFiles(
  work: Work, operation: OperationName, files: readonly IncomingFile[], memory: InstrumentMemory | null, parameters: AnalysisParameters | null,
): Promise<Result<FileOutcome[], Failure>> {
  if (files.length === 0) return ok([]);
  const outcome = await work.pool.run('read-and-analyse', {
    parameters,
    files: files.map(({ name, bytes, xUnit, yUnit }) => ({ name, bytes: compact(bytes), xUnit: xUnit ?? memory?.xUnit, yUnit: yUnit ?? memory?.yUnit })),
  }, { signal: work.call.signal, onProgress: (step) => work.call.emit({ kind: 'progress', task: operation, ...step }) });
  return outcome.ok ? outcome : taskFailure(outcome.error);
}
