import type { CliIo, ExitCode } from '../../../../main/cli/io.ts';
import { runCli } from '../../../../main/cli/run-cli.ts';

export type Captured = { readonly code: ExitCode; readonly out: string; readonly err: string };

/** Runs one command line with a terminal of its own. */
export async function runCaptured(args: readonly string[], options: { readonly stdin?: Uint8Array; readonly workingFolder?: string; readonly env?: Record<string, string>; /** What is typed where a password is asked for; null stops. */ readonly typed?: string | null; readonly askedToEnd?: () => Promise<void> } = {}): Promise<Captured> {
  let out = '';
  let err = '';
  const io: CliIo = {
    out(text) { out += text; },
    err(text) { err += text; },
    readStdin: () => Promise.resolve(options.stdin ?? new Uint8Array(0)),
    workingFolder: options.workingFolder ?? process.cwd(),
    env: options.env ?? {},
    askedToEnd: options.askedToEnd ?? (() => Promise.resolve()),
    ...(options.typed === undefined ? {} : { askSecret: (prompt: string) => { err += prompt; return Promise.resolve(options.typed ?? null); } }),
  };
  return { code: await runCli(args, io), out, err };
}
