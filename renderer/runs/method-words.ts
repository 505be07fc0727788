import { METHODS, type MethodId } from '../../app/domain/method.ts';

const SHORT: Partial<Record<MethodId, string>> = {
  absorption: 'Absorption', 'fluorescence-long-wave': 'Long-wave ultraviolet', 'fluorescence-short-wave': 'Short-wave ultraviolet', 'growth-pattern': 'Growth pattern',
};

/** A method's name where room is short. */
export const shortMethod = (method: MethodId): string => SHORT[method] ?? METHODS[method].name;
