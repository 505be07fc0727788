import type { MethodId } from '../domain/method.ts';

/**
 * Methods that look at the same thing with the same light are one witness: both lamps, both laser methods, and the two that see the
 * absorption of aggregated nitrogen, in the infrared and at 254 nm.
 */
const GROUPS: Partial<Record<MethodId, string>> = {
  'fluorescence-long-wave': 'fluorescence', 'fluorescence-short-wave': 'fluorescence', raman: 'laser', photoluminescence: 'laser',
  infrared: 'aggregated nitrogen', 'ultraviolet-transmission': 'aggregated nitrogen',
};

/** Findings of one group count as one method where independence is asked for. */
export const methodGroup = (method: MethodId): string => GROUPS[method] ?? method;
