import { z } from 'zod';
import { weightMeasures } from './estimate-weight.ts';

const units = z.number().int().min(0).max(5_000_000_000);

/** What is kept of weights that were not weighed: an estimate with all it rests on, or the total that was declared for a piece. Steps of 0.0001 ct. */
export const weightContent = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('estimate'), measures: weightMeasures, readingMm: z.number().positive(),
    weight: units, uncertainty: units, formula: units, reading: units, factor: z.number(),
  }),
  /** Null takes a declared total back. */
  z.strictObject({ kind: z.literal('declared'), weight: units.nullable(), note: z.string().max(200) }),
]);
export type WeightContent = z.infer<typeof weightContent>;
