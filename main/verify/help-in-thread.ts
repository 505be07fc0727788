import type { MessagePort } from 'node:worker_threads';
import { openReader, type Reader } from '../../db/open-reader.ts';
import { cannotOpen, createPieceDoer } from './do-pieces.ts';
import type { EndMessage, HelperMessage, PieceMessage, VerifyFile } from './verify-messages.ts';

/** Takes pieces from the thread that leads, one at a time, until it is told to end. */
export function helpInThread(port: MessagePort, { file, still }: VerifyFile): void {
  const tell = (message: HelperMessage): void => { port.postMessage(message); };
  let reader: Reader;
  try {
    reader = openReader(file, still);
  } catch (fault) {
    if (!cannotOpen(fault)) throw fault;
    tell({ kind: 'cannot-open' });
    port.close();
    return;
  }
  const doPiece = createPieceDoer(reader.db, tell);
  port.on('message', (message: PieceMessage | EndMessage) => {
    if ('end' in message) {
      reader.close();
      port.close();
      return;
    }
    void doPiece(message);
  });
  tell({ kind: 'ready' });
}
