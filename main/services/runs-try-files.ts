import type { FileTrial } from '../../app/contract/work.ts';
import { ok } from '../../app/result.ts';
import type { SpectrumBlock } from '../../app/files/spectrum-file.ts';
import type { KeptBytes } from '../../db/store/runs-read.ts';
import type { FileOutcome } from '../workers/tasks/read-and-analyse.ts';
import { notFound } from './failures.ts';
import { readFiles, type IncomingFile } from './runs-read-files.ts';
import type { Services } from './service.ts';
import { reading, type WorkDeps } from './work-context.ts';

function extremes(values: Float64Array): { minY: number; maxY: number } {
  let minY = Infinity;
  let maxY = -Infinity;
  for (const value of values) {
    if (value < minY) minY = value;
    if (value > maxY) maxY = value;
  }
  return { minY, maxY };
}

const blockView = (block: SpectrumBlock): FileTrial['blocks'][number] => ({
  title: block.title, xUnit: block.xUnit, yUnit: block.yUnit, xUnitText: block.xUnitText, points: block.x.length,
  firstX: block.x[0] ?? 0, lastX: block.x.at(-1) ?? 0, ...extremes(block.y),
});

function trialView(file: IncomingFile, outcome: FileOutcome, alreadyIn: FileTrial['alreadyIn']): FileTrial {
  const { sha256, reading: read } = outcome;
  const common = { name: file.name, sha256, size: file.bytes.byteLength, alreadyIn };
  return read.ok
    ? { ...common, format: read.value.format, blocks: read.value.blocks.map(blockView), warnings: [...read.value.warnings], error: null }
    : { ...common, format: null, blocks: [], warnings: [], error: read.error };
}

/** Where these bytes already are: kept in the case, or earlier among the files tried with them. */
function duplicateOf(index: number, files: readonly IncomingFile[], outcomes: readonly FileOutcome[], kept: ReadonlyMap<string, KeptBytes>): FileTrial['alreadyIn'] {
  const { sha256 } = outcomes[index]!;
  const inCase = kept.get(sha256);
  if (inCase !== undefined) return { run: inCase.run, name: inCase.name };
  const earlier = outcomes.findIndex((other) => other.sha256 === sha256);
  return earlier < index ? { run: 'this run', name: files[earlier]!.name } : null;
}

export function createTryFilesService(deps: WorkDeps): Services['runs.tryFiles'] {
  return reading(deps, 'runs.tryFiles', async (input, work) => {
    const { stores, at } = work;
    if (!await stores.runs.caseExists(input.caseId)) return notFound('This case');
    const instrument = input.instrumentId === null ? null : await stores.instruments.get(input.instrumentId, at);
    if (input.instrumentId !== null && instrument === null) return notFound('This instrument');
    const outcomes = await readFiles(work, 'runs.tryFiles', input.files, instrument?.remembers ?? null, null);
    if (!outcomes.ok) return outcomes;
    const kept = await stores.runs.kept(input.caseId, outcomes.value.map((outcome) => outcome.sha256));
    return ok(input.files.map((file, index) => trialView(file, outcomes.value[index]!, duplicateOf(index, input.files, outcomes.value, kept))));
  });
}
