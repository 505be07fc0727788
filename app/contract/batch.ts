import { z } from 'zod';
import { batchRow } from '../batch/batch-row.ts';
import { analysisParameters } from '../spectra/analysis.ts';
import { STATABLE_X_UNITS } from '../spectra/spectrum.ts';
import { bytes, line } from './common.ts';
import { reads } from './operation.ts';

/** Name of a piece of long work, made by the window; progress and cancelling go by it. */
export const taskName = z.string().min(1).max(80);

/** Files that one call carries; a folder is sent in several. */
export const BATCH_FILES = 100;

export const batchContract = {
  /** Reads and analyses files; nothing of them is kept. */
  'batch.analyse': reads('anyone', z.strictObject({
    task: taskName,
    files: z.array(z.strictObject({ name: line(1000), bytes, xUnit: z.enum(STATABLE_X_UNITS).optional() })).min(1).max(BATCH_FILES),
    parameters: analysisParameters,
  }), z.array(batchRow)),
  /** Stops every call of this name that is under way; says how many there were. */
  'work.cancel': reads('anyone', z.strictObject({ task: taskName }), z.object({ cancelled: z.number() })),
};
