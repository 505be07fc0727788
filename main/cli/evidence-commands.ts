import type { Command } from 'commander';
import { EXAMPLES } from './examples.ts';
import type { CliIo, ExitCode } from './io.ts';
import { jsonOption } from './spectrum-commands.ts';

/** `conclude`: weighs findings from a file; needs no casebook. */
export function addEvidenceCommands(program: Command, io: CliIo, finish: (code: ExitCode) => void): void {
  program.command('conclude').description('weigh the findings of one stone, described in a JSON file, and say what follows')
    .argument('<file>', 'JSON file, or - for standard input')
    .addOption(jsonOption()).addHelpText('after', EXAMPLES.conclude)
    .action(async (file: string, { json }: { readonly json?: boolean }) => {
      const { runConclude } = await import('./commands/conclude.ts');
      finish(await runConclude({ file, json: json ?? false }, io));
    });
}
