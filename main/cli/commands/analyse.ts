import type { ReadOptions } from '../../../app/files/spectrum-file.ts';
import type { AnalysisParameters, AnalysisResult, PeakResult } from '../../../app/spectra/analysis.ts';
import type { AnalysedFile, Curve } from '../analyse-file.ts';
import { analyseInOrder } from '../analyse-in-order.ts';
import { gatherFiles } from '../gather-files.ts';
import { EXIT, type CliIo, type ExitCode } from '../io.ts';
import { warningInWords } from './read.ts';

export type AnalyseCommand = {
  readonly files: readonly string[]; readonly stated: ReadOptions; readonly parameters: AnalysisParameters; readonly json: boolean;
  /** Threads; 1 works on the calling thread. */
  readonly workers: number;
};

/** Analyses every curve of the files and prints each file as it is done, in order: ten thousand files do not lie in memory at once. */
export async function runAnalyse(command: AnalyseCommand, io: CliIo): Promise<ExitCode> {
  let failed = false;
  let first = true;
  for await (const outcome of analyseInOrder(gatherFiles(command.files, io), command, io)) {
    failed ||= outcome.error !== null;
    if (command.json) io.out(`${first ? '[\n' : ',\n'}${JSON.stringify(asJson(outcome), null, 2).replace(/^/gm, '  ')}`);
    else io.out(inWords(outcome));
    first = false;
  }
  if (command.json) io.out(first ? '[]\n' : '\n]\n');
  return failed ? EXIT.failed : EXIT.done;
}

/** The result of the first curve that could be analysed stands at the entry itself; a file of several curves lists them all in `blocks`. */
function asJson({ file, readWarnings, curves, error }: AnalysedFile): unknown {
  const result = curves.flatMap(({ outcome }) => (outcome.ok ? [outcome.result] : []))[0] ?? null;
  return {
    file, ok: error === null, ...(error === null ? {} : { error }),
    warnings: [...readWarnings, ...(result?.warnings ?? [])],
    ...(result === null ? {} : facts(result)),
    ...(curves.length < 2 ? {} : { blocks: curves.map(curveAsJson) }),
  };
}

function curveAsJson({ block, title, outcome }: Curve): unknown {
  return outcome.ok ? { block, title, ok: true, warnings: outcome.result.warnings, ...facts(outcome.result) } : { block, title, ok: false, error: outcome.error };
}

function facts({ peaks, diamondRaman, infrared, ultraviolet, luminescenceColour, findings, parameters, pipeline, tables }: AnalysisResult) {
  return { peaks, diamondRaman, infrared, ultraviolet, luminescenceColour: luminescenceColour ?? null, findings, parameters, pipeline, tables };
}

function inWords({ file, readWarnings, curves, error }: AnalysedFile): string {
  const lines = [file, ...readWarnings.map(warningInWords)];
  if (curves.length === 0 && error !== null) lines.push(`  Not read. ${error.message}`);
  for (const curve of curves) {
    if (curves.length > 1) lines.push(`  Curve ${curve.block + 1}${curve.title === '' ? '' : `, ${curve.title}`}`);
    lines.push(...(curve.outcome.ok ? resultInWords(curve.outcome.result) : [`  Not analysed. ${curve.outcome.error.message}`]));
  }
  return `${lines.join('\n')}\n`;
}

function resultInWords({ peaks, diamondRaman, luminescenceColour, findings, warnings }: AnalysisResult): string[] {
  const raman = diamondRaman === null ? []
    : [`  Diamond line ${diamondRaman.state}, expected at ${diamondRaman.expectedNm.toFixed(2)} nm${diamondRaman.foundNm === null ? '' : `, found at ${diamondRaman.foundNm.toFixed(2)} nm`}`];
  const colour = luminescenceColour ? [`  Luminescence looks ${luminescenceColour.word}, x ${luminescenceColour.x.toFixed(3)}, y ${luminescenceColour.y.toFixed(3)}`] : [];
  const table = peaks.length === 0 ? ['  No peaks stand out.'] : ['    position          width     signal/noise  centre', ...peaks.map(peakInWords)];
  return [...warnings.map((warning) => warningInWords(warning)), ...raman, ...colour, ...table, ...findings.map(({ statement, strength }) => `  • ${statement} (${strength})`)];
}

function peakInWords({ position, unit, fwhm, snr, centre }: PeakResult): string {
  return `    ${position.toFixed(2).padStart(9)} ${unit.padEnd(7)} ${fwhm.toFixed(2).padStart(7)} ${snr.toFixed(0).padStart(12)}    ${centre ?? '–'}`;
}
