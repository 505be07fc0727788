import { z } from 'zod';

export const id = z.string().min(1).max(60);
/** UTC, ISO 8601 with milliseconds. */
export const instant = z.string().regex(/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}\.\d{3}Z$/);
export const day = z.string().regex(/^\d{4}-\d{2}-\d{2}$/, 'Write the date as year-month-day, for instance 2026-11-25.');
export const digest = z.string().regex(/^[0-9a-f]{64}$/);
export const nothing = z.strictObject({});
export const done = z.object({ done: z.literal(true) });

export const line = (max = 200) => z.string().max(max, `At most ${max} characters.`);
export const filled = (sentence: string, max = 200) => z.string().trim().min(1, sentence).max(max, `At most ${max} characters.`);

/** Bytes of a file; 64 MB at most, so that a slip of the mouse can't fill the casebook. */
export const MAX_FILE_BYTES = 64 * 1024 * 1024;
export const bytes = z.custom<Uint8Array>((value) => value instanceof Uint8Array, 'This is not a file.').refine((b) => b.byteLength <= MAX_FILE_BYTES, 'The file is larger than 64 MB; Culet keeps instrument files and photographs up to that size.');
export const floats = z.instanceof(Float64Array);
