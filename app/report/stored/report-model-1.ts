import { z } from 'zod';
import { conclusionId } from '../../domain/conclusion.ts';
import { strength, supports } from '../../domain/finding.ts';
import { figureModel } from '../../figure/figure-model.ts';

const fact = z.object({ label: z.string(), value: z.string(), mono: z.boolean().default(false) });

/** The first form of a report's content, before its sections could be chosen. Stored reports keep it; their pages are stored beside it and are never drawn again. */
export const reportModel1 = z.object({
  schema: z.literal('culet-report-1'),
  language: z.literal('en'),
  demonstration: z.boolean(),
  draft: z.boolean(),
  number: z.string(),
  revision: z.number(),
  title: z.string(),
  pageSize: z.enum(['A4', 'Letter']),
  laboratory: z.object({ name: z.string(), address: z.string(), zone: z.string(), logo: z.object({ mediaType: z.string(), base64: z.string() }).nullable() }),
  client: z.object({ name: z.string(), address: z.string() }),
  caseNumber: z.string(),
  received: z.string(), tested: z.string(), issued: z.string(),
  /** UTC instant of issue, for the PDF's own dates. */
  issuedAt: z.string(),
  asks: z.string(),
  items: z.array(z.object({
    label: z.string(), kind: z.string(), facts: z.array(fact),
    photographs: z.array(z.object({ caption: z.string(), mediaType: z.string(), base64: z.string(), sha256: z.string() })),
  })),
  stones: z.array(z.object({
    label: z.string(), heading: z.string(), facts: z.array(fact),
    conclusion: z.object({
      id: conclusionId, words: z.string(), reasons: z.string(), departure: z.string(), rules: z.string(),
      examiner: z.string(), concludedOn: z.string(), secondPerson: z.string(), confirmedOn: z.string(),
    }).nullable(),
    findings: z.array(z.object({ run: z.string(), method: z.string(), statement: z.string(), says: z.string(), strength, supports, caution: z.string(), counts: z.boolean() })),
    setAside: z.array(z.object({ statement: z.string(), reason: z.string() })),
    figures: z.array(z.object({ heading: z.string(), caption: z.string(), alt: z.string(), figure: figureModel })),
    notDone: z.array(z.string()),
  })),
  /** Methods and instruments used, and whether each was in order on the day. */
  instruments: z.array(z.object({ name: z.string(), methods: z.string(), settings: z.string(), state: z.string() })),
  scope: z.string(), limits: z.array(z.string()),
  signatures: z.array(z.object({ role: z.string(), name: z.string(), on: z.string() })),
  custody: z.array(z.object({ at: z.string(), item: z.string(), what: z.string(), who: z.string(), weight: z.string(), hash: z.string() })),
  rawRecords: z.array(z.object({ run: z.string(), name: z.string(), size: z.string(), sha256: z.string() })),
});
export type ReportModel1 = z.infer<typeof reportModel1>;
