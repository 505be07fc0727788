import type { ReadDb } from '../../db/handle.ts';
import type { Pace } from '../../db/verify/part.ts';
import { doPiece } from '../../db/verify/pieces.ts';
import type { HelperMessage, PieceMessage } from './verify-messages.ts';

/** What was looked at is told at most this often, ms. */
const TELL_EVERY_MS = 50;

/** Does what a helper is asked for with its connection, and tells what it found. */
export function createPieceDoer(db: ReadDb, tell: (message: HelperMessage) => void): (message: PieceMessage) => Promise<void> {
  let untold = 0;
  let told = performance.now();
  const pace: Pace = async (more) => {
    untold += more;
    if (performance.now() - told < TELL_EVERY_MS) return;
    tell({ kind: 'more', more: untold });
    untold = 0;
    told = performance.now();
  };
  return async ({ job, piece }) => {
    try {
      tell({ kind: 'found', job, found: await doPiece(db, piece, pace) });
    } catch (fault) {
      const code = fault instanceof Error && 'code' in fault ? String(fault.code) : '';
      tell({ kind: 'failed', job, message: fault instanceof Error ? fault.message : String(fault), code });
    }
  };
}

/** The file can't be opened the way it was asked for, and no program is at fault. */
export const cannotOpen = (fault: unknown): boolean => fault instanceof Error && 'code' in fault && String(fault.code).startsWith('SQLITE_CANTOPEN');
