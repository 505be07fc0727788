import type { Failure } from '../../app/contract/failure.ts';

/** Why what is typed is not kept, as short as a header needs it. */
export const notKeptWords = (failure: Pick<Failure, 'code' | 'message'>): string =>
  (failure.code === 'busy' ? 'Not kept: the program does not answer' : `Not kept: ${failure.message}`);
