import { createHash } from 'node:crypto';
import { readSpectrumFile } from '../../../app/files/read-spectrum-file.ts';
import type { ReadError, SpectrumBlock, SpectrumFile } from '../../../app/files/spectrum-file.ts';
import type { Result } from '../../../app/result.ts';
import { analyseSpectrum } from '../../../app/spectra/analyse-spectrum.ts';
import type { AnalysisParameters, AnalysisResult } from '../../../app/spectra/analysis.ts';
import type { XUnit, YUnit } from '../../../app/spectra/spectrum.ts';
import type { Task } from '../task.ts';
import { buffersOf } from '../task.ts';

export type FileToRead = {
  readonly name: string;
  readonly bytes: Uint8Array;
  /** Used only where the file does not say its unit. */
  readonly xUnit?: XUnit;
  readonly yUnit?: YUnit;
};

export type ReadPayload = {
  readonly files: readonly FileToRead[];
  /** Null: only hash and read. */
  readonly parameters: AnalysisParameters | null;
};

/** What came of analysing one curve: its result, or the sentence that says why there is none. */
export type BlockAnalysis = { readonly ok: true; readonly value: AnalysisResult } | { readonly ok: false; readonly error: { readonly code: string; readonly message: string } };

export type FileOutcome = {
  readonly sha256: string;
  readonly reading: Result<SpectrumFile, ReadError>;
  /** For each block, whether its abscissa's unit was stated or remembered because the file does not say it. */
  readonly unitStated: readonly boolean[];
  /** One entry for each block, in order; empty without parameters. */
  readonly analyses: readonly BlockAnalysis[];
};

function analyseBlock(block: SpectrumBlock, parameters: AnalysisParameters): BlockAnalysis {
  if (block.peaksOnly === true) return { ok: false, error: { code: 'peak-table', message: 'A table of peaks is kept and shown; there is no curve in it to analyse.' } };
  const outcome = analyseSpectrum(block, parameters);
  return outcome.ok ? { ok: true, value: outcome.value.result } : { ok: false, error: { code: outcome.error.code, message: outcome.error.message } };
}

/** Reads once more without what was stated: the reader uses a stated unit only where the file has none. */
function whereStated(file: FileToRead, read: SpectrumFile): boolean[] {
  if (file.xUnit === undefined) return read.blocks.map(() => false);
  const bare = readSpectrumFile(file.name, file.bytes);
  return read.blocks.map((block, index) => bare.ok && bare.value.blocks[index]?.xUnit === 'unstated' && block.xUnit !== 'unstated');
}

function readOne(file: FileToRead, parameters: AnalysisParameters | null): FileOutcome {
  const sha256 = createHash('sha256').update(file.bytes).digest('hex');
  const reading = readSpectrumFile(file.name, file.bytes, {
    ...(file.xUnit === undefined ? {} : { xUnit: file.xUnit }), ...(file.yUnit === undefined ? {} : { yUnit: file.yUnit }),
  });
  const analyses = reading.ok && parameters !== null ? reading.value.blocks.map((block) => analyseBlock(block, parameters)) : [];
  return { sha256, reading, unitStated: reading.ok ? whereStated(file, reading.value) : [], analyses };
}

/** Hashes and reads files, and analyses each curve where parameters are given. One outcome for each file, in order. */
export const readAndAnalyseTask: Task<ReadPayload, FileOutcome[]> = {
  run({ files, parameters }, { progress }) {
    return files.map((file, index) => {
      const outcome = readOne(file, parameters);
      progress({ done: index + 1, total: files.length, note: file.name });
      return outcome;
    });
  },
  transfers: (outcomes) => buffersOf(outcomes.flatMap((o) => o.reading.ok ? o.reading.value.blocks.flatMap((b) => [b.x, b.y]) : [])),
};
