import { spawn } from 'node:child_process';

export type KilledLoop = {
  /** The loop and what it is given. */
  readonly args: readonly string[];
  /** Time that the loop is left after the first line that `begun` holds in, ms; without it, after the first it says. */
  readonly afterMs: number;
  readonly begun?: string;
};

/** Runs a loop in a process of its own, kills it without warning, and gives the lines it said. Fails where the loop ends by itself. */
export function runUntilKilled({ args, afterMs, begun = '' }: KilledLoop): Promise<string[]> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'pipe'] });
    let out = '';
    let complaint = '';
    let timer: NodeJS.Timeout | null = null;
    child.stdout.on('data', (data: Buffer) => {
      out += data.toString();
      if (out.includes(begun)) timer ??= setTimeout(() => child.kill('SIGKILL'), afterMs);
    });
    child.stderr.on('data', (data: Buffer) => { complaint += data.toString(); });
    child.on('error', reject);
    child.on('close', (_code, signal) => {
      if (signal !== 'SIGKILL') reject(new Error(`the loop ended by itself: ${complaint}`));
      else resolve(out.split('\n'));
    });
  });
}
