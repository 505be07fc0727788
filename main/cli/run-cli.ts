import { CommanderError } from 'commander';
import { EXIT, type CliIo, type ExitCode } from './io.ts';
import { createProgram } from './program.ts';

/** Runs one command line (without the program's own name) and gives its exit code. Never throws. */
export async function runCli(args: readonly string[], io: CliIo): Promise<ExitCode> {
  if (args.length === 0) {
    io.err('Say what to do, for instance: culet read FILE. See culet --help.\n');
    return EXIT.usage;
  }
  let code: ExitCode = EXIT.done;
  const program = createProgram(io, (given) => { code = given; });
  try {
    await program.parseAsync([...args], { from: 'user' });
    return code;
  } catch (fault) {
    if (fault instanceof CommanderError) return fault.exitCode === 0 ? EXIT.done : EXIT.usage;
    io.err(`Something went wrong inside Culet: ${fault instanceof Error ? fault.message : String(fault)}\n`);
    if (io.env['CULET_DEBUG'] !== undefined && fault instanceof Error) io.err(`${fault.stack ?? ''}\n`);
    return EXIT.failed;
  }
}
