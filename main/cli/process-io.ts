import { askSecret } from './ask-secret.ts';
import type { CliIo } from './io.ts';

/** The terminal of this process. */
export function processIo(): CliIo {
  // A reader that has seen enough (`| head`) closes the pipe; that is no fault.
  process.stdout.on('error', (fault: NodeJS.ErrnoException) => {
    if (fault.code === 'EPIPE') process.exit(0);
    throw fault;
  });
  return {
    out(text) { process.stdout.write(text); },
    err(text) { process.stderr.write(text); },
    readStdin,
    // Read from the terminal and asked on standard error: standard output carries only the answer.
    ...(process.stdin.isTTY === true ? { askSecret: (prompt: string) => askSecret(process.stdin, prompt, (text) => { process.stderr.write(text); }) } : {}),
    errIsTerminal: process.stderr.isTTY === true,
    workingFolder: process.cwd(),
    env: process.env,
    askedToEnd: () => new Promise((resolve) => {
      for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, () => { resolve(); });
    }),
  };
}

async function readStdin(): Promise<Uint8Array> {
  const parts: Buffer[] = [];
  for await (const part of process.stdin as AsyncIterable<Buffer>) parts.push(part);
  return Buffer.concat(parts);
}
