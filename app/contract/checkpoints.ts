import { z } from 'zod';
import { checkpointStatement } from '../signature/checkpoint-statement.ts';
import { nothing } from './common.ts';
import { changes, reads } from './operation.ts';

/** `file`: where the copy lies that is kept beside the backups. */
export const checkpointsContract = {
  /** Signs how far the ledgers have come, and writes it into a small file as well. */
  'checkpoints.make': changes(['appraiser', 'manager'], nothing, z.object({ statement: checkpointStatement, file: z.string() })),
  /** Newest first, at most a hundred. */
  'checkpoints.list': reads('anyone', nothing, z.array(checkpointStatement)),
};
