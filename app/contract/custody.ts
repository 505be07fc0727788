import { z } from 'zod';
import { custodyContent, writtenEvent } from '../domain/custody-event.ts';
import { itemKind, outOfHouse, photoInput } from './cases.ts';
import { day, digest, id, instant, line } from './common.ts';
import { listPage } from './list-page.ts';
import { changes, reads } from './operation.ts';

export const custodyView = z.object({
  seq: z.number(), at: instant, caseId: id, caseNumber: z.string(), itemId: id, itemLabel: z.string(), person: z.string(),
  content: custodyContent, previous: digest, hash: digest,
});
export type CustodyView = z.infer<typeof custodyView>;

/** Where one item that has not gone back to its client is now. */
export const whereabouts = z.object({
  itemId: id, caseId: id, caseNumber: z.string(), label: z.string(), kind: itemKind, declared: z.string(), clientName: z.string(),
  place: z.string(), holder: z.string(), seal: z.string(), since: instant, differs: z.boolean(),
  out: outOfHouse.extend({ overdue: z.boolean() }).nullable(),
  /** When somebody last had it before their eyes or moved it: any entry counts. */
  seenAt: instant,
});
export type Whereabouts = z.infer<typeof whereabouts>;

const entryInput = z.strictObject({
  event: writtenEvent,
  from: line(200).optional(), to: line(200).optional(), place: line(200).optional(), seal: line(60).optional(),
  /** It leaves the house; by which day it is expected back, and for what. */
  outside: z.boolean().optional(), dueBack: day.optional(), purpose: line(200).optional(),
  weight: z.number().int().min(0).optional(), note: line(2000).optional(),
});

const WRITERS = ['intake', 'examiner', 'second-examiner', 'manager'] as const;
const printed = z.object({ name: z.string(), pdf: z.instanceof(Uint8Array) });

export const custodyContract = {
  'custody.list': reads('anyone', z.strictObject({ caseId: id.nullable(), itemId: id.nullable(), ...listPage }), z.object({ total: z.number(), rows: z.array(custodyView) })),
  /** Photographs taken at this moment, for instance of the sealed bag, are kept with the entry that names their digests. */
  'custody.append': changes(WRITERS, entryInput.extend({ itemId: id, photographs: z.array(photoInput).max(5).optional() }), custodyView),
  /** The same for several items at once: all are written, or none. */
  'custody.appendMany': changes(WRITERS, entryInput.omit({ weight: true, seal: true }).extend({ itemIds: z.array(id).min(1, 'Choose at least one item.').max(500) }), z.array(custodyView)),
  /** Every item that has not gone back to its client. */
  'custody.whereabouts': reads('anyone', z.strictObject({}), z.object({ today: day, places: z.array(z.string()), rows: z.array(whereabouts) })),
  'print.receipt': reads('anyone', z.strictObject({ caseId: id }), printed),
  'print.labels': reads('anyone', z.strictObject({ caseId: id }), printed),
  /** The chain of custody of a case, or of one item of it. */
  'print.custody': reads('anyone', z.strictObject({ caseId: id, itemId: id.nullable() }), printed),
  /** The form that both hands sign, for entries of the ledger that name a giver and a taker. */
  'print.handOver': reads('anyone', z.strictObject({ seqs: z.array(z.number().int().positive()).min(1, 'Choose at least one hand-over.').max(500) }), printed),
};
