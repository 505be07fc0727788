import type { CliIo } from './io.ts';

/** Prints one JSON value. A number that is not finite becomes null: JSON has no word for it. */
export function printJson(io: CliIo, value: unknown): void {
  io.out(`${JSON.stringify(value, null, 2)}\n`);
}
