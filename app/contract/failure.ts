import { z } from 'zod';

export const FAILURE_CODES = ['invalid-input', 'not-found', 'not-allowed', 'locked', 'no-casebook', 'conflict', 'refused', 'unreadable', 'cancelled', 'busy', 'internal'] as const;

/** What crosses the door when a call does not succeed: a code, a sentence for a person, and what to do next. */
export const failure = z.object({
  code: z.enum(FAILURE_CODES),
  message: z.string(),
  next: z.string(),
  /** Path of the field that is wrong, joined by dots, with its own sentence. */
  fields: z.record(z.string(), z.string()).optional(),
});
export type Failure = z.infer<typeof failure>;
export type Reply<T> = { ok: true; value: T } | { ok: false; error: Failure };
