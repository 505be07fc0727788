import { z } from 'zod';

/** A sheet of labels, one for each item, in the order of the case. */
export const labelsModel = z.object({
  schema: z.literal('culet-labels-1'),
  language: z.literal('en'),
  demonstration: z.boolean(),
  pageSize: z.enum(['A4', 'Letter']),
  laboratory: z.string(),
  caseNumber: z.string(),
  /** UTC instant of receipt, for the PDF's own dates. */
  receivedAt: z.string(),
  /** number is what the QR code holds, letter for letter. */
  labels: z.array(z.object({ number: z.string(), description: z.string(), seal: z.string(), received: z.string() })),
});
export type LabelsModel = z.infer<typeof labelsModel>;
