import { z } from 'zod';

export const CUSTODY_EVENTS = ['received', 'weighed', 'sealed', 'opened', 'moved', 'seen', 'handed-over', 'taken-back', 'photographed', 'tested', 'returned'] as const;
export const custodyEvent = z.enum(CUSTODY_EVENTS);
export type CustodyEvent = z.infer<typeof custodyEvent>;

/** What a person writes down; the others are written by the program when a case, a test or a photograph is kept. */
export const writtenEvent = custodyEvent.exclude(['received', 'tested', 'photographed']);
export type WrittenEvent = z.infer<typeof writtenEvent>;

export const CUSTODY_EVENT_WORDS: Readonly<Record<CustodyEvent, string>> = {
  received: 'received', weighed: 'weighed', sealed: 'sealed', opened: 'opened', moved: 'moved', seen: 'seen',
  'handed-over': 'handed over', 'taken-back': 'taken back', photographed: 'photographed', tested: 'tested', returned: 'returned to client',
};

/** Content of a custody entry beside time, person and place in the chain. Weights are integers, so the canonical form is exact. */
export const custodyContent = z.strictObject({
  event: custodyEvent,
  /** Who gives it, who takes it, in words ("client", a person's name, "courier"). */
  from: z.string().max(200).optional(),
  to: z.string().max(200).optional(),
  /** It left the house with who took it and is expected back. */
  outside: z.boolean().optional(),
  /** What it was handed over for. */
  purpose: z.string().max(200).optional(),
  /** Day by which it is expected back, YYYY-MM-DD in the laboratory's zone. */
  dueBack: z.string().regex(/^\d{4}-\d{2}-\d{2}$/).optional(),
  place: z.string().max(200).optional(),
  seal: z.string().max(60).optional(),
  /** Reading in weightUnit steps: ct = 0.0001 ct, g = 0.00001 g. */
  weight: z.number().int().nonnegative().optional(),
  weightUnit: z.enum(['ct', 'g']).optional(),
  /** The recorded weight it was compared with (the last, or the first where small losses add up), the tolerance, and whether it differs by more. */
  expectedWeight: z.number().int().nonnegative().optional(),
  tolerance: z.number().int().nonnegative().optional(),
  differs: z.boolean().optional(),
  run: z.string().max(20).optional(),
  /** SHA-256 of the photographs taken at this moment, for instance of the sealed bag. */
  photographs: z.array(z.string().regex(/^[0-9a-f]{64}$/)).max(5).optional(),
  note: z.string().max(2000).optional(),
});
export type CustodyContent = z.infer<typeof custodyContent>;
