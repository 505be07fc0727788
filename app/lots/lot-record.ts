import { z } from 'zod';
import { AQLS, CODE_LETTERS, INSPECTION_LEVELS, type Aql } from './acceptance-plan.ts';
import { lotOutcome } from './lot-outcome.ts';

/** Largest lot that can be written down. */
export const LARGEST_LOT = 1_000_000;

const stones = z.number().int().min(0).max(LARGEST_LOT);
const units = z.number().int().min(0).max(5_000_000_000);
const plate = z.string().max(8).nullable();

/** What stays on one plate and falls through another; a null side is open. */
export const sieveClass = z.strictObject({ over: plate, through: plate, count: stones.nullable(), /** 0.0001 ct */ weight: units.nullable() });
export type SieveClass = z.infer<typeof sieveClass>;

/** A count of the whole lot, and what it holds by size. */
export const countContent = z.strictObject({
  kind: z.literal('count'), count: z.number().int().min(1).max(LARGEST_LOT), sieves: z.array(sieveClass).max(60), note: z.string().max(600),
});
export type CountContent = z.infer<typeof countContent>;

export const DRAWN_WAYS = ['list', 'mixed', 'chosen', 'unknown'] as const;
export type DrawnWay = (typeof DRAWN_WAYS)[number];

export const planAim = z.discriminatedUnion('is', [
  /** Find at least one, if at least so many per cent are laboratory-grown. */
  z.strictObject({ is: z.literal('detect'), percent: z.number().min(0.0001).max(100) }),
  z.strictObject({ is: z.literal('acceptance'), level: z.enum(INSPECTION_LEVELS), aql: z.literal([...AQLS] as [Aql, ...Aql[]]) }),
  z.strictObject({ is: z.literal('all') }),
  z.strictObject({ is: z.literal('own'), size: z.number().int().min(1).max(LARGEST_LOT) }),
]);
export type PlanAim = z.infer<typeof planAim>;

/** What is wanted of a plan; the sizes follow from it. */
export const planInput = z.strictObject({
  aim: planAim,
  /** Per cent. */
  confidence: z.number().min(50).max(99.99),
  /** 'upper' states only what the lot holds at most; 'both' gives half the risk to each end. */
  sides: z.enum(['upper', 'both']),
  drawn: z.enum(DRAWN_WAYS),
  /** Fixes the drawn list; only for 'list'. Whole number below 2^32. */
  seed: z.number().int().min(0).max(4_294_967_295).nullable(),
  reason: z.string().trim().min(1, 'Write why this plan was chosen.').max(600),
  /** Method and instrument with which each stone is tested, in words. */
  method: z.string().trim().max(300).default(''),
});
export type PlanInput = z.infer<typeof planInput>;

/** A plan as it was kept: the lot's size it was made for, and what followed from it. */
export const planContent = planInput.extend({
  kind: z.literal('plan'), lot: z.number().int().min(1).max(LARGEST_LOT), size: z.number().int().min(1).max(LARGEST_LOT),
  acceptance: z.strictObject({ letter: z.enum(CODE_LETTERS), planLetter: z.enum(CODE_LETTERS), accept: z.number(), refuse: z.number() }).nullable(),
});
export type PlanContent = z.infer<typeof planContent>;

/** One outcome entered for one number; null takes an outcome back. */
export const resultEntry = z.strictObject({
  number: z.number().int().min(1, 'Stones are numbered from 1.').max(LARGEST_LOT),
  outcome: lotOutcome.nullable(),
  /** What stood for this number when it was entered: an entry never replaces what its writer did not see. */
  was: lotOutcome.nullable(),
  /** The folder that the stone has of its own. */
  stoneId: z.string().max(60).optional(),
});
export type ResultEntry = z.infer<typeof resultEntry>;

export const resultsContent = z.strictObject({
  kind: z.literal('results'), source: z.enum(['keyed', 'imported', 'folder']),
  file: z.strictObject({ rawRecordId: z.string(), name: z.string(), sha256: z.string() }).nullable(),
  entries: z.array(resultEntry).min(1).max(LARGEST_LOT), note: z.string().max(600),
});
export type ResultsContent = z.infer<typeof resultsContent>;

export const PART_SORTS = ['passing', 'referred', 'laboratory-grown', 'not-diamond', 'untested', 'other'] as const;
export const lotPart = z.strictObject({
  sort: z.enum(PART_SORTS), name: z.string().trim().max(60), count: stones, /** 0.0001 ct; null where it was not weighed. */ weight: units.nullable(),
});
export type LotPart = z.infer<typeof lotPart>;

/** The lot after it was split, all parts at once. */
export const splitContent = z.strictObject({ kind: z.literal('split'), parts: z.array(lotPart).min(1, 'List at least one part.').max(40), note: z.string().max(600) });
export type SplitContent = z.infer<typeof splitContent>;

/** One entry of a lot's own book. It only grows: the newest count, plan and split hold; results stand until another is entered for the same number. */
export const lotContent = z.discriminatedUnion('kind', [countContent, planContent, resultsContent, splitContent]);
export type LotContent = z.infer<typeof lotContent>;

export type LotRecord<C extends LotContent = LotContent> = { readonly ordinal: number; readonly at: string; readonly by: string; readonly content: C };

/** The newest record of one kind, or undefined. */
export function newestOf<K extends LotContent['kind']>(records: readonly LotRecord[], kind: K): LotRecord<Extract<LotContent, { kind: K }>> | undefined {
  return records.findLast((record) => record.content.kind === kind) as LotRecord<Extract<LotContent, { kind: K }>> | undefined;
}
