import { readSpectrumFile } from '../../app/files/read-spectrum-file.ts';
import type { ReadWarning, SpectrumBlock } from '../../app/files/spectrum-file.ts';
import { err, ok, type Result } from '../../app/result.ts';
import type { StatableXUnit } from '../../app/spectra/spectrum.ts';

export type OneCurve = { readonly block: SpectrumBlock; readonly warnings: readonly ReadWarning[] };

/** The one curve of a file, as a calibration needs it. Errors: those of the reader, and 'several-curves'. */
export function readOneCurve(name: string, bytes: Uint8Array, xUnit: StatableXUnit | undefined): Result<OneCurve, { readonly code: string; readonly message: string }> {
  const read = readSpectrumFile(name, bytes, xUnit === undefined ? {} : { xUnit });
  if (!read.ok) return read;
  const curves = read.value.blocks.filter((block) => block.peaksOnly !== true);
  if (curves.length !== 1) return err({ code: 'several-curves', message: `The file holds ${curves.length} curves; a calibration needs exactly one: export that curve alone.` });
  return ok({ block: curves[0]!, warnings: read.value.warnings });
}
