import { parentPort, workerData, type MessagePort } from 'node:worker_threads';
import { helpInThread } from './help-in-thread.ts';
import { leadVerify } from './lead-verify.ts';
import type { ThreadData } from './verify-messages.ts';

/** Entry of the threads that verify a casebook (bundled to verify-worker.cjs): one leads, the others help it. */
function start(port: MessagePort, data: ThreadData): void {
  if (data.role === 'help') helpInThread(port, data);
  else void leadVerify(port, data).finally(() => { port.close(); });
}

if (parentPort !== null) start(parentPort, workerData as ThreadData);
