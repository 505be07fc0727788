/** The argument by which the program starts itself again as a helper that verifies. Nobody else has a use for it: without the pipe it ends at once. */
export const HELPER_SWITCH = '--verify-pieces';

/** The pipe over which it is asked: the first behind standard input, output and errors. */
export const HELPER_PIPE = 3;

/** `args`: what the program was started with, without its own name. */
export const isHelper = (args: readonly string[]): boolean => args.includes(HELPER_SWITCH);
