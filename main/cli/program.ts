import { Command } from 'commander';
import { VERSION } from '../version.ts';
import { EXAMPLES } from './examples.ts';
import type { CliIo, ExitCode } from './io.ts';
import { addCaseCommands } from './case-commands.ts';
import { addEvidenceCommands } from './evidence-commands.ts';
import { addProgramCommands } from './program-commands.ts';
import { addSpectrumCommands } from './spectrum-commands.ts';

/** All commands, with their options and help. `finish` is given the exit code of the one that ran. */
export function createProgram(io: CliIo, finish: (code: ExitCode) => void): Command {
  const program = new Command('culet')
    .description('Reads and analyses the files of gem instruments, and looks after a laboratory’s casebook.')
    .version(VERSION, '-V, --version', 'print the version')
    .helpOption('-h, --help', 'show this help')
    .addHelpText('after', EXAMPLES.culet)
    .showSuggestionAfterError(true)
    .exitOverride()
    .configureOutput({
      writeOut: (text) => { io.out(text); },
      writeErr: (text) => { io.err(text); },
      outputError: (text, write) => { write(`${usageSentence(text)} See culet --help.\n`); },
    });
  addSpectrumCommands(program, io, finish);
  addEvidenceCommands(program, io, finish);
  addCaseCommands(program, io, finish);
  addProgramCommands(program, io, finish);
  return program;
}

/** One plain sentence out of the parser's message, whose form is "error: unknown option '--jsn'" and a second line with a suggestion. */
export function usageSentence(text: string): string {
  const [first = '', ...rest] = text.trim().replace(/^error: /, '').split('\n');
  const sentence = first.charAt(0).toUpperCase() + first.slice(1);
  const suggestion = rest.join(' ').replace(/^\((.*)\)$/, '$1');
  return [/[.?!]$/.test(sentence) ? sentence : `${sentence}.`, suggestion].filter((part) => part !== '').join(' ');
}
