import { z } from 'zod';
import { caseView, stoneSummary } from '../contract/cases.ts';
import { lotResultView, pieceWeights } from '../contract/lots.ts';
import { reportRow } from '../contract/report-row.ts';
import { conclusionView, findingView, runView } from '../contract/work.ts';
import { custodyContent } from '../domain/custody-event.ts';
import { lotContent } from '../lots/lot-record.ts';
import { proposal } from '../evidence/proposal.ts';

/** case.json of a bundle: everything recorded of one case, in the words of the contract. Described in docs/case-bundle.md. */
export const caseDocument = z.object({
  schema: z.literal('culet-case-1'),
  /** UTC, ISO 8601 with milliseconds. */
  exportedAt: z.string(),
  demonstration: z.boolean(),
  laboratory: z.object({ name: z.string(), address: z.string(), zone: z.string() }),
  case: caseView,
  stones: z.array(z.object({
    stone: stoneSummary, item: z.string(), runs: z.array(runView), findings: z.array(findingView), conclusions: z.array(conclusionView), proposal,
  })),
  /** Lots of small stones: the whole book, what stands for each number, and what it amounts to in sentences. */
  lots: z.array(z.object({
    item: z.string(), book: z.array(z.object({ ordinal: z.number(), at: z.string(), by: z.string(), content: lotContent })), results: z.array(lotResultView), statement: z.array(z.string()),
  })).optional(),
  /** Weights of mounted stones as they were estimated. */
  mountedWeights: z.array(pieceWeights.extend({ item: z.string() })).optional(),
  reports: z.array(reportRow.extend({ path: z.string() })),
  rawRecords: z.array(z.object({ id: z.string(), path: z.string(), name: z.string(), mediaType: z.string(), size: z.number(), sha256: z.string(), runs: z.array(z.string()) })),
});
export type CaseDocument = z.infer<typeof caseDocument>;

/** custody.json of a bundle: the entries of one case as they were hashed. */
export const custodyDocument = z.object({
  schema: z.literal('culet-custody-1'),
  exportedAt: z.string(),
  caseNumber: z.string(),
  entries: z.array(z.object({
    /** What the digest is over: RFC 8785 canonical JSON of this object. */
    statement: z.object({ seq: z.number(), at: z.string(), person: z.string(), case: z.string(), item: z.string(), content: custodyContent, previous: z.string() }),
    hash: z.string(),
    personName: z.string(), itemLabel: z.string(),
  })),
});
export type CustodyDocument = z.infer<typeof custodyDocument>;
