import { z } from 'zod';
import { strainPattern } from './strain-pattern.ts';

/** Strain of every stone on one photograph between crossed polarisers. */
export const polariserResult = z.object({
  version: z.string(),
  stones: z.array(z.object({ markId: z.string(), number: z.number(), stoneId: z.string().nullable(), x: z.number(), y: z.number(), radius: z.number(), pattern: strainPattern.nullable() })),
});
export type PolariserResult = z.infer<typeof polariserResult>;
