import { EXIT, type CliIo, type ExitCode } from './io.ts';
import { printJson } from './json-out.ts';

/** Why a command about a casebook did not succeed. */
export type Trouble = { readonly code: string; readonly message: string; readonly next: string };

/** Says it in the form that was asked for. */
export function sayTrouble(trouble: Trouble, json: boolean, io: CliIo): ExitCode {
  const { code, message, next } = trouble;
  if (json) printJson(io, { ok: false, error: { code, message, next } });
  else io.err(`${message}\n${next}\n`);
  return EXIT.failed;
}
