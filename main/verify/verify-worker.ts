import { parentPort, workerData, type MessagePort } from 'node:worker_threads';
import { openReader, type Reader } from '../../db/open-reader.ts';
import { helpVerify } from './help-verify.ts';
import { leadVerify } from './lead-verify.ts';
import type { LeadMessage, ThreadData } from './verify-messages.ts';

/** Entry of the threads that verify a casebook (bundled to verify-worker.cjs): one leads, the others help it. */
function start(port: MessagePort, data: ThreadData): void {
  let reader: Reader;
  try {
    reader = openReader(data.file, data.still);
  } catch (fault) {
    // A helper opens what the one that leads could open: there it is a fault.
    if (data.role === 'help' || !(fault instanceof Error && 'code' in fault && String(fault.code).startsWith('SQLITE_CANTOPEN'))) throw fault;
    port.postMessage({ kind: 'cannot-open' } satisfies LeadMessage);
    return;
  }
  if (data.role === 'help') helpVerify(port, reader.db, reader.close);
  else void leadVerify(port, reader.db, data).finally(() => { reader.close(); port.close(); });
}

if (parentPort !== null) start(parentPort, workerData as ThreadData);
