import type { MessagePort } from 'node:worker_threads';
import type { ReadDb } from '../../db/handle.ts';
import { howMany, isDamage, verifyCasebook } from '../../db/verify/verify-casebook.ts';
import { faultyPart, type Pace } from '../../db/verify/part.ts';
import type { Verification } from '../../app/contract/casebook.ts';
import { createHelperRunner } from './helper-runner.ts';
import type { EndMessage, LeadMessage, ThreadData } from './verify-messages.ts';

/** Progress is told at most this often, ms. */
const TELL_EVERY_MS = 50;

function countOrNothing(db: ReadDb): number {
  try {
    return howMany(db);
  } catch (fault) {
    if (isDamage(fault)) return 0;
    throw fault;
  }
}

async function verifyWithHelpers(db: ReadDb, { file, still }: ThreadData, { what, workerFile, helpers }: NonNullable<ThreadData['lead']>, tell: (message: LeadMessage) => void, port: MessagePort): Promise<Verification | null> {
  let total = 0;
  let done = 0;
  let told = 0;
  const more = (n: number): void => {
    done += n;
    if (total === 0 || performance.now() - told < TELL_EVERY_MS) return;
    told = performance.now();
    tell({ kind: 'progress', done: Math.min(done, total), total });
  };
  const runner = createHelperRunner({ file, still, workerFile, helpers }, more);
  port.on('message', (message: EndMessage) => { if (message.end) runner.stop(); });
  try {
    const pace: Pace = async (n) => { more(n); };
    const verifying = verifyCasebook(db, what, runner, pace);
    // Counting takes a while: the helpers are at work meanwhile. A file too damaged to be counted is named by what verifies it.
    total = countOrNothing(db);
    return await verifying;
  } finally {
    await runner.end();
  }
}

/** Verifies a file with the help of other threads, and tells how it goes and what came of it. */
export async function leadVerify(port: MessagePort, db: ReadDb, data: ThreadData): Promise<void> {
  const tell = (message: LeadMessage): void => { port.postMessage(message); };
  try {
    const verification = await verifyWithHelpers(db, data, data.lead!, tell, port);
    tell(verification === null ? { kind: 'stopped' } : { kind: 'done', verification });
  } catch (fault) {
    if (isDamage(fault)) {
      tell({ kind: 'done', verification: { sound: false, at: data.lead!.what.at, parts: [faultyPart('database', 0, `The file is damaged and can’t be read to the end: ${fault.message}.`)] } });
      return;
    }
    tell({ kind: 'fault', stack: fault instanceof Error ? fault.stack ?? fault.message : String(fault) });
  }
}
