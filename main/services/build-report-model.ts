import type { Failure } from '../../app/contract/failure.ts';
import type { FindingView, RunView, SpectrumView } from '../../app/contract/work.ts';
import { chooseAttached, type ChosenRecord } from '../../app/report-document/choose-attached.ts';
import { composeReport } from '../../app/report/content/compose-report.ts';
import { reportGaps } from '../../app/report/content/report-gaps.ts';
import { photographsOf, type ReportSource, type SourceFigure } from '../../app/report/content/report-source.ts';
import type { ReportModel } from '../../app/report/report-model.ts';
import { ok, type Result } from '../../app/result.ts';
import { caseRecords, rawRecordsOfCase, type CaseRecords } from '../../db/store/case-records.ts';
import { createPhotographsStore } from '../../db/store/photographs.ts';
import { taskFailure } from '../workers/task-failure.ts';
import type { FigureOrder } from '../workers/tasks/report-figures.ts';
import { notFound } from './failures.ts';
import { lotsAndWeights } from './lots-and-weights.ts';
import type { Work } from './work-context.ts';

export type BuiltReport = {
  readonly model: ReportModel; readonly missing: string[];
  /** What it was written from, and which raw records go with it. */
  readonly source: ReportSource; readonly records: readonly ChosenRecord[];
};

const base64 = (bytes: Uint8Array): string => Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString('base64');

const holds = (spectrum: SpectrumView, finding: FindingView): boolean =>
  spectrum.analysis?.result.findings.some((fact) => fact.code === finding.code && fact.statement === finding.statement) === true;

/** The spectra that accepted findings rest on; neutral findings only where there are no others. */
function decisiveSpectra(runs: readonly RunView[], findings: readonly FindingView[]): { run: RunView; spectrum: SpectrumView }[] {
  const accepted = findings.filter((finding) => finding.state === 'accepted' && finding.origin === 'analysis');
  const weighty = accepted.filter((finding) => finding.strength !== 'neutral');
  const chosen = weighty.length > 0 ? weighty : accepted;
  return runs.flatMap((run) => run.spectra
    .filter((spectrum) => chosen.some((finding) => finding.runId === run.id && holds(spectrum, finding)))
    .map((spectrum) => ({ run, spectrum })));
}

type Planned = { readonly stoneId: string; readonly run: RunView; readonly spectrum: SpectrumView; readonly order: FigureOrder };

async function planFigures(records: CaseRecords, { stores }: Work): Promise<Result<Planned[], Failure>> {
  const planned: Planned[] = [];
  for (const { stone, runs, findings } of records.stones) {
    for (const { run, spectrum } of decisiveSpectra(runs, findings)) {
      const stored = await stores.spectra.get(spectrum.id);
      const setAside = findings.filter((finding) => finding.runId === run.id && finding.state === 'set-aside').map((finding) => finding.code);
      if (!stored.ok) return stored;
      const { curve, parameters } = stored.value;
      if (parameters !== null) planned.push({ stoneId: stone.id, run, spectrum, order: { spectrum: curve, parameters, setAside } });
    }
  }
  return ok(planned);
}

/** The decisive spectra of each stone, drawn in a worker thread. */
async function figuresByStone(records: CaseRecords, work: Work): Promise<Result<Map<string, SourceFigure[]>, Failure>> {
  const plan = await planFigures(records, work);
  if (!plan.ok) return plan;
  const planned = plan.value;
  const byStone = new Map<string, SourceFigure[]>();
  if (planned.length === 0) return ok(byStone);
  const task = await work.pool.run('report-figures', planned.map(({ order }) => order), {
    signal: work.call.signal, onProgress: (step) => work.call.emit({ kind: 'progress', task: 'report', ...step }),
  });
  if (!task.ok) return taskFailure(task.error);
  planned.forEach(({ stoneId, run, spectrum }, index) => {
    const figure = task.value[index];
    if (!figure) return;
    const sha256 = run.files.find((file) => file.name === spectrum.fileName)?.sha256 ?? '';
    byStone.set(stoneId, [...byStone.get(stoneId) ?? [], { run, fileName: spectrum.fileName, title: spectrum.title, sha256, figure }]);
  });
  return ok(byStone);
}

async function pictures(source: Pick<ReportSource, 'case'>, work: Work): Promise<Result<Map<string, string>, Failure>> {
  const store = createPhotographsStore(work.casebook.handle, () => { throw new Error('reading pictures makes no records'); });
  const found = new Map<string, string>();
  for (const photograph of photographsOf(source)) {
    const content = await store.content(photograph.id);
    if (!content.ok) return content;
    found.set(photograph.id, base64(content.value.bytes));
  }
  return ok(found);
}

/**
 * What the report of a case says as the records stand, and what is still missing before it may be issued.
 * `issue` null makes a draft. The same records, instant and issue give the same model.
 */
export async function buildReportModel(caseId: string, issue: ReportSource['issue'], work: Work): Promise<Result<BuiltReport, Failure>> {
  const records = await caseRecords(work.casebook.handle, caseId, work.at);
  if (records === null) return notFound('This case');
  const figures = await figuresByStone(records, work);
  if (!figures.ok) return figures;
  const images = await pictures(records, work);
  if (!images.ok) return images;
  const chosen = chooseAttached(rawRecordsOfCase(work.casebook.handle.read, caseId), records.laboratory.settings.attachMegabytes);
  const source: ReportSource = {
    ...records, at: work.at, issue, pictures: images.value,
    attached: new Set(chosen.flatMap(({ listed }) => (listed.attachedAs === null ? [] : [listed.sha256]))),
    ...await lotsAndWeights(records.case, work),
    logoBase64: records.laboratory.logo === null ? null : base64(records.laboratory.logo.bytes),
    stones: records.stones.map((entry) => ({ ...entry, figures: figures.value.get(entry.stone.id) ?? [] })),
  };
  return ok({ model: composeReport(source), missing: reportGaps(source), source, records: chosen });
}
