import { z } from 'zod';
import { TEMPLATE_KINDS } from '../report/sections/section.ts';
import { digest, id, instant } from './common.ts';

/** issued: it counts · superseded: a later revision replaces it · withdrawn: nothing of it counts */
export const REPORT_STATES = ['issued', 'superseded', 'withdrawn'] as const;
export type ReportState = (typeof REPORT_STATES)[number];

export const REPORT_STATE_WORDS: Readonly<Record<ReportState, string>> = { issued: 'issued', superseded: 'superseded', withdrawn: 'withdrawn' };

export const reportRow = z.object({
  id, number: z.string(), revision: z.number(), caseId: id, caseNumber: z.string(), clientName: z.string(), stones: z.number(), issuedAt: instant, issuedBy: z.string(), pdfSha256: digest,
  kind: z.enum(TEMPLATE_KINDS), /** What is reported: "A-1", "A", or the number of the case. */ subject: z.string(),
  state: z.enum(REPORT_STATES),
  /** Why it replaces the revision before; empty where it is the first. */
  reason: z.string(),
  withdrawn: z.object({ at: instant, by: z.string(), reason: z.string() }).nullable(),
});
export type ReportRow = z.infer<typeof reportRow>;
