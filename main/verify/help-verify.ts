import type { MessagePort } from 'node:worker_threads';
import type { ReadDb } from '../../db/handle.ts';
import { doPiece } from '../../db/verify/pieces.ts';
import type { Pace } from '../../db/verify/part.ts';
import type { EndMessage, HelperMessage, PieceMessage } from './verify-messages.ts';

/** What was looked at is told at most this often, ms. */
const TELL_EVERY_MS = 50;

/** Takes pieces from the thread that leads, one at a time, until it is told to end. */
export function helpVerify(port: MessagePort, db: ReadDb, close: () => void): void {
  const tell = (message: HelperMessage): void => { port.postMessage(message); };
  let untold = 0;
  let told = performance.now();
  const pace: Pace = async (more) => {
    untold += more;
    if (performance.now() - told < TELL_EVERY_MS) return;
    tell({ kind: 'more', more: untold });
    untold = 0;
    told = performance.now();
  };
  port.on('message', (message: PieceMessage | EndMessage) => {
    if ('end' in message) {
      close();
      port.close();
      return;
    }
    const { job, piece } = message;
    doPiece(db, piece, pace).then(
      (found) => { tell({ kind: 'found', job, found }); },
      (fault: unknown) => {
        const code = fault instanceof Error && 'code' in fault ? String(fault.code) : '';
        tell({ kind: 'failed', job, message: fault instanceof Error ? fault.message : String(fault), code });
      },
    );
  });
  tell({ kind: 'ready' });
}
