import type { MessagePort } from 'node:worker_threads';
import type { Verification } from '../../app/contract/casebook.ts';
import { verifyCasebook } from '../../db/verify/verify-casebook.ts';
import { createHelperRunner, HelperCannotOpen, HelperLost } from './helper-runner.ts';
import type { EndMessage, LeadData, LeadMessage } from './verify-messages.ts';

/** Progress is told at most this often, ms. */
const TELL_EVERY_MS = 50;

async function verifyWithHelpers(data: LeadData, tell: (message: LeadMessage) => void, port: MessagePort): Promise<Verification | null> {
  let total = 0;
  let done = 0;
  let told = 0;
  const more = (n: number): void => {
    done += n;
    if (total === 0 || performance.now() - told < TELL_EVERY_MS) return;
    told = performance.now();
    tell({ kind: 'progress', done: Math.min(done, total), total });
  };
  const runner = createHelperRunner(data, more);
  port.on('message', (message: EndMessage) => { if (message.end) runner.stop(); });
  try {
    const verifying = verifyCasebook(data.what, runner);
    // A file too damaged to be counted is named by what verifies it.
    runner.run({ kind: 'count' }).then((n) => { total = n; }, () => {});
    return await verifying;
  } finally {
    await runner.end();
  }
}

function failure(fault: unknown): LeadMessage {
  if (fault instanceof HelperCannotOpen) return { kind: 'cannot-open' };
  if (fault instanceof HelperLost) return { kind: 'lost', how: fault.message };
  return { kind: 'fault', stack: fault instanceof Error ? fault.stack ?? fault.message : String(fault) };
}

/** Verifies a file with helpers, and tells how it goes and what came of it. */
export async function leadVerify(port: MessagePort, data: LeadData): Promise<void> {
  const tell = (message: LeadMessage): void => { port.postMessage(message); };
  try {
    const verification = await verifyWithHelpers(data, tell, port);
    tell(verification === null ? { kind: 'stopped' } : { kind: 'done', verification });
  } catch (fault) {
    tell(failure(fault));
  }
}
