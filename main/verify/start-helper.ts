import { spawn } from 'node:child_process';
import type { Duplex } from 'node:stream';
import { Worker } from 'node:worker_threads';
import { createFrameReader, frameOf } from './frames.ts';
import { HELPER_PIPE, HELPER_SWITCH } from './helper-switch.ts';
import type { EndMessage, HelperMessage, HelpersBy, OpenMessage, PieceMessage, ThreadData, VerifyFile } from './verify-messages.ts';

/** A helper that was started, as the one that leads sees it. */
export type HelperLink = {
  post(message: PieceMessage): void;
  /** Lets it go. */
  end(): void;
};

export type HelperEars = {
  hear(message: HelperMessage): void;
  /** It stumbled over a fault of the program, and is about to be gone. */
  fault(fault: Error): void;
  /** It is gone, for whatever reason; `how` says so in words. */
  gone(how: string): void;
};

/** What a piece finds is kept until it is told: with little room for young objects each of them would be moved about twice. */
export const YOUNG_MB = 64;

/** From source a worker is named by its address, from a bundle by its path. */
export const workerLocation = (workerFile: string): string | URL => (workerFile.startsWith('file:') ? new URL(workerFile) : workerFile);

function startThread(workerFile: string, file: VerifyFile, { hear, fault, gone }: HelperEars): HelperLink {
  const workerData: ThreadData = { role: 'help', ...file };
  const worker = new Worker(workerLocation(workerFile), { workerData, resourceLimits: { maxYoungGenerationSizeMb: YOUNG_MB } });
  worker.on('message', hear);
  worker.on('error', fault);
  worker.on('exit', (code) => { gone(`a thread ended with ${code}`); });
  return {
    post(message) { worker.postMessage(message); },
    end() { worker.postMessage({ end: true } satisfies EndMessage); },
  };
}

function startProcess(program: string, args: readonly string[], file: VerifyFile, { hear, fault, gone }: HelperEars): HelperLink {
  const env = { ...process.env };
  // It must start as the program, not as a bare Node.
  delete env['ELECTRON_RUN_AS_NODE'];
  const child = spawn(program, [...args, HELPER_SWITCH], { env, stdio: ['ignore', 'ignore', 'ignore', 'pipe'], windowsHide: true });
  // There is none where the system has no more of them; `error` then says so.
  const pipe = (child.stdio as typeof child.stdio | undefined)?.[HELPER_PIPE] as Duplex | undefined;
  const read = createFrameReader((message) => { hear(message as HelperMessage); });
  pipe?.on('data', (bytes: Buffer) => {
    try {
      read(bytes);
    } catch (e) {
      fault(e instanceof Error ? e : new Error(String(e)));
      child.kill('SIGKILL');
    }
  });
  // What can't be written any more is told by its end.
  pipe?.on('error', () => {});
  child.on('error', (e) => { gone(`a helping process could not be started (${e.message})`); });
  child.on('exit', (code, signal) => { gone(signal === null ? `a helping process ended with ${code}` : `a helping process was ended (${signal})`); });
  pipe?.write(frameOf({ open: file } satisfies OpenMessage));
  return {
    post(message) { pipe?.write(frameOf(message)); },
    // It only reads, through no lock: nothing is left behind, and nobody waits for a piece that is no longer wanted.
    end() { child.kill('SIGKILL'); },
  };
}

export const startHelper = (by: HelpersBy, file: VerifyFile, ears: HelperEars): HelperLink =>
  (by.kind === 'threads' ? startThread(by.workerFile, file, ears) : startProcess(by.program, by.args, file, ears));
