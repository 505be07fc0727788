import { err } from '../result.ts';
import type { ReadError } from './spectrum-file.ts';

/** A refusal. `reason` is a sentence without the file's name; readSpectrumFile puts name and line in front. */
export function refusal(code: string, reason: string, line?: number): { readonly ok: false; readonly error: ReadError } {
  return err(line === undefined ? { code, message: reason } : { code, message: reason, line });
}

/** A piece of a line, short enough for a sentence. */
export function excerpt(text: string): string {
  const clean = text.trim().replace(/[\u0000-\u001f\u007f]+/g, ' ');
  return clean.length > 40 ? `${clean.slice(0, 40)}…` : clean;
}
