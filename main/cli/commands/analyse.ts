import type { ReadOptions, ReadWarning, SpectrumBlock } from '../../../app/files/spectrum-file.ts';
import { assertNever } from '../../../app/result.ts';
import type { AnalysisParameters, AnalysisResult, PeakResult } from '../../../app/spectra/analysis.ts';
import type { AnalysisError } from '../../../app/spectra/analysis-error.ts';
import { analyseSpectrum } from '../../../app/spectra/analyse-spectrum.ts';
import { STATABLE_X_UNITS } from '../../../app/spectra/spectrum.ts';
import { gatherFiles, type GatheredFile } from '../gather-files.ts';
import { EXIT, type CliIo, type ExitCode } from '../io.ts';
import { printJson } from '../json-out.ts';
import { readOne } from '../read-one.ts';
import { warningInWords } from './read.ts';

export type AnalyseCommand = { readonly files: readonly string[]; readonly stated: ReadOptions; readonly parameters: AnalysisParameters; readonly json: boolean };

type Trouble = { readonly code: string; readonly message: string; readonly line?: number };
type CurveOutcome = { readonly ok: true; readonly result: AnalysisResult } | { readonly ok: false; readonly error: Trouble };
type Curve = { readonly block: number; readonly title: string; readonly outcome: CurveOutcome };
type FileOutcome = { readonly file: string; readonly readWarnings: readonly ReadWarning[]; readonly curves: readonly Curve[]; readonly error: Trouble | null };

/** Analyses every curve of the files. */
export async function runAnalyse(command: AnalyseCommand, io: CliIo): Promise<ExitCode> {
  const outcomes: FileOutcome[] = [];
  for (const file of gatherFiles(command.files, io)) {
    const outcome = await analyseFile(file, command);
    outcomes.push(outcome);
    if (!command.json) io.out(inWords(outcome));
  }
  if (command.json) printJson(io, outcomes.map(asJson));
  return outcomes.every((outcome) => outcome.error === null) ? EXIT.done : EXIT.failed;
}

async function analyseFile(gathered: GatheredFile, { stated, parameters }: AnalyseCommand): Promise<FileOutcome> {
  const read = await readOne(gathered, stated);
  if (!read.ok) return { file: gathered.file, readWarnings: [], curves: [], error: read.error.error };
  const curves = read.value.blocks.map((block, index): Curve => ({ block: index, title: block.title, outcome: analyseCurve(block, parameters) }));
  return { file: gathered.file, readWarnings: read.value.warnings, curves, error: firstTrouble(gathered.file, curves) };
}

/** A table of peaks beside a curve is no trouble: there is something to analyse, and it was. */
function firstTrouble(file: string, curves: readonly Curve[]): Trouble | null {
  const someCurve = curves.some(({ outcome }) => outcome.ok);
  for (const curve of curves) {
    const { outcome } = curve;
    if (!outcome.ok && !(someCurve && outcome.error.code === PEAK_TABLE)) return about(file, curves.length > 1 ? curve : null, outcome.error);
  }
  return null;
}

const PEAK_TABLE = 'peak-table';

function analyseCurve(block: SpectrumBlock, parameters: AnalysisParameters): CurveOutcome {
  if (block.peaksOnly === true) return { ok: false, error: { code: PEAK_TABLE, message: 'This is a table of peaks; there is no curve in it to analyse.' } };
  const analysed = analyseSpectrum(block, parameters);
  return analysed.ok ? { ok: true, result: analysed.value.result } : { ok: false, error: { code: analysed.error.code, message: `${analysed.error.message}${optionFor(analysed.error.code)}` } };
}

/** What the command line offers against it. */
function optionFor(code: AnalysisError['code']): string {
  switch (code) {
    case 'axis-unit-missing':
    case 'axis-implausible': return ` Use --x-unit ${STATABLE_X_UNITS.join('|')}.`;
    case 'laser-missing': return ' Use --laser-nm N.';
    case 'axis-wrong-for-method':
    case 'ordinate-wrong-for-method': return ' See --method and --x-unit.';
    case 'length-mismatch': case 'too-few-points': case 'not-finite': case 'constant': case 'axis-not-monotonic': return '';
    default: return assertNever(code);
  }
}

function about(file: string, curve: Curve | null, error: Trouble): Trouble {
  return { ...error, message: `“${file}”${curve === null ? '' : `, curve ${curve.block + 1}`}: ${error.message}` };
}

/** The result of the first curve that could be analysed stands at the entry itself; a file of several curves lists them all in `blocks`. */
function asJson({ file, readWarnings, curves, error }: FileOutcome): unknown {
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

function facts({ peaks, diamondRaman, infrared, ultraviolet, findings, parameters, pipeline, tables }: AnalysisResult) {
  return { peaks, diamondRaman, infrared, ultraviolet, findings, parameters, pipeline, tables };
}

function inWords({ file, readWarnings, curves, error }: FileOutcome): string {
  const lines = [file, ...readWarnings.map(warningInWords)];
  if (curves.length === 0 && error !== null) lines.push(`  Not read. ${error.message}`);
  for (const curve of curves) {
    if (curves.length > 1) lines.push(`  Curve ${curve.block + 1}${curve.title === '' ? '' : `, ${curve.title}`}`);
    lines.push(...(curve.outcome.ok ? resultInWords(curve.outcome.result) : [`  Not analysed. ${curve.outcome.error.message}`]));
  }
  return `${lines.join('\n')}\n`;
}

function resultInWords({ peaks, diamondRaman, findings, warnings }: AnalysisResult): string[] {
  const raman = diamondRaman === null ? []
    : [`  Diamond line ${diamondRaman.state}, expected at ${diamondRaman.expectedNm.toFixed(2)} nm${diamondRaman.foundNm === null ? '' : `, found at ${diamondRaman.foundNm.toFixed(2)} nm`}`];
  const table = peaks.length === 0 ? ['  No peaks stand out.'] : ['    position          width     signal/noise  centre', ...peaks.map(peakInWords)];
  return [...warnings.map((warning) => warningInWords(warning)), ...raman, ...table, ...findings.map(({ statement, strength }) => `  • ${statement} (${strength})`)];
}

function peakInWords({ position, unit, fwhm, snr, centre }: PeakResult): string {
  return `    ${position.toFixed(2).padStart(9)} ${unit.padEnd(7)} ${fwhm.toFixed(2).padStart(7)} ${snr.toFixed(0).padStart(12)}    ${centre ?? '–'}`;
}
