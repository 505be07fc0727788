import type { CliIo } from './io.ts';

/** A line of progress at most this often, ms: written over on a terminal, one after the other elsewhere. */
const ON_TERMINAL_MS = 100;
const ELSEWHERE_MS = 1000;

export type SayProgress = { step(done: number, total: number): void; end(): void };

/** Says on standard error how far something has come, where that is a terminal or it was asked for. */
export function sayProgress(io: CliIo, what: string, asked: boolean): SayProgress {
  const terminal = io.errIsTerminal === true;
  if (!terminal && !asked) return { step() {}, end() {} };
  let last = 0;
  let written = '';
  return {
    step(done, total) {
      const now = performance.now();
      if (now - last < (terminal ? ON_TERMINAL_MS : ELSEWHERE_MS)) return;
      last = now;
      const line = `${what}: ${Math.floor((100 * done) / Math.max(1, total))} % of ${total.toLocaleString('en')}`;
      io.err(terminal ? `\r${line.padEnd(written.length)}` : `${line}\n`);
      written = line;
    },
    end() { if (terminal && written !== '') io.err(`\r${' '.repeat(written.length)}\r`); },
  };
}
