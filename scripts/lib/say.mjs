/**
 * One line for the person at the terminal. It goes to stderr, so that the standard output of a command holds its result only.
 * @param {string} line
 */
export function say(line) {
  process.stderr.write(`${line}\n`);
}

/** A failure with a sentence for the person; shown without a stack. */
export class Stop extends Error {}

/**
 * Runs a script's body and turns its failure into a line and an exit code.
 * @param {() => Promise<number>} body gives the exit code
 */
export async function main(body) {
  try {
    process.exitCode = await body();
  } catch (error) {
    if (!(error instanceof Stop)) throw error;
    say(error.message);
    process.exitCode = 1;
  }
}
