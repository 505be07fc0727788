import { z } from 'zod';
import { conclusionId } from '../domain/conclusion.ts';
import { findingFact, strength, supports } from '../domain/finding.ts';
import { instrumentState } from '../domain/instrument-state.ts';
import { methodId } from '../domain/method.ts';
import { observation } from '../domain/observation.ts';
import { proposal } from '../evidence/proposal.ts';
import { protocolState } from '../protocol/protocol-state.ts';
import { reportModel } from '../report/report-model.ts';
import { analysisParameters, analysisResult } from '../spectra/analysis.ts';
import { STATABLE_X_UNITS, X_UNITS, Y_UNITS } from '../spectra/spectrum.ts';
import { calibrationContract, diamondFile, laserTrial, scaleView } from './calibration.ts';
import { caseView, itemView, stoneSummary } from './cases.ts';
import { bytes, digest, filled, floats, id, instant, line, nothing } from './common.ts';
import { changes, reads } from './operation.ts';
import { reportRow } from './report-row.ts';

/** What an instrument remembers for its next run. */
export const instrumentMemory = z.object({
  laserNm: z.number().min(200).max(1100).optional(),
  temperatureK: z.number().min(4).max(400).optional(),
  integrationMs: z.number().min(0).max(3_600_000).optional(),
  resolution: z.number().positive().max(100).optional(),
  /** Unit of its files where they do not say it. */
  xUnit: z.enum(STATABLE_X_UNITS).optional(),
  yUnit: z.enum(Y_UNITS).optional(),
});
export type InstrumentMemory = z.infer<typeof instrumentMemory>;

export const instrumentView = z.object({
  id, name: z.string(), methods: z.array(methodId), serial: z.string(), place: z.string(), remembers: instrumentMemory,
  checkEveryDays: z.number(), active: z.boolean(), state: instrumentState,
  lastCheck: z.object({ at: instant, by: z.string(), passed: z.boolean(), reference: z.string(), outcome: z.string() }).nullable(),
  /** The calibration that governs its runs; null where there is none. */
  scale: scaleView.nullable().optional(),
});
export type InstrumentView = z.infer<typeof instrumentView>;

export const readWarning = z.object({ code: z.string(), message: z.string(), line: z.number().optional() });
export const readError = readWarning;

const fileInput = z.strictObject({
  name: line(255), bytes,
  xUnit: z.enum(STATABLE_X_UNITS).optional(), yUnit: z.enum(Y_UNITS).optional(),
});

/** What trying to read a file gives, before anything is kept. */
export const fileTrial = z.object({
  name: z.string(), sha256: digest, size: z.number(),
  /** The same bytes already kept in this case: in which run, under which name. */
  alreadyIn: z.object({ run: z.string(), name: z.string() }).nullable(),
  format: z.string().nullable(),
  blocks: z.array(z.object({
    title: z.string(), xUnit: z.enum(X_UNITS), yUnit: z.enum(Y_UNITS), xUnitText: z.string(), points: z.number(),
    firstX: z.number(), lastX: z.number(), minY: z.number(), maxY: z.number(),
  })),
  warnings: z.array(readWarning),
  error: readError.nullable(),
});
export type FileTrial = z.infer<typeof fileTrial>;

export const spectrumView = z.object({
  id, title: z.string(), xUnit: z.enum(X_UNITS), yUnit: z.enum(Y_UNITS), points: z.number(), unitStated: z.boolean(), fileName: z.string(),
  analysis: z.object({ id, at: instant, result: analysisResult }).nullable(),
});
export type SpectrumView = z.infer<typeof spectrumView>;

export const runView = z.object({
  id, number: z.string(), stoneId: id, method: methodId, instrument: z.string().nullable(), instrumentId: id.nullable(), instrumentState,
  laserNm: z.number().nullable(), temperatureK: z.number().nullable(), integrationMs: z.number().nullable(), resolution: z.number().nullable(),
  observation: observation.nullable(), note: z.string(), at: instant, by: z.string(), byInitials: z.string(),
  files: z.array(z.object({
    rawRecordId: id, name: z.string(), sha256: digest, size: z.number(), outcome: z.enum(['read', 'refused']), reader: z.string(),
    warnings: z.array(readWarning), error: readError.nullable(),
  })),
  spectra: z.array(spectrumView),
  /** One line for the table: "5 optical centres, diamond line present". */
  reads: z.string(),
  /** What must be known before relying on the run: instrument not in order, long-wave seen after short-wave … */
  warnings: z.array(readWarning).optional(),
});
export type RunView = z.infer<typeof runView>;

export const findingView = findingFact.extend({
  id, runId: id.nullable(), run: z.string().nullable(), origin: z.enum(['analysis', 'observation', 'examiner']),
  state: z.enum(['proposed', 'accepted', 'set-aside', 'replaced']), reason: z.string(), decidedBy: z.string().nullable(), decidedAt: instant.nullable(),
  /** False where the run's instrument was not in order; such a finding is listed and does not count. */
  counts: z.boolean(),
  /** Set where a newer analysis of the same curve no longer says the same. */
  remark: z.string().optional(),
});
export type FindingView = z.infer<typeof findingView>;

/** What a check of an instrument measured, where it gave a number. */
export const checkNumber = z.strictObject({
  quantity: filled('Write what was measured.', 80), unit: line(20), value: z.number(),
  expected: z.number().nullable(), tolerance: z.number().positive('A tolerance is more than nought.').nullable(),
});
export type CheckNumber = z.infer<typeof checkNumber>;

export const conclusionView = z.object({
  id, stoneId: id, ordinal: z.number(), conclusion: conclusionId, reasons: z.string(), departure: z.string(), rules: z.string(), proposal,
  by: z.string(), byId: id, at: instant,
  confirmation: z.object({
    by: z.string(), byId: id, agrees: z.boolean(), reason: z.string(), at: instant,
    /** The second person's own conclusion, where one was stated, and whether it was before they were shown the first. */
    outcome: conclusionId.nullable(), readFirst: z.boolean(),
  }).nullable(),
});
export type ConclusionView = z.infer<typeof conclusionView>;

/** A conclusion that is not shown to this person yet: that there is one, by whom, and nothing of what it says. */
export const withheldConclusion = z.object({ conclusionId: id, by: z.string(), byId: id, at: instant });
export type WithheldConclusion = z.infer<typeof withheldConclusion>;

/** A stone with all that was recorded for it. */
export const stoneFolder = z.object({
  case: caseView, item: itemView, stone: stoneSummary, runs: z.array(runView), findings: z.array(findingView), conclusions: z.array(conclusionView),
  proposal,
  /** Set where the newest conclusion is withheld from this person until they have stated theirs; `conclusions` then holds none. */
  withheld: withheldConclusion.nullable().default(null),
  /** What this person stated before the newest conclusion was shown to them; `outcome` null where they asked to see it without. */
  reading: z.object({ outcome: conclusionId.nullable(), at: instant }).nullable().default(null),
  /** How far the stone has come in the protocol of its purpose. */
  protocol: protocolState.optional(),
});
export type StoneFolder = z.infer<typeof stoneFolder>;


const bench = ['examiner', 'second-examiner', 'manager'] as const;
const CONFIRMERS = ['examiner', 'second-examiner', 'appraiser', 'manager'] as const;

export const workContract = {
  'instruments.list': reads('anyone', nothing, z.array(instrumentView)),
  'instruments.save': changes(['manager', 'examiner'], z.strictObject({
    id: id.nullable(), name: filled('Name the instrument as the bench calls it.', 120), methods: z.array(methodId).min(1, 'Choose at least one method.'),
    serial: line(80), place: line(80), remembers: instrumentMemory, checkEveryDays: z.number().int().min(1).max(3650), active: z.boolean(),
  }), instrumentView),
  'instruments.recordCheck': changes(['examiner', 'second-examiner', 'manager'], z.strictObject({ instrumentId: id, passed: z.boolean(), reference: filled('Write what it was checked with.', 200), outcome: filled('Write what came out.', 400), measured: checkNumber.nullable().default(null), /** The first after a service or a repair. */ afterService: z.boolean().default(false) }), instrumentView),
  ...calibrationContract,
  'instruments.tryLaser': reads(bench, z.strictObject(diamondFile), laserTrial),
  /** Keeps the laser’s wavelength as a check of the instrument, which remembers it for its next run. */
  'instruments.calibrateLaser': changes(bench, z.strictObject({ ...diamondFile, passed: z.boolean() }), instrumentView),
  /** Reads files without keeping anything. */
  'runs.tryFiles': reads(bench, z.strictObject({ caseId: id, instrumentId: id.nullable(), files: z.array(fileInput).min(1).max(200) }), z.array(fileTrial)),
  /** Keeps a run: raw bytes always, curves where they could be read, analysis and proposed findings. */
  'runs.record': changes(bench, z.strictObject({
    stoneId: id, method: methodId, instrumentId: id.nullable(),
    laserNm: z.number().min(200).max(1100).nullable(), temperatureK: z.number().min(4).max(400).nullable(),
    integrationMs: z.number().min(0).max(3_600_000).nullable(), resolution: z.number().positive().max(100).nullable(),
    cautions: z.array(z.enum(['laser', 'ultraviolet', 'cryogen'])),
    files: z.array(fileInput).max(200), observation: observation.nullable(), note: line(2000),
  }), runView),
  'runs.analyse': changes(bench, z.strictObject({ spectrumId: id, parameters: analysisParameters }), spectrumView),
  /** The curves of a spectrum as the view draws them, points ascending in the analysed unit. */
  'spectra.curves': reads('anyone', z.strictObject({ spectrumId: id }), z.object({
    xUnit: z.enum(X_UNITS), yUnit: z.enum(Y_UNITS), laserNm: z.number().nullable(),
    x: floats, raw: floats, smoothed: floats, baseline: floats,
  })),
  'raw.content': reads('anyone', z.strictObject({ rawRecordId: id }), z.object({ name: z.string(), mediaType: z.string(), sha256: digest, bytes: z.instanceof(Uint8Array) })),
  'stones.folder': reads('anyone', z.strictObject({ stoneId: id }), stoneFolder),
  'findings.decide': changes(bench, z.strictObject({ findingId: id, accept: z.boolean(), reason: line(1000) }), findingView),
  'findings.add': changes(bench, z.strictObject({ stoneId: id, method: methodId, statement: filled('Write what was seen.', 600), strength, supports, caution: line(400) }), findingView),
  'conclusions.conclude': changes(['examiner', 'second-examiner', 'manager'], z.strictObject({ stoneId: id, conclusion: conclusionId, reasons: filled('Give the reasons, in sentences an appraiser can print.', 4000), departure: line(2000) }), conclusionView),
  /** Ends the withholding for this person: with the conclusion they state themselves, or null, where they know the first one already or want to see it without. */
  'conclusions.read': changes(CONFIRMERS, z.strictObject({ conclusionId: id, outcome: conclusionId.nullable() }), conclusionView),
  'conclusions.confirm': changes(CONFIRMERS, z.strictObject({
    conclusionId: id, agrees: z.boolean(), reason: line(2000),
    /** The second person's own conclusion, where they disagree; what they stated before the first was shown stands, whatever is said here. */
    outcome: conclusionId.nullable().default(null),
  }), conclusionView),
  'reports.list': reads('anyone', z.strictObject({ caseId: id.nullable() }), z.array(reportRow)),
  /** What the report would say now, and what is still missing before it may be issued. */
  'reports.prepare': reads('anyone', z.strictObject({ caseId: id }), z.object({ model: reportModel, missing: z.array(z.string()) })),
  'reports.preview': reads('anyone', z.strictObject({ caseId: id }), z.object({ name: z.string(), pdf: z.instanceof(Uint8Array) })),
  /** Issues a report on the whole case by its template; a further one is a revision of the first and needs its reason. */
  'reports.issue': changes(['appraiser', 'manager'], z.strictObject({ caseId: id, reason: line(2000).default('') }), reportRow),
  'reports.pdf': reads('anyone', z.strictObject({ reportId: id }), z.object({ name: z.string(), pdf: z.instanceof(Uint8Array), sha256: digest })),
  /** Everything of a case as a zip: reports, raw records byte for byte, ledger extract, JSON. */
  'cases.bundle': reads('anyone', z.strictObject({ caseId: id }), z.object({ name: z.string(), zip: z.instanceof(Uint8Array) })),
};
