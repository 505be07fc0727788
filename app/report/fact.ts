import { z } from 'zod';

/** A label and its value, one pair a row. */
export const reportFact = z.object({ label: z.string(), value: z.string(), mono: z.boolean().default(false) });
export type ReportFact = z.infer<typeof reportFact>;
