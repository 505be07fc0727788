import os from 'node:os';
import path from 'node:path';
import { Option, type Command } from 'commander';
import { dataFolder } from '../host/data-folder.ts';
import { EXAMPLES } from './examples.ts';
import type { CliIo, ExitCode } from './io.ts';
import { portNumber } from './option-values.ts';
import { jsonOption } from './spectrum-commands.ts';

type ServeOptions = { readonly data?: string; readonly casebook?: string; readonly port: number; readonly open?: boolean; readonly note: string };
type DemoOptions = { readonly out: string; readonly casebook?: string; readonly json?: boolean };

export const dataOption = () => new Option('--data <dir>', 'data folder (CULET_DATA, else the user’s own)');
export const casebookOption = () => new Option('--casebook <file>', 'casebook file to use instead of the one last used');

/** The folder that an option, the environment or the platform names. */
export function dataFolderOf(stated: string | undefined, io: CliIo): string {
  return dataFolder(stated, { platform: process.platform, env: io.env, home: os.homedir() }, io.workingFolder);
}

/** `serve` and `demo`; their code is loaded when they run. */
export function addProgramCommands(program: Command, io: CliIo, finish: (code: ExitCode) => void): void {
  program.command('serve').description('serve the window to a browser on this machine, at 127.0.0.1')
    .addOption(dataOption()).addOption(casebookOption())
    .addOption(new Option('--port <n>', 'port; 0 takes any free one').default(0).argParser(portNumber))
    .option('--open', 'open the browser, where there is one')
    .addOption(new Option('--note <text>', 'why the window is served, said on the console and in the window').default('', 'nothing'))
    .addHelpText('after', EXAMPLES.serve)
    .action(async ({ data, casebook, port, open, note }: ServeOptions) => {
      const { runServe } = await import('./commands/serve.ts');
      finish(await runServe({ dataFolder: dataFolderOf(data, io), casebook: casebook === undefined ? undefined : path.resolve(io.workingFolder, casebook), port, open: open ?? false, note }, io));
    });

  program.command('demo').description('build the demonstration casebook, one report and one case bundle')
    .requiredOption('--out <dir>', 'folder to write into; made where it is not there')
    .addOption(new Option('--casebook <file>', 'where to write the casebook instead of into that folder'))
    .addOption(jsonOption()).addHelpText('after', EXAMPLES.demo)
    .action(async ({ out, casebook, json }: DemoOptions) => {
      const { runDemoCommand } = await import('./commands/demo.ts');
      finish(await runDemoCommand({ out, casebook, json: json ?? false }, io));
    });
}
