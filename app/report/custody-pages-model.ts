import { z } from 'zod';

/** Everything the chain-of-custody pages of a case or of one item say, in print order; times are in the laboratory's zone, as text. */
export const custodyPagesModel = z.object({
  schema: z.literal('culet-custody-pages-1'),
  language: z.literal('en'),
  demonstration: z.boolean(),
  pageSize: z.enum(['A4', 'Letter']),
  laboratory: z.object({ name: z.string(), address: z.string(), zone: z.string(), logo: z.object({ mediaType: z.string(), base64: z.string() }).nullable() }),
  client: z.string(),
  caseNumber: z.string(),
  /** Case number, or case number and letter of the one item shown. */
  subject: z.string(),
  received: z.string(),
  printed: z.string(),
  /** UTC instant of printing, for the PDF's own dates. */
  printedAt: z.string(),
  printedBy: z.string(),
  items: z.array(z.object({
    number: z.string(), declared: z.string(), kind: z.string(),
    /** Where it is now, in words. */
    now: z.string(),
    /** What does not fit, in sentences. */
    doubts: z.array(z.string()),
    entries: z.array(z.object({ seq: z.number(), at: z.string(), what: z.string(), who: z.string(), weight: z.string(), differs: z.boolean(), hash: z.string(), holds: z.boolean() })),
  })),
  /** What recomputing the digests came to. */
  check: z.object({ holds: z.boolean(), sentence: z.string() }),
});
export type CustodyPagesModel = z.infer<typeof custodyPagesModel>;
