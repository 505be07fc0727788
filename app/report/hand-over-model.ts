import { z } from 'zod';

/** Everything the form says that both hands sign when items change hands. */
export const handOverModel = z.object({
  schema: z.literal('culet-hand-over-1'),
  language: z.literal('en'),
  demonstration: z.boolean(),
  pageSize: z.enum(['A4', 'Letter']),
  laboratory: z.object({ name: z.string(), address: z.string(), zone: z.string(), logo: z.object({ mediaType: z.string(), base64: z.string() }).nullable() }),
  /** What happened: "Hand-over", "Taken back", "Return to the client". */
  title: z.string(),
  from: z.string(), to: z.string(), purpose: z.string(), dueBack: z.string(), at: z.string(),
  /** UTC instant of the first entry, for the PDF's own dates. */
  madeAt: z.string(),
  items: z.array(z.object({ number: z.string(), declared: z.string(), declaredValue: z.string(), seal: z.string(), weight: z.string(), differs: z.boolean(), remark: z.string(), entry: z.number(), hash: z.string() })),
  conditions: z.array(z.string()),
});
export type HandOverModel = z.infer<typeof handOverModel>;
