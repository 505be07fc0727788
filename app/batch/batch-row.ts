import { z } from 'zod';
import { COLOUR_WORDS } from '../colour/colour-word.ts';
import { diamondRamanResult, infraredResult, type AnalysisResult } from '../spectra/analysis.ts';

/** What a batch says about one curve of one file: enough for a table, without the curves. */
export const batchRow = z.object({
  file: z.string(),
  /** Number of the curve in its file, from 0; null where the file could not be read. */
  block: z.number().nullable(),
  title: z.string(),
  /** Why there is no result, or null. */
  error: z.object({ code: z.string(), message: z.string() }).nullable(),
  diamond: diamondRamanResult.shape.state.nullable(),
  diamondNm: z.number().nullable(),
  /** Named centres and reference lines, as the table of peaks lists them. */
  centres: z.array(z.string()),
  peaks: z.number(),
  infraredType: infraredResult.shape.type.nullable(),
  colour: z.enum(COLOUR_WORDS).nullable(),
  findings: z.array(z.object({ code: z.string(), statement: z.string(), strength: z.string(), supports: z.string() })),
  warnings: z.array(z.string()),
});
export type BatchRow = z.infer<typeof batchRow>;

const NOTHING = { diamond: null, diamondNm: null, centres: [], peaks: 0, infraredType: null, colour: null, findings: [] } as const;

/** The row of a file or a curve that gave no result. */
export const failedRow = (file: string, block: number | null, title: string, error: { readonly code: string; readonly message: string }, warnings: readonly string[] = []): BatchRow =>
  ({ ...NOTHING, file, block, title, error: { code: error.code, message: error.message }, centres: [], findings: [], warnings: [...warnings] });

/** The row of an analysed curve. */
export function rowOf(file: string, block: number, title: string, result: AnalysisResult, warnings: readonly string[]): BatchRow {
  return {
    file, block, title, error: null,
    diamond: result.diamondRaman?.state ?? null, diamondNm: result.diamondRaman?.foundNm ?? null,
    centres: [...new Set(result.peaks.flatMap((peak) => (peak.centre === null ? [] : [peak.centre])))], peaks: result.peaks.length,
    infraredType: result.infrared?.type ?? null, colour: result.luminescenceColour?.word ?? null,
    findings: result.findings.map(({ code, statement, strength, supports }) => ({ code, statement, strength, supports })),
    warnings: [...warnings, ...result.warnings.map((warning) => warning.message)],
  };
}
