import { testedUnderSeal } from '../../app/custody/custody-oddities.ts';
import type { InstrumentMemory } from '../../app/contract/work.ts';
import type { FindingFact } from '../../app/domain/finding.ts';
import type { InstrumentState } from '../../app/domain/instrument-state.ts';
import { METHODS, type Hazard, type MethodId } from '../../app/domain/method.ts';
import type { Observation } from '../../app/domain/observation.ts';
import type { FileFormat, ReadError, ReadWarning } from '../../app/files/spectrum-file.ts';
import type { AnalysisResult } from '../../app/spectra/analysis.ts';
import type { Change } from '../change.ts';
import type { WriteTx } from '../handle.ts';
import { appendAudit } from '../ledger/append-audit.ts';
import { appendCustody } from '../ledger/append-custody.ts';
import { runFile, testRun } from '../schema/index.ts';
import { proposeFindings } from './findings-write.ts';
import { rememberForNextRun } from './instruments.ts';
import { putRawRecord, sameBytesInCase } from './put-raw-record.ts';
import { putAnalysis, putSpectrum, type NewCurve } from './spectra.ts';
import { custodyOfItem } from './custody-now.ts';

export type NewRunFile = {
  readonly name: string; readonly mediaType: string; readonly bytes: Uint8Array; readonly sha256: string;
  readonly outcome: 'read' | 'refused'; readonly format: FileFormat | null; readonly reader: string;
  readonly warnings: readonly ReadWarning[]; readonly error: ReadError | null;
  /** Empty where the file was refused or holds no curve. */
  readonly curves: readonly {
    readonly curve: NewCurve; readonly analysis: AnalysisResult | null;
    /** What is proposed from it; all that its analysis found, where nothing is said. */
    readonly findings?: readonly FindingFact[];
  }[];
};

export type NewRun = {
  readonly stoneId: string; readonly method: MethodId;
  readonly instrumentId: string | null; readonly instrumentState: InstrumentState;
  readonly laserNm: number | null; readonly temperatureK: number | null; readonly integrationMs: number | null; readonly resolution: number | null;
  readonly cautions: readonly Hazard[]; readonly observation: Observation | null; readonly note: string;
  readonly files: readonly NewRunFile[];
  readonly observed: readonly FindingFact[];
  /** What was measured on the files as a whole, not on a curve of theirs. */
  readonly measured?: readonly FindingFact[];
  /** What the instrument will remember, where this run taught it something new. */
  readonly remembers: InstrumentMemory | null;
};

type PersonChange = Change & { readonly personId: string };
type Context = { readonly tx: WriteTx; readonly newId: () => string; readonly change: PersonChange; readonly caseId: string; readonly stoneId: string; readonly runId: string };

/** The id under which a case already keeps these bytes, or that of a new record. */
function keepBytes({ tx, newId, change, caseId }: Context, file: NewRunFile): string {
  const { name, mediaType, bytes } = file;
  return sameBytesInCase(tx, caseId, file.sha256)?.id ?? putRawRecord(tx, { newId }, change, { caseId, name, mediaType, bytes }).id;
}

type Written = { proposed: number; digests: Record<string, string> };

function putFile(context: Context, file: NewRunFile, firstOrdinal: number): Written {
  const { tx, newId, change, runId, caseId, stoneId } = context;
  const runFileId = newId();
  tx.orm.insert(runFile).values({
    id: runFileId, runId, rawRecordId: keepBytes(context, file), outcome: file.outcome, format: file.format, reader: file.reader,
    warnings: JSON.stringify(file.warnings), error: file.error === null ? null : JSON.stringify(file.error),
  }).run();
  const written: Written = { proposed: 0, digests: {} };
  file.curves.forEach(({ curve, analysis, findings }, index) => {
    const { id: spectrumId, sha256 } = putSpectrum(tx, newId, { runId, runFileId, ordinal: firstOrdinal + index }, curve);
    written.digests[spectrumId] = sha256;
    if (analysis === null) return;
    const analysisId = putAnalysis(tx, newId, change, spectrumId, analysis);
    written.proposed += proposeFindings(tx, newId, { at: change.at, caseId, stoneId, runId, analysisId, origin: 'analysis' }, findings ?? analysis.findings).length;
  });
  return written;
}

function nextRunNumber(tx: WriteTx, caseId: string): number {
  return (tx.get<{ last: number | null }>('SELECT MAX(number) AS last FROM test_run WHERE case_id = @caseId', { caseId })?.last ?? 0) + 1;
}

/**
 * Writes a run with everything it brought – raw bytes, curves, analyses, proposed findings – and its entries in both
 * ledgers, inside the caller's transaction. Returns the run's id, or null where there is no such stone.
 */
export function putRun(tx: WriteTx, newId: () => string, change: PersonChange, run: NewRun): string | null {
  const stone = tx.get<{ case_id: string; item_id: string; label: string }>('SELECT case_id, item_id, label FROM stone WHERE id = @id', { id: run.stoneId });
  if (stone === undefined) return null;
  const runId = newId();
  const number = nextRunNumber(tx, stone.case_id);
  tx.orm.insert(testRun).values({
    id: runId, caseId: stone.case_id, stoneId: run.stoneId, number, method: run.method, instrumentId: run.instrumentId, instrumentState: run.instrumentState,
    laserNm: run.laserNm, temperatureK: run.temperatureK, integrationMs: run.integrationMs, resolution: run.resolution,
    cautions: JSON.stringify(run.cautions), observation: run.observation === null ? null : JSON.stringify(run.observation), note: run.note,
    at: change.at, personId: change.personId,
  }).run();

  const context: Context = { tx, newId, change, caseId: stone.case_id, stoneId: run.stoneId, runId };
  let ordinal = 0;
  let proposed = 0;
  const digests: Record<string, string> = {};
  for (const file of run.files) {
    const written = putFile(context, file, ordinal);
    proposed += written.proposed;
    Object.assign(digests, written.digests);
    ordinal += file.curves.length;
  }
  proposed += proposeFindings(tx, newId, { at: change.at, caseId: stone.case_id, stoneId: run.stoneId, runId, analysisId: null, origin: 'observation' }, run.observed).length;
  proposed += proposeFindings(tx, newId, { at: change.at, caseId: stone.case_id, stoneId: run.stoneId, runId, analysisId: null, origin: 'analysis' }, run.measured ?? []).length;

  const tested = `${stone.label}: ${METHODS[run.method].name}`;
  const odd = testedUnderSeal(custodyOfItem(tx, stone.item_id)?.seal ?? '');
  appendCustody(tx, change, { caseId: stone.case_id, itemId: stone.item_id, content: { event: 'tested', run: `R${number}`, note: odd === undefined ? tested : `${tested}. ${odd}` } });
  appendAudit(tx, change, {
    subject: runId, caseId: stone.case_id,
    content: {
      run: `R${number}`, stone: stone.label, method: run.method, instrument: run.instrumentId, instrumentState: run.instrumentState, cautions: run.cautions,
      files: run.files.map((file) => ({ name: file.name, sha256: file.sha256, outcome: file.outcome, curves: file.curves.length })),
      observation: run.observation, proposed, digests,
    },
  });
  if (run.instrumentId !== null && run.remembers !== null) rememberForNextRun(tx, change, run.instrumentId, run.remembers);
  return runId;
}
