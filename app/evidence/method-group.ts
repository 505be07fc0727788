import type { MethodId } from '../domain/method.ts';

/** Methods that look at the same thing with the same light are one witness: both lamps, and both laser methods. */
const GROUPS: Partial<Record<MethodId, string>> = {
  'fluorescence-long-wave': 'fluorescence', 'fluorescence-short-wave': 'fluorescence', raman: 'laser', photoluminescence: 'laser',
};

/** Findings of one group count as one method where independence is asked for. */
export const methodGroup = (method: MethodId): string => GROUPS[method] ?? method;
