import { createHash } from 'node:crypto';
import { readSpectrumFile } from '../../app/files/read-spectrum-file.ts';
import type { FileFormat, ReadError, ReadOptions, ReadWarning, SpectrumBlock } from '../../app/files/spectrum-file.ts';
import { err, ok, type Result } from '../../app/result.ts';
import type { GatheredFile } from './gather-files.ts';
import { unusedUnit } from './unused-unit.ts';

export type ReadFile = { readonly file: string; readonly sha256: string; readonly format: FileFormat; readonly warnings: readonly ReadWarning[]; readonly blocks: readonly SpectrumBlock[] };

/** Why a file gave nothing; the digest is there where its bytes could be had. */
export type UnreadFile = { readonly file: string; readonly sha256?: string; readonly error: ReadError };

/** Reads one file; a stated unit that the file contradicts is told, not used. */
export async function readOne(gathered: GatheredFile, stated: ReadOptions): Promise<Result<ReadFile, UnreadFile>> {
  const { file } = gathered;
  const bytes = await gathered.read();
  if (!bytes.ok) return err({ file, error: bytes.error });
  const sha256 = createHash('sha256').update(bytes.value).digest('hex');
  const read = readSpectrumFile(file, bytes.value, stated);
  if (!read.ok) return err({ file, sha256, error: read.error });
  const { format, blocks, warnings } = read.value;
  return ok({ file, sha256, format, blocks, warnings: [...warnings, ...unusedUnit(blocks, stated)] });
}
