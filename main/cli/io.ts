/** What a command sees of the terminal; tests hand in their own. */
export type CliIo = {
  /** Text for standard output: only what was asked for. */
  out(text: string): void;
  /** Sentences for a person, on standard error. */
  err(text: string): void;
  readStdin(): Promise<Uint8Array>;
  /** Asks for a password without showing it; null where the person stopped. Left out where nobody sits at a terminal. */
  readonly askSecret?: (prompt: string) => Promise<string | null>;
  /** Standard error is read by a person as it is written: a line may be written over. */
  readonly errIsTerminal?: boolean;
  readonly workingFolder: string;
  readonly env: Readonly<Record<string, string | undefined>>;
  /** Settles when the person or the system asks the program to end. */
  askedToEnd(): Promise<void>;
};

/**
 * 0 only when all went well; 2 where the command itself was wrong and nothing was tried. Checking a report or a bundle, and taking a bundle in,
 * have two more answers: 3 where the bytes are sound and the key is not known, 4 where there is no signature.
 */
export const EXIT = { done: 0, failed: 1, usage: 2, unknownKey: 3, unsigned: 4 } as const;
export type ExitCode = (typeof EXIT)[keyof typeof EXIT];
