import { z } from 'zod';

/** Everything a client's receipt says, in print order; texts are ready to print, times are in the laboratory's zone. */
export const receiptModel = z.object({
  schema: z.literal('culet-receipt-1'),
  language: z.literal('en'),
  demonstration: z.boolean(),
  pageSize: z.enum(['A4', 'Letter']),
  laboratory: z.object({ name: z.string(), address: z.string(), zone: z.string(), logo: z.object({ mediaType: z.string(), base64: z.string() }).nullable() }),
  client: z.object({ name: z.string(), address: z.string(), email: z.string(), phone: z.string() }),
  caseNumber: z.string(),
  received: z.string(),
  /** UTC instant of receipt, for the PDF's own dates. */
  receivedAt: z.string(),
  receivedBy: z.string(),
  asks: z.string(), due: z.string(), remarks: z.string(),
  parcels: z.array(z.object({
    heading: z.string(), seal: z.string(), remarks: z.string(),
    items: z.array(z.object({ number: z.string(), kind: z.string(), declared: z.string(), count: z.string(), weight: z.string(), declaredValue: z.string(), condition: z.string() })),
  })),
  conditions: z.array(z.string()),
});
export type ReceiptModel = z.infer<typeof receiptModel>;
