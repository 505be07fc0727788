import { z } from 'zod';
import { digest, instant } from '../contract/common.ts';
import { colourClass } from '../domain/colour-class.ts';
import { conclusionId } from '../domain/conclusion.ts';
import { custodyContent } from '../domain/custody-event.ts';
import { strength, supports } from '../domain/finding.ts';
import { instrumentState } from '../domain/instrument-state.ts';
import { methodId } from '../domain/method.ts';
import { observation } from '../domain/observation.ts';
import { lotOutcome } from '../lots/lot-outcome.ts';
import { TEMPLATE_KINDS } from '../report/sections/section.ts';
import { analysisParameters } from '../spectra/analysis.ts';
import { decimal, quantity } from './quantity.ts';

/** Name of the file under which the document is attached to the pages. */
export const DOCUMENT_NAME = 'report.json';
export const DOCUMENT_SCHEMA = 'culet-report-document-1';

const measurement = z.object({
  quantity: z.string().describe('what was measured: weight, nitrogen in A centres, specific gravity …'),
  result: quantity,
  run: z.string().nullable().describe('run it comes from; null for what was measured when the stone was described'),
  method: methodId.nullable(),
  file: z.string().nullable().describe('file of the run; null where it was read off an instrument'),
});

const line = z.object({
  position: quantity,
  width: quantity.describe('full width at half maximum'),
  height: quantity.describe('above the baseline, in the unit of the ordinates'),
  signalToNoise: quantity,
  centre: z.string().nullable().describe('optical centre or reference line in the tables; null where none was named'),
  ambiguousWith: z.array(z.string()).describe('what cannot be told apart from it here'),
  sidebandOf: z.string().nullable(),
});

const analysis = z.object({
  curve: z.string().describe('title of the curve in its file'),
  file: z.string(),
  at: instant,
  pipeline: z.string().describe('version of the computation'),
  tables: z.string().describe('version of the reference tables'),
  parameters: analysisParameters.meta({ whole: true }).describe('what the analysis was told, as docs/command-line.md names it'),
  lines: z.array(line),
  warnings: z.array(z.object({ code: z.string(), message: z.string() })),
});

const run = z.object({
  number: z.string(), method: methodId, at: instant, by: z.string(),
  instrument: z.string().nullable(),
  instrumentState: instrumentState.describe('how the instrument stood on the day'),
  conditions: z.object({ laser: quantity.nullable(), temperature: quantity.nullable(), integration: quantity.nullable(), resolution: quantity.nullable() }),
  observation: observation.nullable().meta({ whole: true }).describe('what a person saw, by method; null for runs with curves'),
  note: z.string(),
  files: z.array(z.object({ name: z.string(), sha256: digest, bytes: z.number(), reading: z.enum(['read', 'refused']), reader: z.string() })),
  analyses: z.array(analysis),
});

const finding = z.object({
  run: z.string().nullable(), method: methodId, code: z.string(), statement: z.string(), strength, supports,
  counts: z.boolean().describe('false where the instrument was not in order: listed, without weight'),
  caution: z.string(), source: z.string(),
});

const opinion = z.object({
  conclusion: conclusionId.describe('as printed: undetermined where the second person did not agree'), words: z.string(), reasons: z.string(),
  disputed: z.object({ conclusion: conclusionId, words: z.string(), reasons: z.string(), departure: z.string() }).nullable().optional()
    .describe('what the examiner concluded, where the second person did not agree; else null. Absent in older reports, whose conclusion is the examiner’s'),
  departure: z.string().describe('why it departs from what the rules propose; empty where it does not'),
  rules: z.string().describe('version of the rules of judgement'),
  by: z.string(), at: instant,
  confirmation: z.object({ by: z.string(), at: instant, agrees: z.boolean(), reason: z.string() }).nullable(),
});

const stone = z.object({
  label: z.string(), item: z.string(), mounted: z.boolean(), position: z.string(), shape: z.string(), colourClass,
  dimensions: z.string().describe('as written down by the laboratory, in millimetres'),
  dimensionsUncertainty: z.object({ value: decimal, unit: z.literal('mm'), covers: z.string() }).nullable().optional()
    .describe('of each reading of the dimensions; null where none was stated, absent in older reports'),
  measurements: z.array(measurement).describe('facts, apart from opinions'),
  runs: z.array(run),
  findings: z.array(finding).describe('accepted: what the opinion rests on'),
  setAside: z.array(z.object({ run: z.string().nullable(), statement: z.string(), reason: z.string() })),
  opinion: opinion.nullable().describe('the newest opinion, apart from the measurements; null where none was given'),
});

const lot = z.object({
  item: z.string(), stones: z.number().nullable(), weight: quantity.nullable(),
  plan: z.string().describe('how the tested stones were chosen; empty without a plan'),
  results: z.array(z.object({ number: z.number().describe('of the stone in the lot'), outcome: lotOutcome })),
});

const item = z.object({
  label: z.string(), kind: z.enum(['loose', 'jewellery', 'lot']), seal: z.string(), condition: z.string(),
  setting: z.enum(['open-back', 'closed-back']).nullable(),
  declared: z.object({ as: z.string(), value: z.string(), count: z.number().nullable() }).describe('stated by the client, not verified'),
  grossWeight: quantity.nullable(),
});

const record = z.object({
  runs: z.array(z.string()).describe('runs it belongs to; none for a photograph'),
  name: z.string().describe('as the instrument or the camera named it'),
  mediaType: z.string(), bytes: z.number(), sha256: digest,
  attachedAs: z.string().nullable().describe('name of the attached file, or null where it was left out'),
  leftOut: z.string().describe('why it is not attached; empty where it is'),
});

/** What a report says, for a program: attached to its pages as report.json in RFC 8785 form, and described in docs/report-document.md. */
export const reportDocument = z.object({
  schema: z.literal(DOCUMENT_SCHEMA),
  language: z.literal('en'),
  demonstration: z.boolean().describe('true for invented demonstration data'),
  draft: z.boolean(),
  number: z.string(), revision: z.number(),
  issuedAt: instant, issuedBy: z.string(),
  subject: z.object({ kind: z.enum(TEMPLATE_KINDS), label: z.string(), stones: z.number() }).describe('what is reported: a stone, a piece, a lot or a case, and its label'),
  relatesTo: z.string().describe('sentence on what the results relate to'),
  printed: z.object({
    title: z.string(), model: digest.describe('SHA-256 of what the pages say (canonical JSON), as the casebook and its audit ledger keep it'),
    says: z.array(z.object({ section: z.string(), about: z.string(), text: z.string() })).describe('what the pages say, statement by statement'),
  }),
  laboratory: z.object({ name: z.string(), address: z.string(), zone: z.string() }),
  client: z.object({ name: z.string(), address: z.string(), contact: z.string().optional().describe('as printed: the address, else e-mail and telephone; absent in older reports') }),
  case: z.object({ number: z.string(), receivedAt: instant, asks: z.string() }),
  scope: z.string(), limits: z.array(z.string()),
  signatures: z.array(z.object({ role: z.string(), name: z.string(), on: z.string() })).describe('who stands behind the report, as printed'),
  items: z.array(item),
  stones: z.array(stone),
  lots: z.array(lot).describe('lots of small stones with the results that were recorded'),
  custody: z.array(z.object({
    seq: z.number().describe('place in the custody ledger of the house'),
    at: instant, item: z.string(), person: z.string(),
    content: custodyContent.meta({ whole: true }).describe('as docs/data-model.md names it'),
    previous: digest, hash: digest,
  })).describe('extract of the custody ledger'),
  records: z.array(record).describe('raw records and photographs'),
});
export type ReportDocument = z.infer<typeof reportDocument>;
