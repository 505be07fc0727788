import { readSpectrumFile } from '../../app/files/read-spectrum-file.ts';
import type { ReadOptions, ReadWarning, SpectrumBlock } from '../../app/files/spectrum-file.ts';
import { assertNever } from '../../app/result.ts';
import { analyseSpectrum } from '../../app/spectra/analyse-spectrum.ts';
import type { AnalysisError } from '../../app/spectra/analysis-error.ts';
import type { AnalysisParameters, AnalysisResult } from '../../app/spectra/analysis.ts';
import { STATABLE_X_UNITS } from '../../app/spectra/spectrum.ts';
import { unusedUnit } from './unused-unit.ts';

export type Trouble = { readonly code: string; readonly message: string; readonly line?: number };
export type CurveOutcome = { readonly ok: true; readonly result: AnalysisResult } | { readonly ok: false; readonly error: Trouble };
export type Curve = { readonly block: number; readonly title: string; readonly outcome: CurveOutcome };
export type AnalysedFile = { readonly file: string; readonly readWarnings: readonly ReadWarning[]; readonly curves: readonly Curve[]; readonly error: Trouble | null };

const PEAK_TABLE = 'peak-table';

/** Reads one file and analyses its curves; what the command line prints, without the curves themselves. */
export function analyseFile(file: string, bytes: Uint8Array, stated: ReadOptions, parameters: AnalysisParameters): AnalysedFile {
  const read = readSpectrumFile(file, bytes, stated);
  if (!read.ok) return { file, readWarnings: [], curves: [], error: read.error };
  const { blocks, warnings } = read.value;
  const curves = blocks.map((block, index): Curve => ({ block: index, title: block.title, outcome: analyseCurve(block, parameters) }));
  return { file, readWarnings: [...warnings, ...unusedUnit(blocks, stated)], curves, error: firstTrouble(file, curves) };
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
