import { z } from 'zod';
import { conclusionId } from '../domain/conclusion.ts';
import { lotOutcome } from '../lots/lot-outcome.ts';
import { countContent, lotPart, planContent, planInput, resultEntry, sieveClass, splitContent } from '../lots/lot-record.ts';
import { SEPARATORS } from '../lots/read-results.ts';
import { weightMeasures } from '../weights/estimate-weight.ts';
import { bytes, digest, id, instant, line } from './common.ts';
import { changes, reads } from './operation.ts';

const signed = { at: instant, by: z.string() };
const units = z.number();

/** A lot with all but its results. Weights in 0.0001 ct. */
export const lotView = z.object({
  caseId: id, caseNumber: z.string(), clientName: z.string(), itemId: id, label: z.string(), declared: z.string(), condition: z.string(), returned: z.boolean(),
  weight: units.nullable(),
  /** What the balance showed it in. */
  weighedIn: z.enum(['ct', 'g']),
  /** Scale's tolerance, a setting of the house. */
  tolerance: units,
  /** As counted at intake, or anew. */
  count: z.number().nullable(),
  counted: z.object({ ...signed, sieves: z.array(sieveClass), note: z.string() }).nullable(),
  plan: z.object({ ...signed, ordinal: z.number(), content: planContent }).nullable(),
  split: z.object({ ...signed, parts: z.array(lotPart), note: z.string() }).nullable(),
  /** Stones of the lot that have a folder of their own. */
  folders: z.array(z.object({ stoneId: id, label: z.string(), conclusion: conclusionId.nullable(), outcome: lotOutcome.nullable(), confirmed: z.boolean(), /** Concluded, and not to be told before a second person has answered. */ waits: z.boolean() })),
  /** What was written into the lot's book, newest first: all but results entered by key. */
  book: z.array(z.object({ ...signed, ordinal: z.number(), words: z.string(), sha256: digest.nullable() })),
});
export type LotView = z.infer<typeof lotView>;

export const lotResultView = z.object({
  number: z.number(), outcome: lotOutcome, ...signed, source: z.enum(['keyed', 'imported', 'folder']), stoneId: id.nullable(), before: lotOutcome.nullable(),
});
export type LotResultView = z.infer<typeof lotResultView>;

export const weightEstimateView = z.object({ ...signed, measures: weightMeasures, readingMm: z.number(), weight: units, uncertainty: units, formula: units, reading: units, factor: z.number() });
export type WeightEstimateView = z.infer<typeof weightEstimateView>;

/** Estimated weights of a piece's mounted stones. */
export const pieceWeights = z.object({
  stones: z.array(z.object({ stoneId: id, label: z.string(), estimate: weightEstimateView.nullable() })),
  declared: z.object({ ...signed, weight: units.nullable(), note: z.string() }).nullable(),
  total: z.object({ estimated: units, uncertainty: units, stones: z.number(), withoutEstimate: z.number(), agrees: z.boolean().nullable(), sentence: z.string() }),
});
export type PieceWeights = z.infer<typeof pieceWeights>;

const bench = ['examiner', 'second-examiner', 'manager'] as const;
const counter = ['intake', 'examiner', 'second-examiner', 'manager'] as const;
const column = z.number().int().min(0).max(200);
/** Keys pressed between two savings; a list comes by import. */
const MOST_AT_ONCE = 2000;

export const lotsContract = {
  'lots.get': reads('anyone', z.strictObject({ itemId: id }), lotView),
  /** What stands for each number, in order. */
  'lots.results': reads('anyone', z.strictObject({ itemId: id }), z.array(lotResultView)),
  'lots.count': changes(counter, countContent.omit({ kind: true }).extend({ itemId: id }), lotView),
  'lots.plan': changes(bench, planInput.extend({ itemId: id }), lotView),
  /** Entries of a moment; each says what stood before, and none is kept where another has changed that meanwhile. */
  'lots.enter': changes(bench, z.strictObject({ itemId: id, source: z.enum(['keyed', 'folder']), entries: z.array(resultEntry).min(1).max(MOST_AT_ONCE), note: line(600) }), z.object({ ordinal: z.number() })),
  'lots.import': changes(bench, z.strictObject({
    itemId: id, name: line(255), bytes, replace: z.boolean(), note: line(600),
    mapping: z.strictObject({ separator: z.enum(SEPARATORS), headings: z.boolean(), number: column, outcome: column, words: z.record(line(200), lotOutcome.nullable()) }),
  }), z.object({ entered: z.number(), same: z.number(), differing: z.number(), sha256: digest })),
  'lots.split': changes(counter, splitContent.omit({ kind: true }).extend({ itemId: id }), lotView),
  'weights.ofItem': reads('anyone', z.strictObject({ itemId: id }), pieceWeights),
  'weights.estimate': changes(counter, z.strictObject({ stoneId: id, measures: weightMeasures }), weightEstimateView),
  'weights.declare': changes(counter, z.strictObject({ itemId: id, weight: z.number().int().min(1, 'A weight must be more than nothing.').max(5_000_000_000).nullable(), note: line(200) }), pieceWeights),
};
