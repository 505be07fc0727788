import { appendFileSync, mkdirSync, renameSync, statSync } from 'node:fs';
import path from 'node:path';

export type LogEntry = Readonly<Record<string, string | number | boolean | null>>;

/** What the program notes for whoever looks after it. Never what a person typed, never a client's name. */
export type Log = {
  info(message: string, entry?: LogEntry): void;
  error(message: string, entry?: LogEntry): void;
};

export const LOG_DEFAULTS = { folder: 'logs', file: 'culet.log', older: 'culet.1.log', maxBytes: 2_000_000 } as const;

export const silentLog: Log = { info() {}, error() {} };

/**
 * A log of one JSON object on each line in `<dataFolder>/logs/culet.log`; at two megabytes it becomes `culet.1.log` and starts anew.
 * A log that cannot be written is no reason to stop the work: such lines go to `fallback`.
 */
export function createFileLog(dataFolder: string, now: () => Date, fallback: (line: string) => void): Log {
  const folder = path.join(dataFolder, LOG_DEFAULTS.folder);
  const file = path.join(folder, LOG_DEFAULTS.file);
  const write = (level: 'info' | 'error', message: string, entry: LogEntry = {}): void => {
    const line = JSON.stringify({ at: now().toISOString(), level, message, ...entry });
    try {
      mkdirSync(folder, { recursive: true });
      turnOverWhenFull(folder, file);
      appendFileSync(file, `${line}\n`, 'utf8');
    } catch {
      fallback(line);
    }
  };
  return {
    info(message, entry) { write('info', message, entry); },
    error(message, entry) { write('error', message, entry); },
  };
}

function turnOverWhenFull(folder: string, file: string): void {
  const size = statSync(file, { throwIfNoEntry: false })?.size ?? 0;
  if (size > LOG_DEFAULTS.maxBytes) renameSync(file, path.join(folder, LOG_DEFAULTS.older));
}
